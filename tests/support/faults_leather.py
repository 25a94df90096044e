"""Faults planted in what is cut of leather: panels larger than a hide, caps with too much ease.

A cap of leather has 0 to 10 mm of ease, front and back together (common practice, no source).
"""

from dataclasses import replace

from notchbook.checks import Subject
from notchbook.geometry import Transform
from notchbook.pattern import Pattern
from notchbook.pattern.making import LeatherMaking
from support.faults import Made, fault, harmless
from support.hand_skirt import FRONT_WIDTH
from support.hand_upper import CAP_FRONT, hand_upper

SEAM = 10.0
LAMB = LeatherMaking("self", "lamb leather", 700.0, 500.0, SEAM, 30.0, 3.0, 8.0, 25.0, 10.0)
WIDTH = 2.0 * (FRONT_WIDTH + SEAM)
"""The front as it is cut, whole, mm."""


def _hide(skirt: Pattern, length: float, width: float) -> Pattern:
    return skirt.with_making(replace(LAMB, panel_length=length, panel_width=width))


@fault("leather-panels", "leather-panel-wide", measured=WIDTH)
def front_wider_than_a_hide(skirt: Pattern) -> Made:
    return _hide(skirt, 900.0, WIDTH - 1.0)


@fault("leather-panels", "leather-panel-long")
def skirt_longer_than_a_hide(skirt: Pattern) -> Made:
    return _hide(skirt, 600.0, 900.0)


@harmless("leather-panels")
def skirt_that_just_fits(skirt: Pattern) -> Made:
    return _hide(skirt, 700.0, WIDTH + 1.0)


@harmless("leather-panels")
def coated_cloth_by_the_roll(skirt: Pattern) -> Made:
    return _hide(skirt, 0.0, 0.0)


def _sleeved(most: float) -> Subject:
    return Subject(hand_upper().with_making(replace(LAMB, cap_ease=most)))


def _ease() -> float:
    """What the caps of the hand-made top were drawn longer than their armholes, mm."""
    seams = hand_upper().seams.values()
    return sum(seam.ease for seam in seams if "cap" in seam.second[0].edge)


@fault("leather-cap-ease", "leather-cap-long")
def cap_with_the_ease_of_a_wool_sleeve(_: Pattern) -> Made:
    return _sleeved(_ease() - 1.0)


@harmless("leather-cap-ease")
def cap_with_as_much_ease_as_allowed(_: Pattern) -> Made:
    return _sleeved(_ease())


@fault("leather-cap-ease", "leather-cap-short")
def cap_shorter_than_its_armhole(_: Pattern) -> Made:
    top = hand_upper()
    sleeve = top.piece_of(CAP_FRONT)
    smaller = tuple(edge.transformed(Transform(a=0.8, d=0.8)) for edge in sleeve.outline)
    return top.with_pieces(replace(sleeve, outline=smaller)).with_making(LAMB)


@harmless("leather-cap-ease")
def cap_of_cloth(_: Pattern) -> Made:
    return hand_upper()
