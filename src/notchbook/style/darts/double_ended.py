"""The shape of a dart with two points: a mouth, widest in the middle, and straight legs to both points."""

from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point
from notchbook.pattern import InnerDart, InternalLine, Mark, Piece, mouth_of, part_name, spoken


@dataclass(frozen=True, slots=True)
class DoubleShape:
    """The four places of the dart: its points above and below, and the ends of its mouth."""

    upper: Point
    lower: Point
    center: Point
    side: Point

    def legs(self) -> tuple[Path, Path]:
        """The leg on the side of the center and the other, both down from the upper point."""
        return (
            Path.polyline([self.upper, self.center, self.lower]),
            Path.polyline([self.upper, self.side, self.lower]),
        )

    @staticmethod
    def of(piece: Piece, dart: InnerDart) -> "DoubleShape":
        """The shape of a dart of the piece."""
        center, side = (piece.line(leg).path for leg in (dart.center_leg, dart.side_leg))
        return DoubleShape(center.start, center.end, mouth_of(center)[1], mouth_of(side)[1])

    def changed(self, width: float | None, above: float | None, below: float | None) -> "DoubleShape":
        """The dart with another width or other lengths above and below its mouth, mm; None: as it is."""
        middle = self.center.lerp(self.side, 0.5)
        upper, lower, center, side = self.upper, self.lower, self.center, self.side
        if width is not None:
            across = (
                (side - center).unit()
                if side != center
                else -(self.upper - self.lower).unit().perpendicular()
            )
            center, side = middle - across * (width / 2.0), middle + across * (width / 2.0)
        if above is not None:
            upper = middle + (self.upper - middle).unit() * above
        if below is not None:
            lower = middle + (self.lower - middle).unit() * below
        return DoubleShape(upper, lower, center, side)


def require_inside(piece: Piece, name: str, shape: DoubleShape) -> None:
    """StepRefused ``double-dart-outside`` when the dart does not lie wholly inside the piece."""
    legs = shape.legs()
    points = (shape.upper, shape.lower, shape.center, shape.side)
    crosses = any(leg.intersections(piece.sew_line) for leg in legs)
    if crosses or not all(piece.sew_line.contains(point) for point in points):
        raise StepRefused("double-dart-outside", dart=spoken(name), piece=spoken(piece.name))


def with_double(piece: Piece, dart: InnerDart, shape: DoubleShape) -> Piece:
    """The piece with the dart drawn so; one that it has is drawn anew."""
    legs = dict(zip((dart.center_leg, dart.side_leg), shape.legs(), strict=True))
    places = {dart.upper_point: shape.upper, dart.lower_point: shape.lower}
    center_mouth = part_name(dart.name, "center_mouth")
    if any(mark.name == center_mouth for mark in piece.marks):
        places[center_mouth] = shape.center
    lines = tuple(replace(line, path=legs.get(line.name, line.path)) for line in piece.lines)
    marks = tuple(replace(mark, position=places.get(mark.name, mark.position)) for mark in piece.marks)
    known_lines, known_marks = {line.name for line in lines}, {mark.name for mark in marks}
    return replace(
        piece,
        lines=(
            *lines,
            *(InternalLine(name, path, "dart_leg") for name, path in legs.items() if name not in known_lines),
        ),
        marks=(*marks, *(Mark(name, place) for name, place in places.items() if name not in known_marks)),
        inner_darts=piece.inner_darts
        if any(one.name == dart.name for one in piece.inner_darts)
        else (*piece.inner_darts, dart),
    )
