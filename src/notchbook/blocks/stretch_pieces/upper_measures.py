"""What body, cloth and parameters give the numbers of torso and bodysuit."""

from dataclasses import dataclass

from notchbook.blocks.bodice_pieces.substitutes import usual_slope
from notchbook.blocks.bodice_pieces.wearer import wearer_in
from notchbook.blocks.stretch.given import StrapGiven, StretchSleeveGiven, TorsoGiven
from notchbook.blocks.stretch_fabric.reductions import Reduced, least_girth
from notchbook.blocks.stretch_pieces.cuts import cut
from notchbook.blocks.stretch_pieces.parameters import BodysuitParameters, StretchTorsoParameters
from notchbook.blocks.stretch_pieces.reading import StretchReader
from notchbook.body import Side
from notchbook.recipe import MeasureNeeds, SometimesNeeded

UPPER_NEEDED = (
    "bust_girth",
    "waist_girth",
    "hip_girth",
    "hip_depth",
    "back_waist_length",
    "neck_base_girth",
    "shoulder_length",
    "scye_depth",
    "across_back",
)
ESTIMATED = ("shoulder_slope",)
HELPFUL = ("across_chest", "front_waist_length", "head_girth")
"""``front_waist_length`` says how much longer the front is over the bust, ``head_girth`` whether the head
passes the neck."""

SLEEVE_NEEDED = {
    "none": (),
    "short": ("upper_arm_girth", "arm_length"),
    "three_quarter": ("upper_arm_girth", "arm_length", "wrist_girth"),
    "long": ("upper_arm_girth", "arm_length", "wrist_girth"),
}
"""What each sleeve needs; ``hand_girth`` says whether the hand passes."""

NEEDS = MeasureNeeds(
    needed=UPPER_NEEDED,
    estimated=ESTIMATED,
    helpful=(*HELPFUL, "hand_girth"),
    sometimes=(
        SometimesNeeded("with a sleeve", ("upper_arm_girth", "arm_length")),
        SometimesNeeded("with a sleeve below the elbow", ("wrist_girth",)),
    ),
)
"""What the torso needs, for a list of blocks."""

AnyUpper = StretchTorsoParameters | BodysuitParameters


@dataclass(frozen=True)
class TorsoRead:
    """The numbers' input, and what stands behind it by measure.

    ``slope_error`` is the ± of a slope that was not measured (degrees), ``hem_wider`` what was added to the
    hem of the sleeve for the hand, mm, ``is_woman`` whether a bust is to be looked for.
    """

    given: TorsoGiven
    taken: dict[str, Reduced]
    slope_error: float | None
    hem_wider: float
    is_woman: bool


def upper_needs(parameters: AnyUpper) -> MeasureNeeds:
    """What torso and bodysuit need of a body with these parameters."""
    sleeve = SLEEVE_NEEDED[parameters.sleeve]
    hand = ("hand_girth",) if parameters.sleeve == "long" else ()
    return MeasureNeeds(needed=(*UPPER_NEEDED, *sleeve), estimated=ESTIMATED, helpful=(*HELPFUL, *hand))


def torso_read(
    reader: StretchReader, parameters: AnyUpper, length: float, strap: StrapGiven | None
) -> TorsoRead:
    """The torso of one side; ``length`` runs from the waist to the hem, mm (of a bodysuit it is not read)."""
    slope = reader.find("shoulder_slope")
    wearer = wearer_in(reader.context)
    assumed = usual_slope(wearer)
    back_length = reader.shared("back_waist_length", "trunk")
    shoulder = reader.pattern("shoulder_length", "shoulder")
    bust = reader.pattern("bust_girth", "bust", parameters.bust_ease)
    hip = reader.pattern("hip_girth", "hip", parameters.hip_ease)
    given = TorsoGiven(
        bust=bust,
        is_close=not reader.is_loose,
        bust_limits=_bust_limits(reader, parameters, bust),
        waist=_waist(reader, parameters, bust, hip),
        loosest_waist=_loosest_waist(reader, parameters),
        hip=hip,
        neck=reader.pattern("neck_base_girth", "neck"),
        shoulder=shoulder,
        shoulder_slope=assumed[0] if slope is None else slope,
        across_back=reader.pattern("across_back", "across"),
        across_chest=reader.found("across_chest", "across"),
        armhole_depth=_armhole_depth(reader, parameters),
        back_length=back_length,
        hip_depth=reader.pattern("hip_depth", "trunk"),
        length=length,
        neck_wider=_neck_wider(reader, parameters, shoulder, strap),
        front_neck_lower=_lowered(
            reader, parameters.own_front_neck, cut(f"front_neck_lower.{parameters.neck}") * back_length
        ),
        back_neck_lower=_lowered(reader, parameters.own_back_neck, _back_share(parameters) * back_length),
        shoulder_in=0.0 if parameters.sleeve != "none" or strap else cut("strap.cut_in") * shoulder,
        strap=strap,
        sleeve=_sleeve(reader, parameters),
        front_length=_front_length(reader),
        front_gives=_front_gives(reader),
        front_longer=_front_longer(reader, parameters),
    )
    slope_error = assumed[1] if slope is None else None
    return TorsoRead(given, reader.taken, slope_error, reader.wider.get("hand_girth", 0.0), wearer == "women")


