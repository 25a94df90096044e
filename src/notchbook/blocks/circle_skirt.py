"""The circle skirt block: full, three-quarter, half, quarter or a share of its own, in one to four panels.

Drafted from closed forms: the waist is an arc whose length is body plus ease, the hem a wider arc about
the same apex, so that waist and hem are square to every seam. Whether it passes the hip is looked at.
"""

from typing import Annotated, Literal

from pydantic import Field

from notchbook.blocks.circle.notes import CHECK, WIDEST_SPAN, cloth_notes, hip_notes, stretch_note
from notchbook.blocks.circle.ring import Ring
from notchbook.blocks.circle.sectors import Panels, Sector, sector_piece, sector_seams, sectors, with_cut_data
from notchbook.blocks.skirts.figures import usual_eases, usual_skirt_ease
from notchbook.blocks.skirts.lengths import floor_notes, length_promise, with_usual_length
from notchbook.blocks.skirts.levels import body_levels
from notchbook.blocks.skirts.passing import passing_notes
from notchbook.errors import DraftRefused
from notchbook.pattern import Cure, Expectation, Finding, Pattern, part_name, piece_name
from notchbook.recipe import AmountText, Change, MeasureNeeds, StepContext, StepDefinition, StepParameters

Fullness = Literal["full", "three_quarter", "half", "quarter"]

SHARES: dict[Fullness, float] = {"full": 1.0, "three_quarter": 0.75, "half": 0.5, "quarter": 0.25}


class CircleSkirtParameters(StepParameters):
    """Fullness, panels, eases and length of a circle skirt.

    Eases are whole girths. ``length`` runs from waist to hem, the same all the way round.
    """

    fullness: Fullness = "half"
    """How much of a whole circle the skirt is."""
    own_share: Annotated[float | None, Field(ge=0.05, le=2.0)] = None
    """A share of its own, instead: 1 is a full circle, 2 two of them."""
    panels: Panels = "three"
    """One: front on the fold, center back seam; two: front and back on the fold; three: the back seamed;
    four: both seamed."""
    waist_ease: AmountText = "15 mm"
    """Ease of the whole waist; 13 to 20 mm is usual."""
    hip_ease: AmountText = "50 mm"
    """Ease with which the skirt must pass over the hip; 50 to 70 mm is usual."""
    length: AmountText = "60 cm"
    """From waist to hem; on a small body to the knee unless it is chosen."""
    waist_stretch: AmountText = "0 mm"
    """By how much the waist stretches on the bias as it is sewn: it is drafted so much smaller; 10 to 30 mm
    in woven cloth."""
    opening: Literal["zip", "none"] = "zip"
    """Whether it opens at a seam, or is pulled on over the hip."""


def run(pattern: Pattern, context: StepContext, parameters: CircleSkirtParameters) -> Change:
    """Draft the block into the pattern."""
    ring = _ring(context, parameters)
    drawn = sectors(ring, parameters.panels)
    _require_apart(context, drawn)
    hip_depth = context.find("hip_depth")
    drafted = pattern.with_pieces(*(sector_piece(context.slug, ring, one, hip_depth) for one in drawn))
    drafted = drafted.with_seams(*sector_seams(context.slug, drawn))
    # A notch in a seam between the wearer's two sides belongs to both.
    notched = context.find("hip_depth", "both") if len(drawn) == 1 else hip_depth
    drafted = with_cut_data(drafted, context.slug, ring, drawn, notched)
    return Change(
        pattern=drafted,
        expectations=_promises(context, parameters, ring, drawn),
        notes=tuple(_notes(context, parameters, ring, drawn)),
    )


