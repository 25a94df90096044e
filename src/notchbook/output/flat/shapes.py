"""A piece as it is drawn in the flat: filled with paper, its seams in lines, darts and folds as one line."""

from dataclasses import dataclass

from notchbook.geometry import Path, Point, Transform
from notchbook.output.flat.joined import Placing, center_x
from notchbook.output.flat.laid import Laying, laid_path, laid_places, laying
from notchbook.pattern import Piece

_STEP = 0.2
"""mm that a flattened curve may lie off; a flat is drawn small."""


@dataclass(frozen=True, slots=True)
class FlatShape:
    """One shape, in painter's order: ``fill`` covers what lies below; ``lines`` are drawn firm (outline and
    seams), ``fine`` thin (darts, folds, stitches, buttonholes); ``buttons`` are places."""

    fill: Path
    lines: tuple[Path, ...]
    fine: tuple[Path, ...] = ()
    buttons: tuple[Point, ...] = ()

    def transformed(self, motion: Transform) -> "FlatShape":
        """The shape moved or reflected."""
        return FlatShape(
            self.fill.transformed(motion),
            tuple(path.transformed(motion) for path in self.lines),
            tuple(path.transformed(motion) for path in self.fine),
            tuple(motion.apply(place) for place in self.buttons),
        )

    def placed(self, placing: Placing) -> "FlatShape":
        """The shape where its piece lies in the view."""
        return FlatShape(
            Path.polyline([placing(place) for place in _chain(self.fill)[:-1]], closed=True),
            tuple(Path.polyline([placing(place) for place in _chain(path)]) for path in self.lines),
            tuple(Path.polyline([placing(place) for place in _chain(path)]) for path in self.fine),
            tuple(placing(place) for place in self.buttons),
        )


def _chain(path: Path) -> list[Point]:
    """The corners of a path of straight lines, in order."""
    return [path.start, *(segment.end for segment in path.segments)]


_DRAWN = frozenset({"fold_line", "placement", "stitch_line", "roll_line", "buttonhole", "cut_line"})
"""Inner lines that show on a garment; levels do not."""


def piece_shape(piece: Piece, without: frozenset[str] = frozenset()) -> FlatShape:
    """The shape of a piece in its own frame, its pleats laid; the inner lines ``without`` left out."""
    laid = laying(piece, center_x(piece))
    legs = {leg for intake in piece.intakes for leg in (intake.first_leg, intake.second_leg) if leg}
    fill = Path.polyline(_corners(piece, legs, laid), closed=True)
    bridges, fine = _intakes(piece)
    lines = [edge.path for edge in piece.outline if edge.name not in legs and edge.kind != "fold"]
    hidden = {intake.second_line for intake in piece.intakes if intake.is_folded} | without
    inner = [one.path for one in piece.lines if one.kind in _DRAWN and one.name not in hidden]
    darts = [piece.line(dart.center_leg).path for dart in piece.inner_darts]
    buttons = tuple(laid(mark.position) for mark in piece.marks if mark.kind == "button")
    return FlatShape(
        fill,
        tuple(laid_path(path, laid, _STEP) for path in (*lines, *bridges)),
        tuple(laid_path(path, laid, _STEP) for path in (*fine, *inner, *darts)),
        buttons,
    )


def _corners(piece: Piece, legs: set[str], laid: Laying) -> tuple[Point, ...]:
    """The outline flattened, the mouths of intakes bridged."""
    places: list[Point] = []
    for edge in piece.outline:
        if edge.name not in legs:
            places.extend(laid_places(edge.path, laid, _STEP))
    kept = [places[0]]
    for place in places[1:]:
        if place.distance_to(kept[-1]) > _STEP and place.distance_to(places[0]) > _STEP:
            kept.append(place)
    return tuple(kept)


def _intakes(piece: Piece) -> tuple[list[Path], list[Path]]:
    """The bridge over each mouth, and the line of each dart or fold."""
    bridges: list[Path] = []
    fine: list[Path] = []
    for intake in piece.intakes:
        if not intake.has_legs:
            continue
        first, second = piece.edge(intake.first_leg).path, piece.edge(intake.second_leg).path
        if first.start.distance_to(second.end) < _STEP:
            continue
        if intake.kind == "dart":
            bridges.append(Path.line(first.start, second.end))
        middle = first.start.lerp(second.end, 0.5)
        if intake.kind == "dart" and middle.distance_to(first.end) > _STEP:
            fine.append(Path.line(middle, first.end))
    return bridges, fine
