"""What a promised length is measured on now: edges, lines and points, wherever steps have carried them."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Final

from notchbook.geometry import Point
from notchbook.pattern.closed_place import closed_place
from notchbook.pattern.expectation import Expectation
from notchbook.pattern.laid_together import laid_place
from notchbook.pattern.led_lines import led_to_outline
from notchbook.pattern.names import instance_of
from notchbook.pattern.pattern import Pattern
from notchbook.pattern.piece import InternalLine
from notchbook.pattern.resolve import Found, Lost, expand, fate_of, resolve

LEFT_AWAY: Final = "the piece was left away"
"""Why names of a piece are gone that is not cut, because nothing of the garment needs it."""


@dataclass(frozen=True, slots=True)
class PromiseParts:
    """The living edges and lines that a promise is measured on, and its chains of points, mm.

    A line that a step cut is led on to the outline where it was cut; where the draft ended it, it ends still.
    The points of a chain stand in the frame of the piece that carries its first point: where they have come
    to lie on several panels, these are laid together along their seams, and of a distance across the darts
    that steps opened between two points are closed.
    """

    edges: tuple[str, ...]
    lines: tuple[InternalLine, ...]
    chains: tuple[tuple[Point, ...], ...]


@dataclass(frozen=True, slots=True)
class _LinePart:
    """A line, or what a step left of one that it cut, and whether its start and its end are led on."""

    line: InternalLine
    is_led: tuple[bool, bool]


@dataclass(frozen=True, slots=True)
class Gone:
    """Why a promise cannot be measured: the part that is gone, the step that took it (its id, empty where no
    step did) and the reason in words."""

    name: str
    by: str
    reason: str

    @property
    def is_left_away(self) -> bool:
        """Whether it lay on a piece that was left away, so that nobody expects the promise any more."""
        return self.reason.endswith(LEFT_AWAY)


def promise_parts(pattern: Pattern, promise: Expectation, *, to_outline: bool = False) -> PromiseParts | Gone:
    """What the promise is measured on now; the first part that is gone, where one is.

    With ``to_outline`` every end of a line is led on to the outline or cut off at it, and not only where a
    step cut it: so far there is cloth, wherever the draft meant the line to end.
    """
    edges: list[str] = []
    lines: list[_LinePart] = []
    drawn = {line.name: line for piece in pattern.pieces.values() for line in piece.lines}
    for name in promise.names:
        members, lost = expand(pattern, name)
        if members and not lost and all(member in drawn for member in members):
            parts = _line_parts([drawn[member] for member in members])
            lines.extend(replace(part, is_led=(True, True)) if to_outline else part for part in parts)
            continue
        found = resolve(pattern, name)
        if not isinstance(found, Found):
            return Gone(name, found.by, found.reason if isinstance(found, Lost) else "several things fit")
        edges.extend(found.members)
    chains: list[tuple[Point, ...]] = []
    for chain in promise.chains:
        points = _chain(pattern, promise, chain)
        if isinstance(points, Gone):
            return points
        chains.append(points)
    return PromiseParts(tuple(edges), tuple(_led(pattern, lines)), tuple(chains))


def _line_parts(parts: Sequence[InternalLine]) -> Iterable[_LinePart]:
    """The parts of one line in its order: led on where it was cut, not where the whole began and ended."""
    last = len(parts) - 1
    return (_LinePart(line, (index > 0, index < last)) for index, line in enumerate(parts))


def _led(pattern: Pattern, parts: Sequence[_LinePart]) -> Iterable[InternalLine]:
    """The lines led on to the outline at the ends that are, but where one goes on from another."""
    for part in parts:
        line, piece = part.line, pattern.piece_of(part.line.name)
        others = [one.line.path for one in parts if one is not part and one.line.name in piece.names()]
        meets = [point for path in others for point in (path.start, path.end)]
        yield replace(line, path=led_to_outline(piece, line.path, meets, part.is_led))


def _chain(pattern: Pattern, promise: Expectation, names: tuple[str, ...]) -> tuple[Point, ...] | Gone:
    """Where the corners and marks lie in the frame of the first one's piece."""
    living = [_heir(pattern, name) for name in names]
    for name, heir in zip(names, living, strict=True):
        if heir not in pattern.carriers:
            fate = fate_of(pattern, name)
            return Gone(name, "" if fate is None else fate.by, "" if fate is None else fate.reason)
    base = pattern.piece_of(living[0])
    points = [base.points[living[0]]]
    for name, heir in zip(names[1:], living[1:], strict=True):
        place = laid_place(pattern, heir, base.name, points[-1])
        if place is None:
            return Gone(name, "", "it lies on a piece that no seam joins to the rest")
        if promise.reach == "across" and pattern.carriers[heir] == base.name:
            place = closed_place(base, living[0], heir, instance_of(promise.name))
        points.append(place)
    return tuple(points)


def _heir(pattern: Pattern, name: str) -> str:
    """The point itself, or the one that it was joined into."""
    seen: set[str] = set()
    while name not in pattern.carriers and name not in seen:
        seen.add(name)
        fate = pattern.fates.get(name)
        if fate is None or fate.kind != "merged" or len(fate.into) != 1:
            return name
        name = fate.into[0]
    return name
