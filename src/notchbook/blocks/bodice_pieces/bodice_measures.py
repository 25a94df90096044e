"""What the body and the parameters give the bodice's numbers."""

from dataclasses import dataclass, replace
from typing import Literal

from notchbook.blocks.bodice_pieces.below_waist import HipGiven, side_over_hip
from notchbook.blocks.bodice_pieces.eases import (
    EASES,
    LAYER_WORDS,
    EaseRow,
    Wearer,
    ease_row,
    layer_row,
)
from notchbook.blocks.bodice_pieces.parameters import UpperParameters
from notchbook.blocks.bodice_pieces.substitutes import usual_back_shoulder, usual_slope
from notchbook.blocks.upper.given import BodiceGiven, BustGiven
from notchbook.blocks.upper.slope_drop import raised_slope, slope_drop
from notchbook.blocks.upper_measures import Trusted, look_at_upper, read_upper
from notchbook.body import MeasureSet, Side
from notchbook.body.doubts.child import is_child
from notchbook.recipe import MeasureNeeds, SometimesNeeded, StepContext

BUST_KEYS = ("front_waist_length", "center_front_length", "neck_to_bust_point", "bust_point_width")
"""Measures that shape the bust: needed with a bust dart, else used where they were taken."""

NEEDED = (
    "bust_girth",
    "waist_girth",
    "back_waist_length",
    "neck_base_girth",
    "shoulder_length",
    "scye_depth",
    "across_back",
    "across_chest",
)
ESTIMATED = ("shoulder_slope",)
ARM = "upper_arm_girth"
"""Helps where it is full: its armhole is drafted a little wider."""

HELPFUL = ("upper_bust_girth", "under_bust_girth", "height", "shoulder_point_to_center_waist", ARM)

BELLY = "belly_girth"
"""Helps a block that goes on to the hip: no line is drawn from it, but a belly that is not held is said."""

NEEDS = MeasureNeeds(
    needed=NEEDED,
    helpful=HELPFUL,
    estimated=ESTIMATED,
    sometimes=(
        SometimesNeeded("with bust shaping", BUST_KEYS),
        SometimesNeeded("for a bodice to the hip", ("hip_girth", "hip_depth")),
    ),
)
"""What the block needs, for a list of blocks."""

SMALLEST_ADULT_CHEST = 760.0
"""mm; below it, where nobody said whose body it is, the eases are a child's (own judgment)."""


def needs_for(parameters: UpperParameters, measures: MeasureSet) -> MeasureNeeds:
    """What the block needs of this body with these parameters."""
    shaped = has_bust_shaping(parameters, measures)
    hip = ("hip_girth", "hip_depth") if parameters.reaches_hip else ()
    front = BUST_KEYS if shaped else ()
    helpful = HELPFUL if shaped else (*BUST_KEYS[:2], *HELPFUL)
    belly = (BELLY,) if hip else ()
    return MeasureNeeds(needed=(*NEEDED, *front, *hip), helpful=(*helpful, *belly), estimated=ESTIMATED)


def wearer_of(parameters: UpperParameters, measures: MeasureSet) -> Wearer:
    """Whose eases are taken: as written, else as the set says whose body it is, else by what was taken."""
    if parameters.wearer != "auto":
        return parameters.wearer
    if measures.population is not None:
        return measures.population
    if parameters.bust_shaping == "dart" or _has_bust_measures(measures):
        return "women"
    chest = measures.find("bust_girth")
    is_small = chest is not None and chest.value < SMALLEST_ADULT_CHEST
    return "children" if is_small or is_child(measures) else "men"


def has_bust_shaping(parameters: UpperParameters, measures: MeasureSet) -> bool:
    """Whether the bodice has a bust dart: as written, else for women."""
    if parameters.bust_shaping != "auto":
        return parameters.bust_shaping == "dart"
    return wearer_of(parameters, measures) == "women"


def _has_bust_measures(measures: MeasureSet) -> bool:
    return all(measures.find(key) is not None for key in BUST_KEYS)


@dataclass(frozen=True)
class Ease:
    """An ease that is really taken, mm, with its usual range."""

    value: float
    usual: tuple[float, float]


