"""What the body and the parameters give the trousers' numbers."""

from dataclasses import dataclass

from notchbook.blocks.legs.given import Cut, LevelGirth, TrousersGiven
from notchbook.blocks.legs.proportions import of_wearer
from notchbook.blocks.lower_measures import LowerMeasures, Rise, needed_rise_keys, usual_crotch_length
from notchbook.blocks.trouser_pieces.body_reader import BodyReader, Ease, Substitute, wearer_of
from notchbook.blocks.trouser_pieces.eases import Wearer
from notchbook.blocks.trouser_pieces.leg_figures import leg_figure
from notchbook.blocks.trouser_pieces.leg_widths import LegWidths, leg_widths
from notchbook.blocks.trouser_pieces.parameters import DartCount, TrousersParameters
from notchbook.body import MeasureSet, Side
from notchbook.errors import InputError
from notchbook.recipe import MeasureNeeds, SometimesNeeded, StepContext

NEEDED = ("waist_girth", "hip_girth", "hip_depth", "inside_leg")
ESTIMATED = ("crotch_length", "thigh_girth", "knee_girth", "knee_depth")
HELPFUL = (
    "height",
    "front_crotch_length",
    "back_crotch_length",
    "top_hip_girth",
    "belly_girth",
    "belly_depth",
    "front_waist_arc",
    "front_hip_arc",
    "calf_girth",
    "heel_girth",
)

NEEDS = MeasureNeeds(
    needed=NEEDED,
    helpful=HELPFUL,
    estimated=ESTIMATED,
    sometimes=(SometimesNeeded("unless another way to the rise was taken", ("standing_rise",)),),
)
"""What the block needs, for a list of blocks."""

FLAT_FRONTS: tuple[Wearer, ...] = ("men", "children")
"""Who has no dart in front unless one is asked for (patternmaker's review)."""


def needs_for(parameters: TrousersParameters, measures: MeasureSet) -> MeasureNeeds:
    """What the block needs of this body: the rise is taken one way of three."""
    needed = tuple(dict.fromkeys((*NEEDED, *needed_rise_keys(measures))))
    return MeasureNeeds(needed=needed, helpful=HELPFUL, estimated=ESTIMATED)


def is_flat(parameters: TrousersParameters, measures: MeasureSet) -> bool:
    """Whether the front has no dart: as written, else for men and children."""
    if parameters.front_shape != "auto":
        return parameters.front_shape == "flat"
    return wearer_of(parameters, measures) in FLAT_FRONTS


@dataclass(frozen=True)
class TrouserMeasures:
    """One side of the body as the trousers take it, all from the waist as it was measured.

    ``given`` is the numbers' input, ``drop`` how far below that waist the upper edge lies, mm. ``body`` holds
    the measures by key as they were taken or substituted, mm. ``widths`` says of the legs what was chosen.
    ``crotch_falls``: nothing tells the crotch length, so that the seam is left as the usual draft has it.
    """

    given: TrousersGiven
    drop: float
    wearer: Wearer
    body: dict[str, float]
    eases: dict[str, Ease]
    rise: Rise
    widths: LegWidths
    substitutes: tuple[Substitute, ...]
    lower: LowerMeasures
    crotch_falls: bool = False

    @property
    def is_thigh_taken(self) -> bool:
        """Whether somebody took the thigh."""
        return "thigh_girth" in self.lower.taken

    @property
    def is_crotch_taken(self) -> bool:
        """Whether somebody took the crotch length, whole or in parts."""
        keys = ("crotch_length", "front_crotch_length", "back_crotch_length")
        return keys[0] in self.lower.taken or set(keys[1:]) <= set(self.lower.taken)


