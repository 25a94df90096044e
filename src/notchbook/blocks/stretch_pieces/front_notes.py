"""What is said of the front over the bust: by how much it is cut longer, and what is still missing."""

from collections.abc import Iterator

from notchbook.blocks.stretch.shapes import BodysuitHalf
from notchbook.blocks.stretch_pieces.cloth_notes import CHECK
from notchbook.blocks.stretch_pieces.promises import Drafted
from notchbook.pattern import Finding, Measured, Severity, worded
from notchbook.units import TOLERANCES

_UNSEEN = 3.0
"""mm that may be missing over the bust without a word (own judgment)."""


def front_notes(drafted: Drafted, *, is_woman: bool) -> Iterator[Finding]:
    """How much longer the front is than the back and how much lower its center ends, a side seam that must
    ease more than stretch cloth takes, and what all of that does not cover; of a woman also that it was not
    measured."""
    front = drafted.half.front_length
    side, center = (drafted.names.at("front", word) for word in ("side_seam", "center_front"))
    if is_woman and front.lacks is None:
        yield worded(CHECK, "stretch-front-not-measured", Severity.NOTE, where=center)
    if front.longer > 0.0:
        yield worded(
            CHECK,
            "stretch-front-lengthened",
            Severity.NOTE,
            Measured(front.longer, 0.0),
            where=side,
            longer=front.longer,
        )
    if front.lower > 0.0:
        is_suit = isinstance(drafted.half, BodysuitHalf)
        end = "crotch" if is_suit else "hem"
        yield worded(
            CHECK,
            "stretch-front-lowered",
            Severity.NOTE,
            Measured(front.lower, 0.0),
            where=drafted.names.at("front", end),
            lower=front.lower,
            end=end,
        )
    if front.longer > front.most + TOLERANCES.join:
        yield worded(
            CHECK, "stretch-front-eased-much", Severity.LOOK, Measured(front.longer, front.most), where=side
        )
    if front.short > _UNSEEN:
        yield worded(
            CHECK,
            "stretch-front-short",
            Severity.LOOK,
            Measured(front.longer + front.lower, front.longer + front.lower + front.short),
            where=center,
            short=front.short,
            gives=front.gives,
        )
