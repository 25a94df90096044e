"""Steps that draw edges anew, run on the blocks of the invented bodies."""

from functools import cache
from typing import Any

from shapely.geometry import Polygon

from lower_sheets import lower_bodies
from notchbook.app.drafting import draft
from notchbook.pattern import Pattern, Piece, walk_seam
from notchbook.recipe import Replay, add_step, replay
from support.lower_patterns import drafted_lower
from support.upper_patterns import drafted

FRONT, BACK = "bodice.front", "bodice.back"
GAPE = {"gape_dart": f"{FRONT}/bust_dart", "gape_point": f"{FRONT}/bust_point"}


def bodice(name: str = "medium-92") -> Replay:
    """The bodice of an invented body."""
    return drafted(name, "bodice")


@cache
def skirt() -> Replay:
    """The straight skirt of an invented body, with one dart in front, by whose name the steps call it."""
    return draft("skirt", dict(lower_bodies())["medium-92"], {"front_darts": 1})


def trousers() -> Replay:
    """The trousers of an invented body."""
    return drafted_lower("trousers")


def applied(run: Replay, operation: str, *, slug: str = "", **parameters: Any) -> Replay:
    """The run with a step added; it may be suspended."""
    return replay(add_step(run.recipe, operation, parameters, base=run.measures, slug=slug), run.measures)


def changed(run: Replay, operation: str, **parameters: Any) -> Pattern:
    """The pattern after the step; the test fails where it stops."""
    done = applied(run, operation, **parameters)
    assert done.suspended is None, done.suspended.error
    return done.pattern


def refusal(run: Replay, operation: str, **parameters: Any) -> str:
    """The code with which the step refuses."""
    done = applied(run, operation, **parameters)
    assert done.suspended is not None, "the step was to be refused"
    return done.suspended.error.code


def notes(run: Replay, operation: str, **parameters: Any) -> set[str]:
    """The codes of what the step says."""
    done = applied(run, operation, **parameters)
    assert done.suspended is None, done.suspended.error
    return {note.code for note in done.states[-1].notes}


def place(edge: str, from_point: str, distance: str) -> dict[str, str]:
    """The parameters of a place along an edge."""
    return {"edge": edge, "from_point": from_point, "distance": distance}


def misfits(pattern: Pattern) -> dict[str, float]:
    """By how much each seam is off, mm."""
    return {name: walk_seam(pattern, seam).misfit for name, seam in pattern.seams.items()}


def area(piece: Piece) -> float:
    """The area of a piece by another program, mm²."""
    points = [(point.x, point.y) for point in piece.sew_line.flattened(0.005)]
    polygon = Polygon(points)
    assert polygon.is_valid
    return float(polygon.area)


def lengths(pattern: Pattern) -> dict[str, float]:
    """The length of every edge, mm."""
    return {name: edge.length for name, edge in pattern.edges.items()}


def names_of(pattern: Pattern) -> tuple[str, ...]:
    """Every living name."""
    return tuple(pattern.index)


def levels(block: str, edge: str, top: str, distance: str, across: dict[str, str]) -> list[dict[str, Any]]:
    """One level for front and back of a block, at the same distance along the same edge."""
    return [
        {
            "place": place(f"{block}.{side}/{edge}", f"{block}.{side}/{top}", distance),
            "across": f"{block}.{side}/{across[side]}",
        }
        for side in ("front", "back")
    ]


BODICE_LEVELS = [
    {
        "place": place(f"{FRONT}/center_front", f"{FRONT}/waist_center", "7 cm"),
        "across": f"{FRONT}/side_seam/below",
    },
    {
        "place": place(f"{BACK}/center_back", f"{BACK}/waist_center", "7 cm"),
        "across": f"{BACK}/side_seam",
    },
]
"""A level 7 cm over the waist: through the waist darts, below the bust dart."""


def necks(
    shape: str, depth: str, back_shape: str = "round", back_depth: str = "0 cm"
) -> list[dict[str, str]]:
    """The neck edges of front and back."""
    return [
        {"edge": f"{FRONT}/neck", "center": f"{FRONT}/neck_pit", "shape": shape, "depth": depth},
        {"edge": f"{BACK}/neck", "center": f"{BACK}/nape", "shape": back_shape, "depth": back_depth},
    ]


def armholes(front: str = "0 cm", back: str = "0 cm") -> list[dict[str, str]]:
    """The armholes of front and back, hollowed."""
    return [
        {"edge": f"{piece}/armhole", "underarm": f"{piece}/underarm", "hollow": hollow}
        for piece, hollow in ((FRONT, front), (BACK, back))
    ]


def side_seams(level: str, *nothing: str, share: float | None = None) -> list[dict[str, Any]]:
    """Both side seams of the skirt, full at one distance from the waist and nothing at others."""
    return [
        {
            "level": place(f"skirt.{side}/side_seam", f"skirt.{side}/waist_side", level),
            "nothing_at": [
                place(f"skirt.{side}/side_seam", f"skirt.{side}/waist_side", one) for one in nothing
            ],
            "share": share,
        }
        for side in ("front", "back")
    ]
