"""A straight waistband with seams at the sides: two pieces at the opening, and one opposite."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from notchbook.errors import StepRefused
from notchbook.pattern import (
    EdgeKind,
    EdgeUse,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    part_name,
    run_length,
    spoken,
)
from notchbook.pattern.names import Side
from notchbook.style.closures.band_pieces import BandSize, band_ends, band_piece
from notchbook.style.closures.half_waist import HalfWaist, center_words, panel_of
from notchbook.style.closures.strip import StripEnds, StripPart

_SIDES: tuple[Side, Side] = ("right", "left")


@dataclass(frozen=True, slots=True)
class SideStops:
    """How far from the opening the side seam lies, by the wearer's side, as sewn on the waist, mm."""

    right: float
    left: float

    def of_side(self, side: Side) -> float:
        """That of one side."""
        return self.right if side == "right" else self.left


def side_stops(pattern: Pattern, halves: Sequence[HalfWaist]) -> SideStops:
    """Where front and back meet on each half. StepRefused ``band-no-side``."""
    right, left = (_side_stop(pattern, half) for half in halves)
    return SideStops(right, left)


def _side_stop(pattern: Pattern, half: HalfWaist) -> float:
    return run_length(pattern, half.uses[: _side_index(pattern, half)])


def _side_index(pattern: Pattern, half: HalfWaist) -> int:
    """Which edge of the half is the first beyond the side seam."""
    panels = [panel_of(pattern, use) for use in half.uses]
    stop = next((index for index, panel in enumerate(panels) if panel != panels[0]), None)
    if stop is None:
        raise StepRefused("band-no-side", edge=spoken(half.uses[0].edge))
    return stop


def opening_titles(*, in_front: bool) -> tuple[str, str]:
    """What a piece at the opening, and the one opposite, are called."""
    near, far = ("front", "back") if in_front else ("back", "front")
    return f"{near} waistband", f"{far} waistband"


def three_pieces(name: str, size: BandSize, stops: SideStops, titles: tuple[str, str]) -> tuple[Piece, ...]:
    """The pieces of the right, the center and the left, flat, their sewn edge below; mm along the band.

    ``titles``: what a piece at the opening, and the one opposite, are called.
    """
    begin, end = band_ends(size)
    lap = StripPart("lower/underlap", size.underlap, "left_opening")
    right = [StripPart("lower/right", stops.right, "right_opening")]
    left = [StripPart("lower/left", stops.left, "left_side")]
    if size.underlap > 0.0 and size.underlap_on == "right":
        right.insert(0, StripPart(lap.word, lap.length, "underlap_lower"))
    elif size.underlap > 0.0:
        left.append(lap)
    center = [
        StripPart("lower/right_side", size.right - stops.right, "right_side"),
        StripPart("lower/left_side", size.left - stops.left, "center"),
    ]
    near, far = titles
    return (
        band_piece(
            f"{name}_right",
            f"Right {near}",
            right,
            StripEnds("right_side", ("upper_side", begin[1]), ("side_end", "upper", begin[2]), _AT_END),
            size.depth,
        ),
        band_piece(
            f"{name}_center",
            far.capitalize(),
            center,
            StripEnds(
                "left_side",
                ("left_upper", "right_upper"),
                ("left_end", "upper", "right_end"),
                ("seam", "plain", "seam"),
            ),
            size.depth,
        ),
        band_piece(
            f"{name}_left",
            f"Left {near}",
            left,
            StripEnds(end[0], (end[1], "upper_side"), (end[2], "upper", "side_end"), _AT_BEGIN),
            size.depth,
        ),
    )


_AT_END: Final[tuple[EdgeKind, EdgeKind, EdgeKind]] = ("seam", "plain", "plain")
_AT_BEGIN: Final[tuple[EdgeKind, EdgeKind, EdgeKind]] = ("plain", "plain", "seam")
"""The kinds of the right-hand end, the upper edge and the left-hand end of a piece at the opening."""


def with_three_sewn(
    pattern: Pattern,
    slug: str,
    pieces: tuple[Piece, ...],
    halves: Sequence[HalfWaist],
    sizes: tuple[BandSize, SideStops],
) -> Pattern:
    """The pattern with the three pieces sewn to each other and to the waist, and marked."""
    size, stops = sizes
    names: dict[Side, str] = {"right": pieces[0].name, "both": pieces[1].name, "left": pieces[2].name}
    after = pattern.with_pieces(*pieces)
    for half in halves:
        ease = half.length - size.of_side(half.side)
        after = after.with_seams(_waist_seam(slug, names, half, ease), _side_seam(slug, names, half.side))
    return after.with_notches(*_notches(pattern, names, halves, size, stops))


def _waist_seam(slug: str, names: Mapping[Side, str], half: HalfWaist, ease: float) -> Seam:
    side = half.side
    run = (
        EdgeUse(part_name(names[side], "lower", side), part_name(names[side], f"{side}_opening")),
        EdgeUse(part_name(names["both"], "lower", f"{side}_side"), part_name(names["both"], f"{side}_side")),
    )
    return Seam(part_name(slug, f"waist_{side}"), run, half.uses, ease, "waist", "LSa")


def _side_seam(slug: str, names: Mapping[Side, str], side: Side) -> Seam:
    own, center = names[side], names["both"]
    point = part_name(own, f"{side}_side")
    first = EdgeUse(part_name(own, "side_end"), point)
    second = EdgeUse(part_name(center, f"{side}_end"), part_name(center, f"{side}_side"))
    return Seam(part_name(slug, f"band_{side}"), (first,), (second,), allowance_class="waistband_center")


def _notches(
    pattern: Pattern,
    names: Mapping[Side, str],
    halves: Sequence[HalfWaist],
    size: BandSize,
    stops: SideStops,
) -> Iterator[Notch]:
    """Panel seams between opening, side and center; the center; where the underlap begins."""
    for half in halves:
        side, near = half.side, stops.of_side(half.side)
        side_index = _side_index(pattern, half)
        share = size.of_side(side) / half.length
        at = 0.0
        for number, use in enumerate(half.uses[:-1], 1):
            at += run_length(pattern, (use,)) * share
            if number == side_index:  # the seam of the band itself
                continue
            owner, word, start, along = (
                (names[side], side, f"{side}_opening", at)
                if number < side_index
                else (names["both"], f"{side}_side", f"{side}_side", at - near)
            )
            place = Place(part_name(owner, "lower", word), part_name(owner, start), along)
            yield Notch(part_name(owner, f"{side}_seam_notch_{number}"), place, purpose="panel")
    center = names["both"]
    place = Place(
        part_name(center, "lower", "right_side"),
        part_name(center, "right_side"),
        size.right - stops.right,
    )
    yield Notch(part_name(center, "center_notch"), place, purpose=center_words(pattern, halves[0]))
    side = size.underlap_on
    own = names[side]
    place = Place(part_name(own, "lower", side), part_name(own, f"{side}_opening"), 0.0)
    yield Notch(part_name(own, "opening_notch"), place, purpose="underlap")
