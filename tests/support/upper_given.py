"""Invented bodies for the bodice in numbers; girths with their ease, mm."""

from dataclasses import replace

from notchbook.blocks.upper import BodiceGiven, BustGiven, dart_counts


def settled(given: BodiceGiven) -> BodiceGiven:
    """With as many waist darts as this body asks for."""
    front, back = dart_counts(given)
    return replace(given, front_darts=front, back_darts=back)


WOMAN = settled(
    BodiceGiven(
        bust=980,
        waist=790,
        across_back=370,
        across_chest=340,
        neck=370,
        shoulder=123,
        shoulder_slope=20.3,
        scye_depth=210,
        back_length=400,
        bust_shape=BustGiven(front_length=438, center_front=350, neck_to_bust_point=265, point_width=190),
    )
)
"""An ordinary woman, bust 92."""

MAN = BodiceGiven(
    bust=1100,
    waist=None,
    across_back=422,
    across_chest=396,
    neck=425,
    shoulder=146,
    shoulder_slope=18,
    scye_depth=256,
    back_length=445,
    bust_shape=None,
    back_shoulder="ease",
    back_shoulder_amount=6,
    front_darts=0,
    back_darts=0,
)
"""A man, chest 100: no bust dart, the waist as it falls."""

CHILD = replace(
    MAN,
    bust=670,
    across_back=270,
    across_chest=250,
    neck=282,
    shoulder=90,
    scye_depth=172,
    back_length=276,
    back_shoulder_amount=4,
)
"""A child 116 cm tall."""


def shaped(front_length: float = 438, center_front: float = 350, way: float = 265) -> BodiceGiven:
    """The woman with another bust."""
    return replace(WOMAN, bust_shape=BustGiven(front_length, center_front, way, 190))
