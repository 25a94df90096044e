"""The lower end of a sleeve in the flat: drawn in to its cuff or band, which hangs below it."""

from collections.abc import Iterator, Sequence

from notchbook.geometry import Path, Point
from notchbook.output.flat.outer import is_sleeve
from notchbook.output.flat.shapes import FlatShape
from notchbook.pattern import EdgeUse, Pattern, Piece, run_length, run_of

_DRAWN_IN = 60.0
"""mm above a cuff within which the sleeve is drawn in to it."""


def with_cuff(pattern: Pattern, sleeve: Piece, half: Sequence[Point]) -> Iterator[FlatShape]:
    """Half of a sleeve, hung plumb, and below it half of its cuff; the sleeve alone where it has none."""
    cuff = _cuff_of(pattern, sleeve)
    places = list(half)
    if cuff is not None:
        depth, length = cuff
        hem = [place for place in half if _is_low(place, half)]
        left, right = min(place.x for place in hem), max(place.x for place in hem)
        middle, level = (left + right) / 2.0, min(place.y for place in hem)
        share = min(length / 2.0 / max(right - left, 1.0), 1.0)
        places = [_drawn_in(place, middle, level, share) for place in half]
        reach = share * (right - left) / 2.0
        corners = [Point(middle - reach, level), Point(middle + reach, level)]
        low = [Point(middle + reach, level - depth), Point(middle - reach, level - depth)]
        strip = Path.polyline([*corners, *low], closed=True)
    fill = Path.polyline(places, closed=True)
    yield FlatShape(fill, (fill,))
    if cuff is not None:
        yield FlatShape(strip, (strip,))


def _is_low(place: Point, half: Sequence[Point]) -> bool:
    """Whether a place lies in the lowest part of the sleeve."""
    return place.y < min(one.y for one in half) + _DRAWN_IN


def _drawn_in(place: Point, middle: float, level: float, share: float) -> Point:
    """The place moved toward the middle of the cuff, the more the lower it lies, and the hem laid level."""
    height = (place.y - level) / _DRAWN_IN
    if height >= 1.0:
        return place
    above = max(2.0 * height - 1.0, 0.0)  # the hem itself lies in the lower half
    narrowed = 1.0 - (1.0 - share) * (1.0 - above) ** 2
    return Point(middle + (place.x - middle) * narrowed, level + above * _DRAWN_IN)


def _cuff_of(pattern: Pattern, sleeve: Piece) -> tuple[float, float] | None:
    """How deep the cuff or band at the hem of the sleeve is and how long the hem is as sewn, mm."""
    for seam in pattern.seams.values():
        for own, other in ((seam.first, seam.second), (seam.second, seam.first)):
            if _is_hem_of(pattern, sleeve, own):
                bands = [pattern.piece_of(step.edge.name) for step in run_of(pattern, other)]
                if bands and not is_sleeve(bands[0]) and "cuff" in bands[0].name:
                    return _finished(bands[0]), run_length(pattern, own)
    return None


def _is_hem_of(pattern: Pattern, sleeve: Piece, uses: tuple[EdgeUse, ...]) -> bool:
    names = [step.edge.name for step in run_of(pattern, uses)]
    return all("/hem" in name and pattern.carriers[name] == sleeve.name for name in names)


def _finished(cuff: Piece) -> float:
    """The depth of a cuff; half of its width where it is folded."""
    folds = any(line.kind == "fold_line" for line in cuff.lines)
    depth = min(cuff.bounds.width, cuff.bounds.height)
    return depth / 2.0 if folds else depth
