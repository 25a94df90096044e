"""Collars, hoods and bindings on the bodices of the invented bodies, measured by an outside program."""

from functools import cache
from typing import Any

from shapely.geometry import LineString, Polygon

from notchbook.pattern import Pattern
from notchbook.recipe import Replay, add_step, replay
from support.traced_steps import NECK
from support.upper_patterns import drafted

FRONT_EDGE = "button_stand.front/lap"
WITH_STAND: list[dict[str, Any]] = [
    {
        "edge": "button_stand.front/lap_top",
        "starts_at": "button_stand.front/lap_top_outer",
    },
    *NECK,
]
"""The neck of a front with a button stand, from its edge on."""

BUTTON_STAND: dict[str, Any] = {
    "centers": [{"center": "bodice.front/center_front", "top": "bodice.front/neck_pit"}],
    "facing": "none",
    "width": "20 mm",
    "first": "22 cm",
    "number": 1,
}


@cache
def opened(name: str = "medium-92") -> Replay:
    """The bodice with a button stand 20 mm wide down the center front."""
    done = after(drafted(name, "bodice"), "button_stand", **BUTTON_STAND)
    assert done.suspended is None, done.suspended.error
    return done


def after(run: Replay, operation: str, **parameters: Any) -> Replay:
    """The run with one more step, what was run before taken over; it may be suspended."""
    recipe = add_step(run.recipe, operation, parameters, base=run.measures, slug=operation)
    return replay(recipe, run.measures, run)


def collared(operation: str, name: str = "medium-92", **parameters: Any) -> Replay:
    """The bodice, its front on the fold, with a collar; it may be suspended."""
    return after(drafted(name, "bodice"), operation, **{"neck": NECK, **parameters})


def on_stand(operation: str, name: str = "medium-92", **parameters: Any) -> Replay:
    """The bodice that opens in front with a collar; it may be suspended."""
    return after(opened(name), operation, **{"neck": WITH_STAND, **parameters})


def pattern_of(run: Replay) -> Pattern:
    """The pattern; the test fails where the run stops."""
    assert run.suspended is None, run.suspended.error.text()
    return run.pattern


def code_of(run: Replay) -> str:
    """The code with which the last step refused."""
    assert run.suspended is not None, "the step was to be refused"
    assert run.suspended.error.text() and run.suspended.error.next_step()
    return run.suspended.error.code


def said(run: Replay) -> set[str]:
    """The codes of what the last step says."""
    assert run.suspended is None, run.suspended.error.text()
    return {note.code for note in run.states[-1].notes}


def line_of(pattern: Pattern, *names: str) -> LineString:
    """Edges as one line for the outside program, in the order of the outline."""
    points = [(point.x, point.y) for name in names for point in pattern.edges[name].path.flattened(0.005)]
    return LineString(points)


def length_of(pattern: Pattern, *names: str) -> float:
    """The length of edges by the outside program, mm."""
    return float(sum(line_of(pattern, name).length for name in names))


def shape_of(pattern: Pattern, piece: str) -> Polygon:
    """A piece for the outside program; it must be plain."""
    shape = Polygon([(p.x, p.y) for p in pattern.pieces[piece].sew_line.flattened(0.01)])
    assert shape.is_valid
    return shape


NECK_LENGTH_EDGES = ("bodice.front/neck", "bodice.back/neck")
"""The neck of one side on its pieces."""
