"""Pleats and tucks laid flat and darts closed, as they are when the garment hangs: what lies in a fold is not
seen, and the cloth is narrower where a dart takes it up."""

import math
from collections.abc import Callable, Iterator
from itertools import pairwise
from typing import Final

from notchbook.geometry import Path, Point
from notchbook.output.flat.darts_closed import Move, closed_darts
from notchbook.pattern import Piece

_CLOSE: Final = 6.0
"""mm between the places at which a stretch is looked at. Own judgment: a picture."""

Laying = Callable[[Point], Point]
"""Moves a place of the piece to where it lies with the folds laid and the darts closed."""


def laying(piece: Piece, center: float) -> Laying:
    """Where each place of the piece lies once its folds are laid and its darts closed; what is nearer the
    center (its x) stays."""
    moves = [*_folds_laid(piece, center), *closed_darts(piece, center)]
    # The farthest first: what it moves lies beyond those nearer the center, which are still where they were.
    outer_first = [move for _, move in sorted(moves, key=lambda one: -one[0])]

    def laid(place: Point) -> Point:
        for move in outer_first:
            place = move(place)
        return place

    return laid


def _folds_laid(piece: Piece, center: float) -> Iterator[tuple[float, Move]]:
    for intake in piece.intakes:
        if intake.is_folded:
            lines = (piece.line(intake.first_line).path, piece.line(intake.second_line).path)
            near, far = sorted((line.start for line in lines), key=lambda place: abs(place.x - center))
            if near.distance_to(far) > 0.0:
                yield abs(near.x - center), _fold_laid(near, far)


def _fold_laid(near: Point, far: Point) -> Move:
    across, width = (far - near).unit(), near.distance_to(far)
    return lambda place: place - across * min(max((place - near).dot(across), 0.0), width)


def laid_places(path: Path, laid: Laying, step: float) -> list[Point]:
    """The places of a path with the folds laid, not farther than ``step`` (mm) off as it lies then: a side
    that is all but straight bends where the darts beside it are closed."""
    places = path.flattened(step)
    found = [laid(places[0])]
    for before, place in pairwise(places):
        found.extend(_bent(before, place, laid, step))
        found.append(laid(place))
    return found


def _bent(start: Point, end: Point, laid: Laying, step: float) -> list[Point]:
    """The places between the ends of a straight stretch, where it lies off the straight line between them."""
    count = math.ceil(start.distance_to(end) / _CLOSE)
    shares = [index / count for index in range(1, count)]
    found = [laid(start.lerp(end, share)) for share in shares]
    first, last = laid(start), laid(end)
    is_bent = any(
        place.distance_to(first.lerp(last, share)) > step for place, share in zip(found, shares, strict=True)
    )
    return found if is_bent else []


def laid_path(path: Path, laid: Laying, step: float) -> Path:
    """A path with the folds laid, as a chain of straight lines."""
    places = laid_places(path, laid, step)
    kept = [places[0]]
    for place in places[1:]:
        if place.distance_to(kept[-1]) > step:
            kept.append(place)
    if len(kept) == 1:
        kept.append(kept[0] + Point(step, 0.0))
    return Path.polyline(kept)
