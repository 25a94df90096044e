"""A man's trousers: one back dart worth its sewing, and a side that does not lean back for it."""

import numpy as np

from support.lower_judge import LowerJudge
from support.lower_patterns import lower_data

SLANT = (32.0, 40.0)
"""mm by which the center back leans in from hip to waist: the middle of 30 to 45 (handbook practice, from
memory)."""

HIP_DEPTH = 205.0
"""mm, of the man of the sheets."""


def man() -> LowerJudge:
    return LowerJudge(lower_data("trousers", "man-100"))


def test_the_front_waist_is_little_wider_than_the_back() -> None:
    """A patternmaker's look at the sheet: it was 30 wider, and the side leaned back by 27; half of that is
    what a hand would leave. With no dart behind it could be had, but a man's back has one."""
    legs = man()
    nets = [legs.length(*legs.named(piece, "waist")) for piece in legs.names.values()]
    assert 0.0 < nets[0] - nets[1] < 22.0


def test_the_one_back_dart_is_worth_its_sewing() -> None:
    """Men's flat front: none in front, one of 15 to 20 behind (a patternmaker's review); it was 9."""
    legs = man()
    assert legs.mouths("front") == []
    (mouth,) = legs.mouths("back")
    assert 12.0 <= mouth <= 20.0


def test_the_center_back_slants_as_a_hand_would_draw_it() -> None:
    leans = HIP_DEPTH * float(np.tan(np.radians(man().back.slant)))
    assert SLANT[0] < leans < SLANT[1]
