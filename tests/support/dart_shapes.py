"""A plain sheet with one dart, made by hand, and bodices with darts moved by steps; mm, invented."""

from typing import Any

from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, Intake, InternalLine, Mark, Pattern, Piece
from notchbook.recipe import Replay, add_step, replay
from support.bodice_bodies import bodice_recipe, body

SHEET = "sheet.front"
FRONT = "bodice.front"
BACK = "bodice.back"

SIDE_POINTS = {"top": ("top_right", "top_left"), "left": ("top_left", "bottom_left")}


def sheet(width: float = 300.0, height: float = 400.0, mouth: float = 60.0, depth: float = 250.0) -> Piece:
    """A rectangle, its corner at the origin, with a dart up from the middle of its lower edge.

    ``mouth`` wide and ``depth`` mm deep; a level line half way up, a mark at the point of the dart and one in
    the upper left corner.
    """
    middle, first, second = width / 2.0, (width - mouth) / 2.0, (width + mouth) / 2.0
    point = Point(middle, depth)

    def named(word: str) -> str:
        return f"{SHEET}/{word}"

    def edge(name: str, start: tuple[str, Point], end: tuple[str, Point], kind: Any = "seam") -> Edge:
        return Edge(named(name), Path.line(start[1], end[1]), named(start[0]), named(end[0]), kind)

    corners = {
        "bottom_left": Point(0.0, 0.0),
        "dart/first_mouth": Point(first, 0.0),
        "dart/point": point,
        "dart/second_mouth": Point(second, 0.0),
        "bottom_right": Point(width, 0.0),
        "top_right": Point(width, height),
        "top_left": Point(0.0, height),
    }
    names = ["bottom/first", "dart/first_leg", "dart/second_leg", "bottom/second", "right", "top", "left"]
    kinds = ["seam", "leg", "leg", "seam", "seam", "seam", "fold"]
    places = list(corners.items())
    outline = tuple(
        edge(name, places[index], places[(index + 1) % len(places)], kind)
        for index, (name, kind) in enumerate(zip(names, kinds, strict=True))
    )
    return Piece(
        SHEET,
        "Sheet",
        outline,
        (
            Intake(
                named("dart"),
                named("bottom"),
                named("dart/first_leg"),
                named("dart/second_leg"),
                named("dart/point"),
            ),
        ),
        (InternalLine(named("level"), Path.line(Point(0.0, height - 50.0), Point(width, height - 50.0))),),
        (Mark(named("bust_point"), point), Mark(named("corner"), Point(20.0, height - 20.0))),
    )


def at(word: str, from_point: str, piece: str = FRONT, part: str | None = None, **how: Any) -> dict[str, Any]:
    """The parameters of a place on an edge of a piece."""
    place = {"edge": f"{piece}/{word}", "from_point": f"{piece}/{from_point}", **how}
    return place if part is None else {**place, "part": f"{piece}/{part}"}


PLACES: dict[str, dict[str, Any]] = {
    "shoulder": at("shoulder", "side_neck_point", fraction=0.5),
    "armhole": at("armhole", "underarm", fraction=0.45),
    "neck": at("neck", "side_neck_point", fraction=0.4),
    "underarm": at("side_seam", "underarm", part="side_seam/above", distance="30 mm"),
    "side": at("side_seam", "waist_side", part="side_seam/below", distance="100 mm"),
    "french": at("side_seam", "waist_side", part="side_seam/below", distance="40 mm"),
    "waist": at("waist", "waist_center", part="waist/side", fraction=0.6),
}
"""Where the bust dart of a bodice can go, its bust dart being in the side seam and one dart in the waist."""


def styled(
    *steps: tuple[str, dict[str, Any]], values: dict[str, float] | None = None, **block: Any
) -> Replay:
    """A bodice with these steps (operation, parameters) done one after the other."""
    measures = body() if values is None else body(values)
    recipe = bodice_recipe(measures, **block)
    for operation, parameters in steps:
        recipe = add_step(recipe, operation, parameters, base=measures)
    return replay(recipe, measures)


def done(*steps: tuple[str, dict[str, Any]], values: dict[str, float] | None = None, **block: Any) -> Pattern:
    """The pattern; the test fails when a step stops."""
    run = styled(*steps, values=values, **block)
    assert run.suspended is None, f"{run.suspended.step}: {run.suspended.error}"
    return run.pattern


def stopped_by(*steps: tuple[str, dict[str, Any]], **block: Any) -> str:
    """The code with which the steps stop; empty when they do not."""
    run = styled(*steps, **block)
    return "" if run.suspended is None else run.suspended.error.code


def transfer(to: str, *darts: str, **more: Any) -> tuple[str, dict[str, Any]]:
    """The step that moves darts of the front (the bust dart) to a place."""
    names = [f"{FRONT}/{dart}" for dart in darts or ("bust_dart",)]
    return "transfer_dart", {"darts": names, "places": [{"at": PLACES[to]}], **more}
