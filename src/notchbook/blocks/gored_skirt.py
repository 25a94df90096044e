"""The gored skirt block: four to twelve gores, flared from the hip or from a level below it.

Waist, hip, hem and length are met exactly: every seam edge takes in and flares the same, and waist, hip
line and hem are arcs square to the seams. The numbers are in ``gores``.
"""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.blocks.gores.arrangement import CenterOf, GorePlace, gore_places
from notchbook.blocks.gores.cut_data import HipDepths, with_cut_data
from notchbook.blocks.gores.draft import draft_gores
from notchbook.blocks.gores.given import GoresGiven, GoreWidth, HighLevel, SharedMiddles
from notchbook.blocks.gores.notes import CHECK, MOST_GORES, shape_notes
from notchbook.blocks.gores.pieces import gore_piece, gore_seams
from notchbook.blocks.gores.shapes import GoresSide
from notchbook.blocks.skirts.figures import usual_eases, usual_skirt_ease
from notchbook.blocks.skirts.lengths import floor_notes, with_usual_length
from notchbook.blocks.skirts.levels import body_levels
from notchbook.blocks.skirts.passing import passing_notes
from notchbook.body import Side
from notchbook.errors import DraftRefused
from notchbook.pattern import Expectation, Finding, Pattern, part_name, piece_name
from notchbook.recipe import AmountText, Change, MeasureNeeds, StepContext, StepDefinition, StepParameters


class GoredSkirtParameters(StepParameters):
    """Gores, eases, hem and length of a gored skirt.

    Eases are whole girths. ``length`` runs along the seams from waist to hem. The flare begins at the hip:
    each seam turns there softly from the way in to the waist; up to the hip it is straight where the hem is
    wide, else round over it. A level below the hip that is chosen keeps the skirt upright down to there.
    """

    gores: Annotated[int, Field(ge=4, le=MOST_GORES)] = 6
    """How many gores the whole skirt has."""
    center_front: CenterOf = "gore"
    """A gore or a seam at the center front. With an even number of gores the center back is the same."""
    waist_ease: AmountText = "15 mm"
    """Ease of the whole waist; 13 to 20 mm is usual."""
    hip_ease: AmountText = "50 mm"
    """Ease of the whole hip; 50 to 70 mm is usual."""
    length: AmountText = "60 cm"
    """From waist to hem, along the seams; on a small body to the knee unless it is chosen."""
    hem_girth: AmountText = "7/4 hip"
    """The whole hem."""
    flare_depth: AmountText | None = None
    """Where the flare begins, from the waist down; empty: at the hip."""
    center_front_width: AmountText | None = None
    """Width of the gore at the center front at the hip; empty: the gores are equal."""
    center_back_width: AmountText | None = None
    """Width of the gore at the center back at the hip; empty: the gores are equal."""
    opening: Literal["center_back", "gore_seam", "none"] = "center_back"
    """Where it opens: at the center back, where a gore gets a straight seam for it; at a seam between gores;
    or nowhere, and it is pulled on over the hip."""


def settle(context: StepContext, parameters: GoredSkirtParameters) -> GoredSkirtParameters:
    """Write down the length of a small body."""
    return with_usual_length(context, parameters)


def run(pattern: Pattern, context: StepContext, parameters: GoredSkirtParameters) -> Change:
    """Draft the block into the pattern."""
    back_seam = parameters.opening == "center_back"
    places = gore_places(parameters.gores, parameters.center_front, back_seam=back_seam)
    given = _given(context, parameters, places, context.side)
    side = _draft_side(context, parameters, places, given)
    flare_below_hip = given.flare_depth - given.hip_depth
    pieces = (
        gore_piece(context.slug, place, gore, flare_below_hip)
        for place, gore in zip(places, side.gores, strict=True)
    )
    drafted = pattern.with_pieces(*pieces).with_seams(*gore_seams(context.slug, places))
    depths = HipDepths(given.hip_depth, context.measure("hip_depth", "both"))
    return Change(
        pattern=with_cut_data(drafted, context.slug, places, depths, given.length),
        expectations=_promises(context, parameters, places, given),
        notes=tuple(_notes(context, parameters, places, given, side)),
    )


def _given(
    context: StepContext, parameters: GoredSkirtParameters, places: tuple[GorePlace, ...], side: Side
) -> GoresGiven:
    """What one of the wearer's sides is drafted from, mm."""
    body = (context.measure("waist_girth", side), context.measure("hip_girth", side))
    waist = body[0] + context.mm(parameters.waist_ease, side)
    hip = body[1] + context.mm(parameters.hip_ease, side)
    hip_depth = context.measure("hip_depth", side)
    length = context.positive(parameters.length, "length", "both")
    if min(waist, hip) <= 0.0:
        raise DraftRefused("skirt-waist-nothing", waist=min(waist, hip))
    if hip_depth <= 0.0 or length <= hip_depth:
        raise DraftRefused("skirt-above-hip", length=length, hip_depth=hip_depth)
    flare_depth = hip_depth
    if parameters.flare_depth is not None:
        flare_depth = context.mm(parameters.flare_depth, side)
        if not hip_depth <= flare_depth < length:
            raise DraftRefused("gored-flare-level", level=flare_depth, hip_depth=hip_depth, length=length)
    hem = context.positive(parameters.hem_girth, "hem_girth", side)
    widths = _widths(context, parameters, places, hip)
    levels = tuple(
        HighLevel(level.depth, level.girth + level.ease)
        for level in body_levels(context, 0.0, hip_depth, side)
        if level.depth < hip_depth
    )
    return GoresGiven(waist, hip, hip_depth, length, hem, flare_depth, widths, levels, *body)


