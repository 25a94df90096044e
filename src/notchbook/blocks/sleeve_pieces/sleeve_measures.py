"""What arm, bodice and parameters give the sleeve's numbers."""

from dataclasses import dataclass

from notchbook.blocks.bodice_pieces.wearer import wearer_in
from notchbook.blocks.set_in.figures import figure
from notchbook.blocks.set_in.given import ArmholeGiven, SleeveGiven
from notchbook.blocks.sleeve_pieces.eases import sleeve_rows
from notchbook.blocks.sleeve_pieces.fabrics import fabric_choices, fabric_rows
from notchbook.blocks.sleeve_pieces.parameters import SleeveParameters
from notchbook.body import MeasureSet
from notchbook.errors import InputError
from notchbook.recipe import MeasureNeeds, SometimesNeeded, StepContext

NEEDS = MeasureNeeds(
    needed=("upper_arm_girth",),
    helpful=("elbow_girth", "elbow_length"),
    sometimes=(
        SometimesNeeded("for a long or three-quarter sleeve", ("arm_length", "wrist_girth")),
        SometimesNeeded("for a short sleeve without a length of its own", ("arm_length",)),
    ),
)
"""What the block needs, for a list of blocks."""


def needs_for(parameters: SleeveParameters, _: MeasureSet) -> MeasureNeeds:
    """What the block needs of a body with these parameters."""
    needed = ["upper_arm_girth"]
    has_own_length = parameters.length == "cap" or parameters.own_length is not None
    if parameters.length == "three_quarter" or not has_own_length:
        needed.append("arm_length")
    is_to_wrist = parameters.length in ("long", "three_quarter")
    if is_to_wrist and (parameters.own_hem is None or parameters.length == "three_quarter"):
        needed.append("wrist_girth")
    helpful = NEEDS.helpful if is_to_wrist else ()
    return MeasureNeeds(needed=tuple(needed), helpful=helpful)


@dataclass(frozen=True, slots=True)
class ArmRead:
    """What was read of the arm, mm; None where it is not needed or was not taken.

    ``elbow_is_assumed`` says that the level of the elbow was taken from the arm length.
    """

    upper_arm: float
    wrist: float | None
    elbow: float | None
    arm_length: float | None
    elbow_length: float | None
    elbow_is_assumed: bool


def cap_ease(context: StepContext, parameters: SleeveParameters) -> float:
    """The ease of the whole cap, mm; asked for where neither it nor the cloth is said.

    InputError ``sleeve-fabric-not-named``, with the cloths, their ranges and the setting to give.
    """
    if parameters.cap_ease is not None:
        ease = context.mm(parameters.cap_ease)
        if ease < 0.0:
            raise InputError("sleeve-cap-ease-negative", ease=ease)
        return ease
    if parameters.fabric is None:
        choices, said = fabric_choices()
        raise InputError("sleeve-fabric-not-named", setting="fabric", choices=choices, said=said)
    usual = fabric_rows()[parameters.fabric].drafted
    return min(usual, sleeve_rows()["cap.child_most"].value) if is_for_child(context) else usual


def is_for_child(context: StepContext) -> bool:
    """Whether the cap is drafted as for a child."""
    return wearer_in(context) == "children"


def arm_read(context: StepContext, parameters: SleeveParameters) -> ArmRead:
    """Read what these parameters need of the arm."""
    needed = needs_for(parameters, context.measures).needed
    arm = context.measure("arm_length") if "arm_length" in needed else context.find("arm_length")
    is_to_wrist = parameters.length in ("long", "three_quarter")
    level = context.find("elbow_length")
    is_assumed = level is None and arm is not None
    if is_assumed and arm is not None:
        level = arm * sleeve_rows()["length.elbow"].value
    return ArmRead(
        upper_arm=context.measure("upper_arm_girth"),
        wrist=context.measure("wrist_girth") if "wrist_girth" in needed else None,
        elbow=_taken(context, "elbow_girth") if is_to_wrist else None,
        arm_length=arm,
        elbow_length=level if is_to_wrist else None,
        elbow_is_assumed=is_assumed and is_to_wrist,
    )


def _taken(context: StepContext, key: str) -> float | None:
    """A measure that somebody took, mm; None where it is missing or only estimated."""
    value, measure = context.find(key), context.measures.find(key, context.side)
    return None if measure is None or measure.status == "estimated" else value


def sleeve_given(
    context: StepContext, parameters: SleeveParameters, armhole: ArmholeGiven, arm: ArmRead
) -> SleeveGiven:
    """What the numbers are drafted from."""
    if parameters.keep == "cap_height" and parameters.cap_height is None:
        raise InputError("sleeve-cap-height-missing")
    biceps = arm.upper_arm + context.mm(parameters.upper_arm_ease)
    height = None if parameters.cap_height is None else context.positive(parameters.cap_height, "cap_height")
    length = _length(context, parameters, arm)
    room = figure("below.elbow_room")
    return SleeveGiven(
        armhole=armhole,
        cap_ease=cap_ease(context, parameters),
        front_ease_share=figure("ease.front_share"),
        keep=parameters.keep,
        biceps=biceps,
        cap_height=height,
        hem=_hem(context, parameters, arm, biceps),
        length=length or 0.0,
        elbow=None if arm.elbow is None else arm.elbow + room,
        elbow_length=arm.elbow_length,
        back_ease=_elbow_amount(context, parameters),
        elbow_dart=parameters.elbow == "dart",
        pitch=parameters.pitch,
        below_underarm=None if length is not None else sleeve_rows()["length.cap"].value,
    )


def most_given_way(context: StepContext, parameters: SleeveParameters) -> float:
    """By how much the ease round the upper arm may give way, mm: as said, but not below the least usual."""
    ease, row = context.mm(parameters.upper_arm_ease), sleeve_rows()["ease.upper_arm"]
    least = row.usual[0] if row.usual else row.value
    return max(min(context.mm(parameters.upper_arm_gives), ease - least), 0.0)


def _length(context: StepContext, parameters: SleeveParameters, arm: ArmRead) -> float | None:
    """From the top of the cap to the hem, mm; None where it follows the cap."""
    if parameters.own_length is not None:
        return context.positive(parameters.own_length, "own_length")
    if parameters.length == "cap" or arm.arm_length is None:
        return None
    if parameters.length == "long":
        return arm.arm_length
    return arm.arm_length * sleeve_rows()[f"length.{parameters.length}"].value


def _hem(context: StepContext, parameters: SleeveParameters, arm: ArmRead, biceps: float) -> float:
    """The girth of the hem, mm: given, or by the length."""
    if parameters.own_hem is not None:
        return context.positive(parameters.own_hem, "own_hem")
    if arm.wrist is None:
        return biceps - sleeve_rows()["hem.short_taper"].value
    wrist = arm.wrist + context.mm(parameters.wrist_ease)
    if parameters.length == "long" or arm.arm_length is None:
        return wrist
    # A three-quarter sleeve is the long one cut off: what it has narrowed by then.
    cap = _USUAL_CAP * arm.arm_length
    length = _length(context, parameters, arm) or 0.0
    return biceps - (biceps - wrist) * (length - cap) / (arm.arm_length - cap)


_USUAL_CAP = 0.24
"""Share of the arm that the cap takes, to tell how far a shorter sleeve has narrowed (own judgment)."""


def _elbow_amount(context: StepContext, parameters: SleeveParameters) -> float:
    if parameters.elbow == "none":
        return 0.0
    if parameters.elbow_amount is not None:
        return context.positive(parameters.elbow_amount, "elbow_amount")
    return sleeve_rows()[f"elbow.{parameters.elbow}"].value
