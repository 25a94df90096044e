"""The parameters of the stretch blocks."""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.blocks.stretch_fabric.cloth import ClothParameters
from notchbook.recipe import AmountText

SleeveLength = Literal["none", "short", "three_quarter", "long"]
Neck = Literal["base", "crew", "scoop", "deep"]
BackNeck = Literal["base", "high", "scoop", "low"]
Shoulder = Literal["full", "strap"]
Leg = Literal["low", "classic", "high"]

_SHAPE = Field(json_schema_extra={"group": "shape"})
_EASE = Field(json_schema_extra={"group": "ease"})

EaseText = Annotated[AmountText | None, _EASE]
"""An ease of the wearer's own choice, below 0 where the pattern is smaller; None takes that of the cloth."""


class UpperStretchParameters(ClothParameters):
    """What torso and bodysuit share: neck, shoulder, sleeve, eases.

    Eases are of the whole girth, below 0 where the garment is smaller than the body (-40 mm, -1/10 hip). What
    is left empty follows the use and the stretch of the cloth.
    """

    sleeve: SleeveLength = "none"
    """No sleeve, short, three quarter, or to the wrist."""
    own_neck_wider: Annotated[AmountText | None, _SHAPE] = None
    """How far the neck is opened along each shoulder, instead of the neck's own."""
    own_front_neck: Annotated[AmountText | None, _SHAPE] = None
    """How far the front neck is lowered at the center, instead of the neck's own."""
    own_back_neck: Annotated[AmountText | None, _SHAPE] = None
    """How far the back neck is lowered at the center, instead of the back's own."""
    own_sleeve_length: Annotated[AmountText | None, _SHAPE] = None
    """From the shoulder point of the body to the hem of the sleeve, instead of the sleeve's own."""
    armhole_lowered: AmountText = "0 mm"
    """How far the armhole is lowered beyond what is usual for the use."""
    own_front_longer: Annotated[AmountText | None, _SHAPE] = None
    """How much longer the front is cut over the bust, eased into the side; empty: as body and cloth ask."""
    bust_ease: EaseText = None
    """Ease of the whole bust; below 0 the garment is smaller."""
    waist_ease: EaseText = None
    """Ease of the whole waist; below 0 the garment is smaller."""
    hip_ease: EaseText = None
    """Ease of the whole hip; below 0 the garment is smaller."""
    upper_arm_ease: EaseText = None
    """Ease round the upper arm; below 0 the garment is smaller."""
    wrist_ease: EaseText = None
    """Ease round the wrist; below 0 the garment is smaller."""


class StretchTorsoParameters(UpperStretchParameters):
    """A stretch top without darts; with its sleeve it is a T-shirt.

    The stretch of the cloth must be said, since the top is drafted for it.
    """

    fit: Literal["t_shirt", "fitted"] = "t_shirt"
    """A T-shirt hangs with some ease, a fitted top lies on the body."""
    length: Literal["waist", "hip", "t_shirt"] = "t_shirt"
    """To the waist, to the hip, or a little below it."""
    sleeve: SleeveLength = "short"
    """No sleeve, short, three quarter, or to the wrist."""
    neck: Neck = "crew"
    """At the neck base, a little wider, a scoop, or deep."""
    back: BackNeck = "high"
    """At the neck base, a little lower, a scoop, or low; the first two lie lower the wider the neck is."""
    own_length: Annotated[AmountText | None, _SHAPE] = None
    """From the waist down to the hem, instead of the length's own."""
    put_on: Literal["over_head", "opening"] = "over_head"
    """Over the head, or with an opening."""


class BodysuitParameters(UpperStretchParameters):
    """A bodysuit of stretch cloth, in one from neck to crotch: a swimsuit, or for dance.

    The stretch of the cloth must be said both ways, since the suit is drafted for it.
    """

    use: Literal["swimsuit", "dance"] = "swimsuit"
    """For the water, or worn for hours."""
    sleeve: SleeveLength = "none"
    """No sleeve, short, three quarter, or to the wrist."""
    neck: Neck = "scoop"
    """At the neck base, a little wider, a scoop, or deep."""
    back: BackNeck = "scoop"
    """At the neck base, a little lower, a scoop, or low; the first two lie lower the wider the neck is."""
    shoulder: Shoulder | None = None
    """The whole shoulder, or cut down to a strap; empty: a strap where there is no sleeve."""
    strap_width: Annotated[AmountText, _SHAPE] = "40 mm"
    """Width of the strap at the shoulder seam."""
    strap_place: Annotated[AmountText | None, _SHAPE] = None
    """From the neck base along the shoulder to the middle of the strap; empty: a little beyond the middle."""
    leg: Leg = "classic"
    """How high the leg is cut: low, classic so that its opening suits the thigh, or high."""
    own_leg_opening: Annotated[AmountText | None, _SHAPE] = None
    """Length of the whole leg opening on the pattern, instead of the leg's own."""
    crotch_width: Annotated[AmountText | None, _SHAPE] = None
    """Whole width of the crotch join; empty: in proportion to the hip."""
    put_on: Literal["through_neck", "over_head", "opening"] = "through_neck"
    """Stepped into through the neck, over the head with the crotch opening, or with a zip."""


class LeggingsParameters(ClothParameters):
    """Leggings of stretch cloth, each leg one piece with a single seam, or with a side seam too.

    The stretch of the cloth must be said, since the leggings are drafted for it. Eases are of the whole
    girth, below 0 where the garment is smaller than the body.
    """

    side_seam: bool = False
    """Whether there is a side seam: it takes in a waist that is much smaller than the hip."""
    own_length: Annotated[AmountText | None, _SHAPE] = None
    """From the crotch level down to the hem, instead of the inside leg to the ankle."""
    waist_ease: EaseText = None
    """Ease of the whole waist; below 0 the garment is smaller."""
    hip_ease: EaseText = None
    """Ease of the whole hip; below 0 the garment is smaller."""
    thigh_ease: EaseText = None
    """Ease round the thigh; below 0 the garment is smaller."""
    knee_ease: EaseText = None
    """Ease round the knee; below 0 the garment is smaller."""
    calf_ease: EaseText = None
    """Ease round the calf; below 0 the garment is smaller."""
    ankle_ease: EaseText = None
    """Ease round the ankle, at the hem; below 0 the garment is smaller."""