@dataclass(frozen=True)
class BodiceMeasures:
    """One side of the body as the bodice takes it: the numbers' input, what was measured, the eases.

    ``body`` holds the measures as taken, by key, mm; ``trusted`` which of them are replaced. ``slope_error``
    is the ± of a slope that was not measured and ``lift`` what was taken
    off the slope, degrees; ``front_is_assumed`` says that no front length was
    taken where there is no bust dart. ``hip`` is there where the bodice goes on below the waist.
    """

    given: BodiceGiven
    body: dict[str, float]
    eases: dict[str, Ease]
    trusted: Trusted
    lift: float
    slope_error: float | None
    front_is_assumed: bool
    hip: HipGiven | None = None


class _Reader:
    """Reads the measures of one side with their eases."""

    def __init__(
        self, context: StepContext, parameters: UpperParameters, side: Side, trusted: Trusted
    ) -> None:
        self._context = context
        self._parameters = parameters
        self._side = side
        self.trusted = trusted
        self.wearer = wearer_of(parameters, context.measures)
        self.body: dict[str, float] = {}

    def measure(self, key: str) -> float:
        self.body[key] = self._context.measure(key, self._side)
        return self.trusted.value(key, self.body[key])

    def find(self, key: str) -> float | None:
        found = self._context.find(key, self._side)
        if found is None:
            return None
        self.body[key] = found
        return self.trusted.value(key, found)

    def taken(self, key: str) -> float | None:
        """The measure where somebody took it; an estimate of it would tell nothing."""
        return None if self._is_estimate(key) else self.find(key)

    def ease(self, of: str) -> Ease:
        row: EaseRow = ease_row(self.wearer, self._parameters.silhouette, of)
        written: str | None = getattr(self._parameters, f"{of}_ease")
        value = row.value if written is None else self._context.mm(written, self._side)
        if of == "scye":
            value += self._context.mm(self._parameters.armhole_lowered, self._side)
        return Ease(value, row.usual)

    def layer(self, of: str) -> Ease:
        """What a garment that is worn over others has more at a place of LAYER_WORDS."""
        row = layer_row(self.wearer, self._parameters.silhouette, of)
        written: str | None = getattr(self._parameters, of)
        value = row.value if written is None else self._context.mm(written, self._side)
        return Ease(value, row.usual)

    def scye_drop(self, slope: float) -> float:
        """By how much an estimated scye depth follows a shoulder slope that was measured, mm: shoulder point
        and armhole lie lower or higher by the same amount. A measured depth holds that already."""
        if not self._is_estimate("scye_depth") or self.taken("shoulder_slope") is None:
            return 0.0
        return slope_drop(self.measure("shoulder_length"), slope, usual_slope(self.wearer)[0])

    def _is_estimate(self, key: str) -> bool:
        """Whether it was estimated; asked through the context, so that the step knows what it looked at."""
        self._context.find(key, self._side)
        measure = self._context.measures.find(key, self._side)
        return measure is not None and measure.status == "estimated"

    def slope(self) -> tuple[float, float | None]:
        """The slope of the shoulder as measured or assumed, and its ± where it was assumed, degrees."""
        found = self.find("shoulder_slope")
        return (found, None) if found is not None else usual_slope(self.wearer)


