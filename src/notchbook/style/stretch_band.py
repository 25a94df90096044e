"""A band that draws in an opening of a stretch garment: a strip, shorter than its opening by the material.

It is derived: it is cut to the opening as sewn after the last shaping step, so that it always fits. Quarter
marks on band and opening say how it is stretched on evenly.
"""

from typing import Annotated

from pydantic import Field

from notchbook.errors import InputError, StepRefused
from notchbook.pattern import EdgeUse, Pattern, piece_name, require
from notchbook.pattern.names import last_word
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
    StretchText,
)
from notchbook.style._band_materials import BAND_ROWS, BandMaterial, BandRow
from notchbook.style._band_openings import opening_of
from notchbook.style._band_passing import BandAsked, Passing, PutOn, passing, passing_girth, passing_notes
from notchbook.style._band_piece import Band, with_band
from notchbook.units import parse_stretch


class BandEdge(StepParameters):
    """One edge (or group) of the opening and the end at which the band comes to it."""

    edge: EdgeName
    """A part of the opening."""
    starts_at: PointName
    """The end at which the band comes to it."""


class StretchBandParameters(StepParameters):
    """The edges of an opening in order: round an arm or leg, or from one center of the body to the other.

    The band is so much shorter than its opening as its material draws in. What must pass it is looked at.
    """

    edges: Annotated[tuple[BandEdge, ...], Field(min_length=1)]
    """The opening, edge after edge, on one side of the wearer."""
    material: BandMaterial = "rib"
    """Rib, jersey, the garment's own cloth, or bare elastic."""
    depth: AmountText = "20 mm"
    """Finished width of the band; cloth is cut twice as wide and folded."""
    share: Annotated[float, Field(gt=0.4, le=1.1)] | None = None
    """Length of the band over that of its opening; empty: what is usual for the material."""
    stretch: StretchText | None = None
    """Stretch along the band: 10 cm to 14 cm, or 40 %. Needed for jersey and the garment's own cloth."""
    cloth: StretchText | None = None
    """Stretch of the garment's cloth across; empty: whether the opening itself stretches is not looked at."""
    put_on: PutOn = "over_head"
    """Over the head, stepped into, or with an opening."""
    passes: Passing = "auto"
    """What must pass the band; auto goes by its opening and how the garment is put on."""


def run(pattern: Pattern, context: StepContext, parameters: StretchBandParameters) -> Change:
    """Draw the band, sew it to its opening, mark the quarters, and look at what must pass."""
    row = BAND_ROWS[parameters.material]
    stretch = _band_stretch(parameters, row)
    depth = context.positive(parameters.depth, "depth", "both")
    uses = tuple(EdgeUse(one.edge, one.starts_at) for one in parameters.edges)
    opening = opening_of(pattern, uses)
    share = row.share if parameters.share is None else parameters.share
    length = share * opening.length
    if length <= 2.0 * depth:
        raise StepRefused("band-too-short", depth=depth, length=length)
    after = with_band(pattern, Band(context.slug, opening, length, depth, parameters.material))
    first = pattern.piece_of(require(pattern, uses[0].edge)[0])
    what = parameters.passes
    if what == "auto":
        what = passing(opening.word, last_word(first.name), parameters.put_on)
    asked = BandAsked(
        context.slug,
        piece_name(context.slug, "band"),
        uses[0].edge,
        share * opening.girth,
        opening.girth,
        stretch,
        None if parameters.cloth is None else parse_stretch(parameters.cloth).stretch,
        row.words,
    )
    notes = tuple(passing_notes(asked, what, passing_girth(context, what)))
    return Change(after, notes=notes)


def _band_stretch(parameters: StretchBandParameters, row: BandRow) -> float:
    """How far the band stretches, a share. InputError ``band-stretch-not-tested`` where that is not known."""
    if parameters.stretch is not None:
        return parse_stretch(parameters.stretch).stretch
    if row.stretch is None:
        raise InputError("band-stretch-not-tested", material=row.words)
    return row.stretch


STEP = StepDefinition(
    operation="stretch_band",
    version=1,
    kind="style",
    phase="derived",
    title="Stretch band",
    sentence="{material}, {depth} finished, at {edges}",
    parameters=StretchBandParameters,
    run=run,
)
"""The step."""