def trouser_measures(context: StepContext, parameters: TrousersParameters, side: Side) -> TrouserMeasures:
    """The measures of one of the wearer's sides with ease; counts left open are taken as none."""
    reader = BodyReader(context, parameters, side)
    rise_of = "sitting_rise" if reader.rise.is_sitting else "standing_rise"
    eases = {of: reader.ease(of) for of in ("waist", "hip", "crotch", "thigh", rise_of)}
    waist, hip = reader.measure("waist_girth"), reader.measure("hip_girth")
    crotch, parts = _crotch(reader, hip, waist, context.measures)
    thigh = reader.either("thigh_girth", leg_figure("substitute", "thigh_girth") * hip) + eases["thigh"].value
    widths = leg_widths(reader, hip, thigh)
    ease = eases["crotch"].value
    given = TrousersGiven(
        waist=waist + eases["waist"].value,
        hip=hip + eases["hip"].value,
        hip_depth=reader.measure("hip_depth"),
        rise=reader.rise.value,
        depth_ease=eases[rise_of].value,
        depth_most=eases[rise_of].usual[1],
        crotch=(crotch or 0.0) + ease,
        thigh=thigh,
        knee_depth=widths.knee_depth,
        length=widths.length,
        knee=widths.knee,
        hem=widths.hem,
        wearer=None if reader.wearer == "children" else reader.wearer,
        cut=_cut(parameters),
        front_darts=_count(parameters.front_darts),
        back_darts=_count(parameters.back_darts),
        front_crotch=None if parts is None else parts[0] + ease / 2.0,
        back_crotch=None if parts is None else parts[1] + ease / 2.0,
        inseam_stretch=_inseam_stretch(reader),
        hem_follows=parameters.own_hem is None,
        between=_between(reader, eases["waist"].value),
        front_hip=_arc(reader, "front_hip_arc", eases["hip"].value),
        front_waist=_arc(reader, "front_waist_arc", eases["waist"].value),
        crotch_limits=parameters.crotch_limits,
        crotch_parts=parameters.crotch_parts,
        narrow_darts=parameters.narrow_darts,
    )
    return TrouserMeasures(
        given=given,
        drop=reader.mm(parameters.waist_drop),
        wearer=reader.wearer,
        body=reader.body,
        eases={("rise" if of == rise_of else of): ease for of, ease in eases.items()},
        rise=reader.rise,
        widths=widths,
        substitutes=tuple(reader.substitutes),
        lower=reader.lower,
        crotch_falls=crotch is None,
    )


def _inseam_stretch(reader: BodyReader) -> float:
    """What the back inseam is stretched by, mm; InputError ``inseam-stretch-outside`` for more than usual."""
    stretch, most = reader.mm(reader.parameters.inseam_stretch), leg_figure("inseam", "most_stretch")
    if not 0.0 <= stretch <= most:
        raise InputError("inseam-stretch-outside", amount=stretch, most=most)
    return stretch


def _crotch(
    reader: BodyReader, hip: float, waist: float, measures: MeasureSet
) -> tuple[float | None, tuple[float, float] | None]:
    """The crotch length, and its parts in front and behind where both were taken, up from the inseam; they
    make the whole, mm.

    Without the whole the parts make it; without either the population tells it, where there is one.
    """
    front, back = reader.taken("front_crotch_length"), reader.taken("back_crotch_length")
    whole = reader.find("crotch_length")
    if front is None or back is None:
        if whole is not None:
            return whole, None
        if measures.population is None or reader.wearer == "children":
            return None, None
        drop = measures.drop_below_natural
        usual, error = usual_crotch_length(reader.wearer, reader.rise.standing, hip, waist, drop)
        return reader.either("crotch_length", usual, error), None
    if whole is None:
        whole = reader.body["crotch_length"] = front + back
    share, forward = whole / (front + back), _inseam_forward(reader, hip)
    return whole, (front * share - forward, back * share + forward)


def _inseam_forward(reader: BodyReader, hip: float) -> float:
    """How far before the lowest point of the body, where the tape is parted, the inseam lies, mm."""
    own = reader.not_negative("inseam_forward")
    return of_wearer("parts.forward", reader.wearer) * hip if own is None else own


def _between(reader: BodyReader, ease: float) -> tuple[LevelGirth, ...]:
    """The girths taken between waist and hip, with the ease of the waist, mm."""
    found: list[LevelGirth] = []
    hip_depth = reader.measure("hip_depth")
    belly, depth, top = (reader.taken(key) for key in ("belly_girth", "belly_depth", "top_hip_girth"))
    if belly is not None and depth is not None and 0.0 < depth < hip_depth:
        found.append(LevelGirth(belly + ease, depth))
    if top is not None:
        found.append(LevelGirth(top + ease, hip_depth / 2.0))
    return tuple(sorted(found, key=lambda one: one.depth))


def _arc(reader: BodyReader, key: str, ease: float) -> float | None:
    """A front arc with its half of the ease, mm."""
    found = reader.taken(key)
    return None if found is None else found + ease / 2.0


def _cut(parameters: TrousersParameters) -> Cut:
    if parameters.silhouette == "culottes":
        return "culottes"
    return "wide" if parameters.silhouette == "wide" else "close"


def _count(count: DartCount) -> int:
    return 0 if count == "auto" else count
