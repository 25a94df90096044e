"""A short sleeve long enough for a seam under the arm, whatever cap its armhole asks for."""

from collections.abc import Callable
from dataclasses import replace
from typing import TypeVar

from notchbook.blocks.stretch.given import BodysuitGiven, TorsoGiven
from notchbook.blocks.stretch.shapes import BodysuitHalf, TorsoHalf
from notchbook.blocks.stretch_pieces.cuts import cut
from notchbook.blocks.stretch_pieces.parameters import UpperStretchParameters

GivenT = TypeVar("GivenT", TorsoGiven, BodysuitGiven)


def with_underarm_seam(
    given: GivenT, parameters: UpperStretchParameters, draw: Callable[[GivenT], TorsoHalf | BodysuitHalf]
) -> GivenT:
    """What is given with its short sleeve made longer where less than the usual seam is left below its cap.

    A length of her own is left as it is.
    """
    if parameters.sleeve != "short" or parameters.own_sleeve_length is not None:
        return given
    torso = given.torso if isinstance(given, BodysuitGiven) else given
    half = draw(given)
    if torso.sleeve is None or half.sleeve is None:
        return given
    farther_in = next(one.pulled for one in half.levers if one.name == "shoulder_narrowed")
    length = half.sleeve.cap_height + cut("sleeve.underarm") - farther_in
    if torso.sleeve.length >= length:
        return given
    longer = replace(torso, sleeve=replace(torso.sleeve, length=length))
    if isinstance(given, BodysuitGiven):
        return replace(given, torso=longer)
    return longer