def _widths(
    context: StepContext, parameters: GoredSkirtParameters, places: tuple[GorePlace, ...], hip: float
) -> tuple[GoreWidth, ...]:
    """The gores' half widths at the hip: those that are declared, the others equal."""
    declared: dict[int, float] = {}
    for index, amount, name in (
        (0, parameters.center_front_width, "center_front_width"),
        (len(places) - 1, parameters.center_back_width, "center_back_width"),
    ):
        if amount is not None:
            declared[index] = context.positive(amount, name, "both") / 2.0
    taken = sum(places[index].halves * half for index, half in declared.items())
    left = sum(place.halves for index, place in enumerate(places) if index not in declared)
    rest = hip / 2.0 - taken
    if rest <= 0.0 or left == 0:
        raise DraftRefused("gored-widths-too-much", taken=2.0 * taken, hip=hip)
    return tuple(
        GoreWidth(declared.get(index, rest / left), place.halves) for index, place in enumerate(places)
    )


def _draft_side(
    context: StepContext,
    parameters: GoredSkirtParameters,
    places: tuple[GorePlace, ...],
    given: GoresGiven,
) -> GoresSide:
    """Draft this side; where the two sides differ, a gore on the fold gets the same ends on both."""
    own = draft_gores(given)
    if context.sides_are_alike():
        return own
    other = _given(context, parameters, places, "left" if context.side == "right" else "right")
    drawn = (own, draft_gores(other))
    middles = tuple(
        _shared(drawn, index) if place.is_over_center else None for index, place in enumerate(places)
    )
    return draft_gores(given, middles) if any(middles) else own


def _shared(drawn: tuple[GoresSide, GoresSide], index: int) -> SharedMiddles:
    """The mean of where the two sides would have the middle of a gore."""
    waist, hem = (
        sum(getattr(side.gores[index], line).start.y for side in drawn) / 2.0 for line in ("waist", "hem")
    )
    return SharedMiddles(waist, hem)


def _promises(
    context: StepContext, parameters: GoredSkirtParameters, places: tuple[GorePlace, ...], given: GoresGiven
) -> tuple[Expectation, ...]:
    """Waist, hip, hem and length as they were asked for."""
    slug = context.slug
    pieces = [piece_name(slug, place.word) for place in places]
    waist, hip = context.measure("waist_girth"), context.measure("hip_girth")
    return (
        Expectation(
            part_name(slug, "waist_girth"),
            "waist_girth",
            tuple(part_name(piece, "waist") for piece in pieces),
            2,
            waist,
            given.waist - waist,
            reason="the sewn waist sits on the band or facing",
            kept=True,
            usual_ease=usual_skirt_ease("waist"),
        ),
        Expectation(
            part_name(slug, "hip_girth"),
            "hip_girth",
            tuple(part_name(piece, "hip_line") for piece in pieces),
            2,
            hip,
            given.hip - hip,
            reason="the skirt must pass over the hip with its ease",
            usual_ease=usual_skirt_ease("hip"),
        ),
        Expectation(
            part_name(slug, "hem_girth"),
            "",
            tuple(part_name(piece, "hem") for piece in pieces),
            2,
            context.mm(parameters.hem_girth),
            0.0,
            reason="the fullness that was asked for",
        ),
        Expectation(
            part_name(slug, "skirt_length"),
            "",
            (part_name(pieces[0], places[0].back_edge),),
            1,
            given.length,
            0.0,
            reason="the hem lies where it was asked for",
            kind="length",
        ),
    )


def _notes(
    context: StepContext,
    parameters: GoredSkirtParameters,
    places: tuple[GorePlace, ...],
    given: GoresGiven,
    side: GoresSide,
) -> tuple[Finding, ...]:
    pieces = [piece_name(context.slug, place.word) for place in places]
    waists = tuple(part_name(piece, "waist") for piece in pieces)
    levels = body_levels(context, context.mm(parameters.hip_ease), given.length)
    hip = context.find("hip_girth") if parameters.opening == "none" else None
    seam = part_name(pieces[0], places[0].back_edge)
    return (
        *shape_notes(context.slug, given, side, levels, seam),
        *passing_notes(CHECK, context.slug, given.waist, hip, waists),
        *floor_notes(CHECK, context, given.length, part_name(pieces[-1], "hem")),
    )


STEP = StepDefinition(
    operation="gored_skirt",
    version=2,
    kind="block",
    title="Draft gored skirt",
    sentence="{gores} gores, waist ease {waist_ease}, hip ease {hip_ease}, hem {hem_girth}, length {length}",
    parameters=GoredSkirtParameters,
    run=run,
    settle=settle,
    needs=MeasureNeeds(
        needed=("waist_girth", "hip_girth", "hip_depth"),
        helpful=("top_hip_girth", "belly_girth", "belly_depth", "knee_depth", "outside_leg", "height"),
    ),
    eases=usual_eases,
    upcasters={1: dict},
    refuses=(
        "skirt-above-hip",
        "skirt-waist-nothing",
        "gored-flare-level",
        "gored-flare-too-wide",
        "gored-waist-unreachable",
        "gored-gore-too-narrow",
        "gored-widths-too-much",
        "amount-not-positive",
    ),
)
