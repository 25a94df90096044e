"""The finished edge beside a fold, and an edge across that is cut even in pressed folds."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from notchbook.geometry import Path, Transform
from notchbook.pattern import Located, Pattern, Piece, closed_motions, closed_path, require
from notchbook.style.fullness.fold_shape import fold_shape
from notchbook.style.fullness.opening import Opening
from notchbook.style.fullness.slash_lines import Slashes
from notchbook.style.fullness.spread import Spread


def outward_from(pattern: Pattern, edge: str, piece: Piece, place: Located, *, ahead: bool) -> Path:
    """The finished edge (or group, with its intakes closed) from a place on to its end in the direction of
    the outline where ``ahead``, else back to its start; in the frame of the piece where the place lies."""
    members = require(pattern, edge)
    home = closed_motions(piece, members[0], members[-1])[place.edge.name].inverse()
    along = closed_path(pattern, edge).transformed(home)
    at = place.distance
    for member in members[: members.index(place.edge.name)]:
        at += piece.edge(member).length
    return along.between(at, along.length) if ahead else along.between(0.0, at).reversed()


def pressed_across(
    pattern: Pattern,
    across: str,
    slashes: Slashes,
    made: Spread,
    folds: Sequence[tuple[Opening, tuple[bool, ...]]],
) -> dict[str, Path]:
    """Each edge across as it must be cut to lie even when the folds are pressed down to it.

    ``folds`` has for each slash what one fold of it opens, and which of its folds are laid toward the named
    end. Across, the outline runs the other way.
    """
    found: dict[str, Path] = {}
    for name in require(pattern, across):
        at = [index for index, (_, end) in enumerate(slashes.places) if end.edge.name == name]
        if not at:
            continue
        met = made.edges[name]
        between = [
            _fold_path(pattern, across, slashes, made, index, folds[index])
            for index in (at if not slashes.forward else at[::-1])
        ]
        bounds = [0.0, *met.places, met.old.length]
        stretches = [
            met.old.path.between(low, high).transformed(motion)
            for (low, high), motion in zip(pairwise(bounds), met.motions, strict=True)
        ]
        found[name] = _joined(stretches, between)
    return found


def _fold_path(
    pattern: Pattern,
    across: str,
    slashes: Slashes,
    made: Spread,
    index: int,
    fold: tuple[Opening, tuple[bool, ...]],
) -> Path:
    """The edge across in the folds at one slash, in its own direction."""
    parts = list(_from_near(pattern, across, slashes, made, index, fold))
    if slashes.forward:
        parts = [part.reversed() for part in reversed(parts)]
    return _joined(parts, [None] * (len(parts) - 1))


def _from_near(
    pattern: Pattern,
    across: str,
    slashes: Slashes,
    made: Spread,
    index: int,
    fold: tuple[Opening, tuple[bool, ...]],
) -> Iterator[Path]:
    opening, toward_each = fold
    place = slashes.places[index][1]
    before = made.motions[index]
    for number, toward in enumerate(toward_each):
        is_last = number + 1 == len(toward_each)
        after = made.motions[index + 1] if is_last else opening.motion().then(before)
        ahead = toward != slashes.forward
        edge = outward_from(pattern, across, slashes.piece, place, ahead=ahead)
        up = Opening(opening.end, opening.start, opening.at_end, opening.at_start, ahead)
        shape = fold_shape(edge, up)
        motion: Transform = after if toward else before
        legs = (shape.to_inner, shape.to_placement)
        if toward:
            legs = (shape.to_placement.reversed(), shape.to_inner.reversed())
        yield from (leg.transformed(motion) for leg in legs)
        before = after


def _joined(stretches: Sequence[Path], between: Sequence[Path | None]) -> Path:
    """Stretches with what lies between them as one path, joined exactly."""
    whole = stretches[0]
    for gap, stretch in zip(between, stretches[1:], strict=True):
        for part in (gap, stretch):
            if part is not None:
                whole = whole.joined(part.with_start(whole.end))
    return whole
