"""The pieces of a straight waistband: in one, or in two with a seam at the center opposite the opening."""

from dataclasses import dataclass
from typing import Literal

from notchbook.geometry import Point, Transform
from notchbook.pattern import CutInstruction, EdgeKind, EdgeUse, Grain, Pattern, Piece, require
from notchbook.pattern.names import Side, last_word
from notchbook.style.closures.strip import StripEnds, StripPart, folded_along, strip_outline

SEEN_FROM_BEHIND = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))
"""A band that opens in front is seen whole from behind, where the wearer's left lies at the left hand."""


def opens_in_front(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> bool:
    """Whether the waist, walked from its opening, begins on a front."""
    piece = pattern.piece_of(require(pattern, uses[0].edge)[0])
    return "front" in last_word(piece.name).split("_")


@dataclass(frozen=True, slots=True)
class BandSize:
    """The lengths of the wearer's ``right`` and ``left`` half, the finished ``depth``, and the ``underlap``
    with the side that it is on; mm."""

    right: float
    left: float
    depth: float
    underlap: float
    underlap_on: Literal["left", "right"]

    def of_side(self, side: Side) -> float:
        """The length of one half."""
        return self.right if side == "right" else self.left


def band_pieces(name: str, size: BandSize, *, in_two: bool) -> tuple[Piece, ...]:
    """The band laid flat, its sewn edge below: the wearer's right half, then the left, with the underlap.

    In two, the pieces of the right and of the left half.
    """
    laps = [StripPart("lower/underlap", size.underlap, "left_opening")] if size.underlap > 0.0 else []
    right, left = StripPart("lower/right", size.right, "right_opening"), _left(size)
    begin, end = band_ends(size)
    if size.underlap_on == "right":
        first = [*(StripPart(one.word, one.length, "underlap_lower") for one in laps), right]
        second = [left]
    else:
        first, second = [right], [left, *laps]
    if not in_two:
        ends = StripEnds(end[0], (end[1], begin[1]), (end[2], "upper", begin[2]))
        return (band_piece(name, "Waistband", [*first, *second], ends, size.depth),)
    sewn: EdgeKind = "seam"
    first_ends = StripEnds(
        "center", ("upper_center", begin[1]), ("center_end", "upper", begin[2]), (sewn, "plain", "plain")
    )
    second_ends = StripEnds(
        end[0], (end[1], "upper_center"), (end[2], "upper", "center_end"), ("plain", "plain", sewn)
    )
    return (
        band_piece(f"{name}_right", "Right waistband", first, first_ends, size.depth),
        band_piece(f"{name}_left", "Left waistband", second, second_ends, size.depth),
    )


def _left(size: BandSize) -> StripPart:
    return StripPart("lower/left", size.left, "center")


def band_ends(size: BandSize) -> tuple[tuple[str, str, str], tuple[str, str, str]]:
    """The lower and upper corner and the word of the end at the right opening, and at the left opening."""
    plain = {side: (f"{side}_opening", f"{side}_upper", f"{side}_end") for side in ("right", "left")}
    if size.underlap > 0.0:
        plain[size.underlap_on] = ("underlap_lower", "underlap_upper", "underlap_end")
    return plain["right"], plain["left"]


def band_piece(name: str, title: str, parts: list[StripPart], ends: StripEnds, depth: float) -> Piece:
    """A piece of a band of this finished depth, mm, flat: folded along its middle, fused."""
    outline = strip_outline(name, parts, ends, 2.0 * depth)
    return Piece(
        name=name,
        title=title,
        outline=outline,
        lines=(folded_along(name, outline, 2.0 * depth),),
        grain=Grain(0.0),
        instructions=(CutInstruction("self"), CutInstruction("fusible")),
        rule=name.split(".", 1)[0],
    )