def bodice_measures(
    context: StepContext, parameters: UpperParameters, side: Side, trusted: Trusted | None = None
) -> BodiceMeasures:
    """The measures of one of the wearer's sides with ease; counts left open are taken as none.

    ``trusted`` is what the draft trusts of the whole body, where that was looked at already.
    """
    reader = _Reader(context, parameters, side, trusted or trusted_measures(context))
    eases = {of: reader.ease(of) for of in EASES} | {of: reader.layer(of) for of in LAYER_WORDS}
    shaped = has_bust_shaping(parameters, context.measures)
    slope, slope_error = reader.slope()
    upper_bust = reader.find("upper_bust_girth")
    reader.find("under_bust_girth")
    bust = reader.measure("bust_girth") + eases["bust"].value
    shoulder = reader.measure("shoulder_length") + eases["shoulder_longer"].value
    lifted = slope - parameters.shoulder_lift
    given = BodiceGiven(
        bust=bust,
        waist=_waist(reader, eases, bust, is_shaped=shaped),
        across_back=reader.measure("across_back") + eases["across_back"].value,
        across_chest=reader.measure("across_chest") + eases["across_chest"].value,
        neck=reader.measure("neck_base_girth") + eases["neck"].value,
        shoulder=shoulder,
        shoulder_slope=raised_slope(shoulder, lifted, eases["shoulder_raised"].value),
        scye_depth=reader.measure("scye_depth") + reader.scye_drop(slope) + eases["scye"].value,
        back_length=reader.measure("back_waist_length"),
        bust_shape=_bust_shape(reader) if shaped else None,
        front_length=None if shaped else reader.taken("front_waist_length"),
        center_front=None if shaped else reader.taken("center_front_length"),
        upper_bust=None if upper_bust is None else upper_bust + eases["bust"].value,
        pit_lowered=eases["neck_lowered"].value,
        upper_arm=context.find(ARM, side),  # as it stands in the set: the sleeve takes it so
        back_shoulder=back_shoulder_of(parameters, context.measures),
        back_shoulder_amount=_back_shoulder_amount(context, parameters, reader.wearer, side),
        front_darts=0 if parameters.front_darts == "auto" else parameters.front_darts,
        back_darts=0 if parameters.back_darts == "auto" else parameters.back_darts,
    )
    front_is_assumed = not shaped and given.front_length is None
    lift = parameters.shoulder_lift
    hip = _hip(reader, eases) if parameters.reaches_hip else None
    if hip is not None and (not parameters.has_waist_seam or given.waist is None):
        given = replace(given, side_take_in=side_over_hip(given, hip))
    return BodiceMeasures(given, reader.body, eases, reader.trusted, lift, slope_error, front_is_assumed, hip)


def back_shoulder_of(parameters: UpperParameters, measures: MeasureSet) -> Literal["dart", "ease"]:
    """How the back shoulder is shaped: as written, else by a dart where there is bust shaping."""
    if parameters.back_shoulder != "auto":
        return parameters.back_shoulder
    return "dart" if has_bust_shaping(parameters, measures) else "ease"


def trusted_measures(context: StepContext) -> Trusted:
    """What the draft trusts of the body."""
    return look_at_upper(read_upper(context))


def with_center(measures: BodiceMeasures, center_front: float) -> BodiceMeasures:
    """The same with the front neck at this height over the waist, mm, so that the two sides meet."""
    given = measures.given
    if given.bust_shape is None:
        return replace(measures, given=replace(given, center_front=center_front))
    shape = replace(given.bust_shape, center_front=center_front)
    return replace(measures, given=replace(given, bust_shape=shape))


def center_front_of(measures: BodiceMeasures, otherwise: float) -> float:
    """The center front that was asked for, mm; ``otherwise`` where none was."""
    shape, plain = measures.given.bust_shape, measures.given.center_front
    asked = plain if shape is None else shape.center_front
    return otherwise if asked is None else asked


def _waist(reader: _Reader, eases: dict[str, Ease], bust: float, *, is_shaped: bool) -> float | None:
    """The waist with its ease; without bust shaping only where it is larger than the bust."""
    waist = reader.measure("waist_girth") + eases["waist"].value
    return waist if is_shaped or waist > bust else None


def _hip(reader: _Reader, eases: dict[str, Ease]) -> HipGiven:
    reader.find(BELLY)
    return HipGiven(reader.measure("hip_girth") + eases["hip"].value, reader.measure("hip_depth"))


def _bust_shape(reader: _Reader) -> BustGiven:
    return BustGiven(
        front_length=reader.measure("front_waist_length"),
        center_front=reader.measure("center_front_length"),
        neck_to_bust_point=reader.measure("neck_to_bust_point"),
        point_width=reader.measure("bust_point_width"),
    )


def _back_shoulder_amount(
    context: StepContext, parameters: UpperParameters, wearer: Wearer, side: Side
) -> float:
    if parameters.back_shoulder_amount is not None:
        return context.mm(parameters.back_shoulder_amount, side)
    return usual_back_shoulder(wearer, back_shoulder_of(parameters, context.measures))
