"""Pleats and tucks laid flat, as they lie when the garment hangs: what lies in a fold is not seen."""

from collections.abc import Callable

from notchbook.geometry import Path, Point
from notchbook.pattern import Piece

Laying = Callable[[Point], Point]
"""Moves a place of the piece to where it lies with the folds laid."""


def laying(piece: Piece, center: float) -> Laying:
    """Where each place of the piece lies once its folds are laid; what is nearer the center (its x) stays."""
    folds = []
    for intake in piece.intakes:
        if intake.is_folded:
            lines = (piece.line(intake.first_line).path, piece.line(intake.second_line).path)
            near, far = sorted((line.start for line in lines), key=lambda place: abs(place.x - center))
            if near.distance_to(far) > 0.0:
                folds.append((near, (far - near).unit(), near.distance_to(far)))

    def laid(place: Point) -> Point:
        moved = place
        for near, across, width in folds:
            beyond = min(max((place - near).dot(across), 0.0), width)
            moved = moved - across * beyond
        return moved

    return laid


def laid_path(path: Path, laid: Laying, step: float) -> Path:
    """A path with the folds laid, as a chain of straight lines."""
    places = [laid(place) for place in path.flattened(step)]
    kept = [places[0]]
    for place in places[1:]:
        if place.distance_to(kept[-1]) > step:
            kept.append(place)
    if len(kept) == 1:
        kept.append(kept[0] + Point(step, 0.0))
    return Path.polyline(kept)
