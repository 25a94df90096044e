"""Where the slashes of a sleeve run: from its cap between the notches down to the hem, or to its seams.

The strip in the middle holds the crown and the middle of the hem, so that the length of the sleeve stays what
it was while the strips beside it move away.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from notchbook.geometry import Path
from notchbook.pattern import Located, Pattern, Place, locate, sewn_length
from notchbook.pattern.slashing import located_on
from notchbook.style.fullness.spread import SlashLine
from notchbook.style.sleeves.found import FoundSleeve

_NEAREST = 1.0
"""mm that a slash stays off the ends of an edge."""

_WIDTHS = (1.0, 0.9, 0.8, 0.7, 0.6, 0.5)
"""Shares of half the hem over which slashes are spread, the first that is clear of the cap. Own judgment."""

_HIGHEST = (0.4, 0.55, 0.7, 0.85)
"""From which share of the depth on slashes end at the seams, the first that is clear. Own judgment."""


@dataclass(frozen=True, slots=True)
class CapPlace:
    """Where a slash meets the cap: the place, on which half, and which one of so many from the crown outward
    (0 first)."""

    place: Located
    is_front: bool
    outward: int
    count: int

    @property
    def share(self) -> float:
        """How far from the crown it lies, as a share of half the sleeve: each in the middle of its own."""
        return (self.outward + 0.5) / self.count


def cap_places(sleeve: FoundSleeve, count: int) -> tuple[CapPlace, ...]:
    """``count`` places on each half between balance notch and crown, from the front underarm to the back."""
    front, back = sleeve.notches
    found: list[CapPlace] = []
    for is_front, notch in ((True, front), (False, back)):
        half: list[CapPlace] = []
        for outward in range(count):
            along = sleeve.crown + (notch - sleeve.crown) * (outward + 0.5) / count
            half.append(CapPlace(_on_cap(sleeve, along), is_front, outward, count))
        found.extend(reversed(half) if is_front else half)
    return tuple(found)


def _on_cap(sleeve: FoundSleeve, along: float) -> Located:
    travelled = 0.0
    for edge in sleeve.cap:
        if along <= travelled + edge.length or edge is sleeve.cap[-1]:
            distance = min(max(along - travelled, _NEAREST), edge.length - _NEAREST)
            return located_on(sleeve.piece, edge.name, distance)
        travelled += edge.length
    raise AssertionError("a cap has edges")


def to_hem(
    pattern: Pattern, sleeve: FoundSleeve, places: Sequence[CapPlace], opened: Sequence[tuple[float, float]]
) -> tuple[SlashLine, ...]:
    """Slashes from the cap to the hem, spread over it as evenly as the hollow of the cap lets them;
    ``opened`` says of each what it opens at the cap and at the hem, mm."""
    hem = sleeve.name("hem")
    half = sewn_length(pattern, hem) / 2.0

    def end(one: CapPlace, width: float) -> Located:
        point = sleeve.name("hem_front" if one.is_front else "hem_back")
        distance = max(half * (1.0 - one.share * width), _NEAREST)
        return locate(pattern, Place(hem, point, distance))

    ends = _clear_ends(sleeve, places, end, _WIDTHS)
    return tuple(
        SlashLine(one.place, found, *amounts)
        for one, found, amounts in zip(places, ends, opened, strict=True)
    )


def to_seams(
    pattern: Pattern, sleeve: FoundSleeve, places: Sequence[CapPlace], depth: float, opened: Sequence[float]
) -> tuple[SlashLine, ...]:
    """Slashes from the cap to the seams: the innermost end ``depth`` mm below the underarm, the others as
    much higher as the hollow of the cap lets them. ``opened`` says what each opens at the cap, mm; at the
    seams all stay shut."""

    def end(one: CapPlace, highest: float) -> Located:
        which = "front" if one.is_front else "back"
        distance = depth * (1.0 - (1.0 - highest) * one.outward / one.count)
        place = Place(sleeve.name(f"{which}_seam"), sleeve.name(f"underarm_{which}"), distance)
        return locate(pattern, place)

    ends = _clear_ends(sleeve, places, end, _HIGHEST)
    return tuple(
        SlashLine(one.place, found, amount, 0.0)
        for one, found, amount in zip(places, ends, opened, strict=True)
    )


def _clear_ends(
    sleeve: FoundSleeve,
    places: Sequence[CapPlace],
    end: Callable[[CapPlace, float], Located],
    tries: Sequence[float],
) -> tuple[Located, ...]:
    """Where the slashes end on each half: by the first of the tries with which all of them stay in the cloth;
    by the last where none does, and the slash engine tells why."""
    found: dict[int, Located] = {}
    for is_front in (True, False):
        half = [index for index, one in enumerate(places) if one.is_front == is_front]
        for value in tries:
            ends = {index: end(places[index], value) for index in half}
            if value == tries[-1] or all(_is_clear(sleeve, places[index], ends[index]) for index in half):
                found.update(ends)
                break
    return tuple(found[index] for index in range(len(places)))


def _is_clear(sleeve: FoundSleeve, one: CapPlace, end: Located) -> bool:
    """Whether the straight slash meets the cap only where it begins."""
    line = Path.line(one.place.position, end.position)
    return all(met.at_self <= _NEAREST for met in line.intersections(sleeve.line))
