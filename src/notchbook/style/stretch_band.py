"""A band that draws in an opening of a stretch garment: a strip, shorter than its opening by the material.

It is derived: it is cut to the opening as sewn after the last shaping step, so that it always fits. Quarter
marks on band and opening say how it is stretched on evenly.
"""

from collections.abc import Iterator
from typing import Annotated, Any

from pydantic import Field

from notchbook.errors import InputError, StepRefused
from notchbook.pattern import (
    Cure,
    EdgeUse,
    Finding,
    Measured,
    Pattern,
    Severity,
    piece_name,
    require,
    worded,
)
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
from notchbook.style._band_passing import (
    CHECK,
    BandAsked,
    Passing,
    PutOn,
    passing,
    passing_girth,
    passing_notes,
)
from notchbook.style._band_piece import Band, with_band
from notchbook.style._band_whole import OpeningWord, whole_opening
from notchbook.units import parse_stretch


def _called(label: str) -> Any:
    """A field whose name alone says nothing: what the form calls it, its help standing below it."""
    return Field(json_schema_extra={"label": label})


class BandEdge(StepParameters):
    """One edge (or group) of the opening and the end at which the band comes to it."""

    edge: EdgeName
    """A part of the opening."""
    starts_at: Annotated[PointName, _called("comes to it at")]
    """The end at which the band comes to this edge; it is filled in with the edge."""


class StretchBandParameters(StepParameters):
    """A whole opening by its word; or its edges in order, round an arm or leg, or from one center of the body
    to the other.

    The band is so much shorter than its opening as its material draws in. What must pass it is looked at.
    """

    opening: Annotated[OpeningWord | None, _called("round the whole")] = None
    """The whole opening by one word, or its edges one by one below."""
    edges: tuple[BandEdge, ...] = ()
    """The opening, edge after edge, on one side of the wearer, where no word says it."""
    material: Annotated[BandMaterial, _called("made of")] = "rib"
    """Rib, jersey, the garment's own cloth, or bare elastic."""
    depth: Annotated[AmountText, _called("finished width")] = "20 mm"
    """Finished width of the band; cloth is cut twice as wide and folded."""
    share: Annotated[Annotated[float, Field(gt=0.4, le=1.1)] | None, _called("length, of the opening")] = None
    """0.85: the band is cut to 85 % of its opening. Empty: what is usual for the material."""
    stretch: Annotated[StretchText | None, _called("band, stretch tested")] = None
    """Along the band: 10 cm pulled to 14 cm, or 40 %. Needed for jersey and the garment's own cloth."""
    cloth: Annotated[StretchText | None, _called("garment, stretch tested")] = None
    """Across the garment's cloth. Empty: whether the opening itself stretches so far is not looked at."""
    put_on: Annotated[PutOn, _called("garment is put on")] = "over_head"
    """Over the head, stepped into, or with an opening."""
    passes: Annotated[Passing, _called("must let through")] = "auto"
    """The part of the body that goes through the band; as usual: by the opening and how it is put on."""


def run(pattern: Pattern, context: StepContext, parameters: StretchBandParameters) -> Change:
    """Draw the band, sew it to its opening, mark the quarters, and look at what must pass."""
    row = BAND_ROWS[parameters.material]
    stretch = _band_stretch(parameters, row)
    depth = context.positive(parameters.depth, "depth", "both")
    uses = _uses(pattern, parameters)
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
    notes = (*_share_notes(asked, share, row), *passing_notes(asked, what, passing_girth(context, what)))
    return Change(after, notes=notes)


def _uses(pattern: Pattern, parameters: StretchBandParameters) -> tuple[EdgeUse, ...]:
    """The edges of the opening. InputError ``band-opening-unsaid`` where it is given in neither way,
    ``band-opening-twice`` where in both."""
    if parameters.opening is None and not parameters.edges:
        raise InputError("band-opening-unsaid")
    if parameters.opening is not None and parameters.edges:
        raise InputError("band-opening-twice", opening=parameters.opening.replace("_", " "))
    if parameters.opening is not None:
        return whole_opening(pattern, parameters.opening)
    return tuple(EdgeUse(one.edge, one.starts_at) for one in parameters.edges)


def _share_notes(asked: BandAsked, share: float, row: BandRow) -> Iterator[Finding]:
    """A band that is shorter or longer than is usual in its material."""
    if row.least <= share <= row.most:
        return
    nearest = row.least if share < row.least else row.most
    cure = Cure(asked.slug, "share", nearest, f"cut the band to {100.0 * nearest:.0f} % of its opening")
    yield worded(
        CHECK,
        "band-share-unusual",
        Severity.LOOK,
        Measured(share * asked.opening, nearest * asked.opening),
        piece=asked.piece,
        where=asked.where,
        share=100.0 * share,
        least=100.0 * row.least,
        most=100.0 * row.most,
        material=asked.material,
        cures=(cure,),
    )


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
    sentence="{material}, {depth} finished, at {edges}, round the whole {opening}",
    parameters=StretchBandParameters,
    run=run,
)
"""The step."""
