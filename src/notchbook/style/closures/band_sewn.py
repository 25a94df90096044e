"""A waistband sewn to its waist: the seams of both of the wearer's sides, and the marks between them."""

from collections.abc import Mapping, Sequence

from notchbook.pattern import EdgeUse, Notch, Pattern, Piece, Place, Seam, part_name, run_length
from notchbook.pattern.names import Side
from notchbook.style.closures.band_pieces import BandSize
from notchbook.style.closures.half_waist import HalfWaist, center_words, seam_between


def with_band_sewn(
    pattern: Pattern,
    slug: str,
    pieces: Sequence[Piece],
    halves: Sequence[HalfWaist],
    size: BandSize,
    ease: float,
) -> Pattern:
    """The pattern with the band, in one piece or in two (right, then left), sewn on and marked.

    ``ease`` is what the whole waist is longer than the band, mm.
    """
    bands = {half.side: pieces[-1 if half.side == "left" else 0].name for half in halves}
    after = pattern.with_pieces(*pieces)
    for half in halves:
        after = after.with_seams(_waist_seam(slug, bands[half.side], half, ease / 2.0))
    if len(pieces) == 2:
        after = after.with_seams(_center_seam(slug, bands))
    return after.with_notches(*_notches(bands, pattern, halves, size))


def _waist_seam(slug: str, band: str, half: HalfWaist, ease: float) -> Seam:
    """The waist of one side sewn to its part of the band, from the opening to the center."""
    start = part_name(band, f"{half.side}_opening")
    edge = part_name(band, "lower", half.side)
    return Seam(
        part_name(slug, f"waist_{half.side}"), (EdgeUse(edge, start),), half.uses, ease, "waist", "LSa"
    )


def _center_seam(slug: str, bands: Mapping[Side, str]) -> Seam:
    """The two halves of the band sewn to each other."""
    first, second = (
        EdgeUse(part_name(bands[side], "center_end"), part_name(bands[side], "center"))
        for side in ("right", "left")
    )
    return Seam(part_name(slug, "band_center"), (first,), (second,), allowance_class="waistband_center")


def _notches(
    bands: Mapping[Side, str], pattern: Pattern, halves: Sequence[HalfWaist], size: BandSize
) -> list[Notch]:
    """Marks on the band where the seams of the skirt and its center come to lie."""
    marks: list[Notch] = []
    for half in halves:
        band, length = bands[half.side], size.of_side(half.side)
        edge, start = part_name(band, "lower", half.side), part_name(band, f"{half.side}_opening")
        travelled = 0.0
        for number, use in enumerate(half.uses[:-1], 1):
            travelled += run_length(pattern, (use,))
            place = Place(edge, start, travelled * length / half.length)
            word = f"{half.side}_seam_notch" + (f"_{number}" if number > 1 else "")
            purpose = seam_between(pattern, use, half.uses[number])
            marks.append(Notch(part_name(band, word), place, purpose=purpose))
    band = bands["right"]
    if bands["left"] == band:
        center = Place(part_name(band, "lower", "right"), part_name(band, "right_opening"), size.right)
        marks.append(Notch(part_name(band, "center_notch"), center, purpose=center_words(pattern, halves[0])))
    side, band = size.underlap_on, bands[size.underlap_on]
    opening = Place(part_name(band, "lower", side), part_name(band, f"{side}_opening"), 0.0)
    marks.append(Notch(part_name(band, "opening_notch"), opening, purpose="underlap"))
    return marks