def _waist(reader: StretchReader, parameters: AnyUpper, bust: float, hip: float) -> float | None:
    """The waist; None where a loose top falls past it by itself."""
    waist = reader.pattern("waist_girth", "waist", parameters.waist_ease)
    falls = reader.use == "t_shirt" and parameters.waist_ease is None and waist <= min(bust, hip)
    return None if falls else waist


def _bust_limits(reader: StretchReader, parameters: AnyUpper, bust: float) -> tuple[float, float] | None:
    """Between which widths of the bust, mm, the draft may choose what suits the across back: what is usual
    for the use and what the cloth lets be. None where an ease of her own is left as it is."""
    usual = reader.taken["bust_girth"].usual
    if parameters.bust_ease is not None or usual is None:
        return None
    body = reader.body("bust_girth")
    least, most = (body + reader.size * ease for ease in usual)
    return min(max(least, least_girth(body, reader.cloth)), bust), max(most, bust)


def _loosest_waist(reader: StretchReader, parameters: AnyUpper) -> float | None:
    """As wide as the waist may be drafted for the side seam's sake; an ease of her own is left as it is."""
    if parameters.waist_ease is not None:
        return None
    return cut("waist.loosest") * reader.body("waist_girth")


def _armhole_depth(reader: StretchReader, parameters: AnyUpper) -> float:
    lowered = reader.context.mm(parameters.armhole_lowered, reader.side)
    return reader.pattern("scye_depth", "scye") + reader.size * cut(f"armhole.{reader.use}") + lowered


def _front_length(reader: StretchReader) -> float | None:
    """From the side-neck point over the bust to the waist, mm; the center front belongs to both sides."""
    sides: tuple[Side, ...] = ("right", "left")
    if any(reader.context.find("front_waist_length", side) is None for side in sides):
        return None
    return reader.shared("front_waist_length", "trunk")


def _front_gives(reader: StretchReader) -> float:
    """What the cloth may give of that length over the bust, mm."""
    length = _front_length(reader) or 0.0
    along = cut("front_gives.untested") if reader.cloth.along is None else reader.cloth.along
    return cut("front_gives.share") * along * length


def _front_longer(reader: StretchReader, parameters: AnyUpper) -> float | None:
    own = parameters.own_front_longer
    return None if own is None else max(reader.context.mm(own, "both"), 0.0)


def _neck_wider(
    reader: StretchReader, parameters: AnyUpper, shoulder: float, strap: StrapGiven | None
) -> float:
    """How far the neck is opened along the shoulder, mm: up to the strap where there is one."""
    if parameters.own_neck_wider is not None:
        return reader.context.mm(parameters.own_neck_wider, reader.side)
    if strap is not None and strap.place is not None:
        return strap.place - strap.width / 2.0
    return cut(f"neck_wider.{parameters.neck}") * shoulder


def _lowered(reader: StretchReader, own: str | None, usual: float) -> float:
    """How far a neck is lowered at its center, mm; the center belongs to both sides."""
    return usual if own is None else reader.context.mm(own, "both")


def _back_share(parameters: AnyUpper) -> float:
    """How far the back neck is lowered over the length from nape to waist: of an opened neck one at the base,
    or a high one, lower."""
    is_flat = parameters.back in ("base", "high")
    opened = cut(f"back_neck_opened.{parameters.neck}") if is_flat else 0.0
    return cut(f"back_neck_lower.{parameters.back}") + opened


def _sleeve(reader: StretchReader, parameters: AnyUpper) -> StretchSleeveGiven | None:
    if parameters.sleeve == "none":
        return None
    biceps = reader.pattern("upper_arm_girth", "upper_arm", parameters.upper_arm_ease)
    arm = reader.pattern("arm_length", "arm")
    length = arm if parameters.sleeve == "long" else arm * cut(f"sleeve.{parameters.sleeve}")
    if parameters.own_sleeve_length is not None:
        length = reader.context.positive(parameters.own_sleeve_length, "own_sleeve_length", reader.side)
    hem = _sleeve_hem(reader, parameters, biceps, length / arm)
    return StretchSleeveGiven(biceps, hem + _wider_for_hand(reader, parameters, hem), length)


def _wider_for_hand(reader: StretchReader, parameters: AnyUpper, hem: float) -> float:
    """What the hem of a long sleeve lacks for the hand, mm, unless somebody chose its ease."""
    hand = reader.find("hand_girth") if parameters.sleeve == "long" else None
    if hand is None or parameters.wrist_ease is not None:
        return 0.0
    return reader.widened("hand_girth", max(hand / (1.0 + reader.cloth.across) - hem, 0.0))


def _sleeve_hem(reader: StretchReader, parameters: AnyUpper, biceps: float, share: float) -> float:
    """The girth of the sleeve's hem, mm; ``share`` is how much of the arm the sleeve covers."""
    if parameters.sleeve == "short":
        return biceps * (1.0 - cut("sleeve.taper"))
    wrist = reader.pattern("wrist_girth", "wrist", parameters.wrist_ease)
    cap = cut("sleeve.cap")
    # A three-quarter sleeve is the long one cut off: what it has narrowed by then.
    return biceps - (biceps - wrist) * min(max((share - cap) / (1.0 - cap), 0.0), 1.0)