def _ring(context: StepContext, parameters: CircleSkirtParameters) -> Ring:
    """This side of the skirt as a whole ring, mm."""
    stretch = context.mm(parameters.waist_stretch)
    waist = context.measure("waist_girth") + context.mm(parameters.waist_ease) - stretch
    share = SHARES[parameters.fullness] if parameters.own_share is None else parameters.own_share
    if stretch < 0.0:
        raise DraftRefused("circle-stretch-negative", stretch=stretch)
    if waist <= 0.0:
        raise DraftRefused("skirt-waist-nothing", waist=waist)
    return Ring(share, waist, context.positive(parameters.length, "length", "both"))


def _require_apart(context: StepContext, drawn: tuple[Sector, ...]) -> None:
    """Refuse a piece that goes so far round the circle that its two ends meet."""
    span = max(sector.whole_span for sector in drawn)
    if span > WIDEST_SPAN:
        wider = "three" if drawn[0].word == "skirt" and span <= 2.0 * WIDEST_SPAN else "four"
        cure = Cure(context.slug, "panels", wider, f"cut it in {wider} panels")
        raise DraftRefused("circle-piece-meets-itself", span=span, most=WIDEST_SPAN, cures=(cure,))


def _promises(
    context: StepContext, parameters: CircleSkirtParameters, ring: Ring, drawn: tuple[Sector, ...]
) -> tuple[Expectation, ...]:
    """Waist, hem and length as they were asked for."""
    slug = context.slug
    pieces = [piece_name(slug, sector.word) for sector in drawn]
    last = drawn[-1]
    body, stretch = context.measure("waist_girth"), context.mm(parameters.waist_stretch)
    ends = [part_name(pieces[-1], f"{level}_{last.center_end}") for level in ("waist", "hem")]
    return (
        Expectation(
            part_name(slug, "waist_girth"),
            "waist_girth",
            tuple(part_name(piece, "waist") for piece in pieces),
            2,
            body,
            context.mm(parameters.waist_ease) - stretch,
            reason="the sewn waist sits on the band or facing",
            kept=True,
            usual_ease=usual_skirt_ease("waist") if stretch == 0.0 else None,
        ),
        Expectation(
            part_name(slug, "hem_girth"),
            "",
            tuple(part_name(piece, "hem") for piece in pieces),
            2,
            ring.hem,
            0.0,
            reason="the fullness that was asked for",
        ),
        length_promise(part_name(slug, "skirt_length"), ring.length, (ends[0], ends[1])),
    )


def _notes(
    context: StepContext, parameters: CircleSkirtParameters, ring: Ring, drawn: tuple[Sector, ...]
) -> tuple[Finding, ...]:
    pieces = [piece_name(context.slug, sector.word) for sector in drawn]
    waists = tuple(part_name(piece, "waist") for piece in pieces)
    levels = body_levels(context, context.mm(parameters.hip_ease), ring.length)
    hip = context.find("hip_girth") if parameters.opening == "none" else None
    return (
        *hip_notes(context.slug, ring, drawn, levels),
        *passing_notes(CHECK, context.slug, ring.waist, hip, waists),
        *cloth_notes(context.slug, ring, drawn),
        *stretch_note(context.mm(parameters.waist_stretch), waists[0]),
        *floor_notes(CHECK, context, ring.length, part_name(pieces[-1], "hem")),
    )


STEP = StepDefinition(
    operation="circle_skirt",
    version=1,
    kind="block",
    title="Draft circle skirt",
    sentence="{fullness} circle, {panels} panels, waist ease {waist_ease}, length {length}",
    parameters=CircleSkirtParameters,
    run=run,
    settle=with_usual_length,
    needs=MeasureNeeds(
        needed=("waist_girth",),
        helpful=(
            "hip_girth",
            "hip_depth",
            "top_hip_girth",
            "belly_girth",
            "belly_depth",
            "knee_depth",
            "outside_leg",
            "height",
        ),
    ),
    eases=usual_eases,
    refuses=(
        "circle-piece-meets-itself",
        "circle-stretch-negative",
        "skirt-waist-nothing",
        "amount-not-positive",
    ),
)
