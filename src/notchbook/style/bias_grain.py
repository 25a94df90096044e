"""Turn the grain of pieces, as a rule by 45 degrees: cut on the bias.

Cloth on the bias hangs out: it grows longer and narrower under its own weight, more here than there. The step
turns the grain and says how long to hang and by how much the piece will narrow; nothing is taken off or added
by itself.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import Annotated

from pydantic import Field

from notchbook.pattern import (
    Finding,
    Grain,
    Measured,
    Operation,
    Pattern,
    Piece,
    Severity,
    part_name,
    require_one,
    spoken,
    worded,
)
from notchbook.recipe import Change, PieceName, StepContext, StepDefinition, StepParameters
from notchbook.style.fullness.figures import BIAS_HANG_OUT, BIAS_NARROWS

_ON_BIAS = 15.0
"""Degrees from warp and weft beyond which cloth hangs out. Own judgment."""


class BiasParameters(StepParameters):
    """The ``pieces`` whose grain is turned, and by how many ``degrees``."""

    pieces: Annotated[tuple[PieceName, ...], Field(min_length=1)]
    """The pieces that are cut on the bias; what is sewn to a bias edge is not turned with it."""
    degrees: Annotated[float, Field(ge=-90.0, le=90.0)] = 45.0
    """By how much the grain is turned, counter-clockwise; 45 is the true bias."""
    narrows: Annotated[float, Field(ge=0.0, le=15.0)] | None = None
    """By how many percent the cloth narrows while it hangs, from a strip of it; empty: as is usual."""


def run(pattern: Pattern, context: StepContext, parameters: BiasParameters) -> Change:
    """Turn the grain of every piece; all or nothing."""
    after = pattern
    notes: list[Finding] = []
    for name in parameters.pieces:
        piece = pattern.pieces[require_one(pattern, name, "piece")]
        turned = _wrapped(piece.grain.degrees + parameters.degrees)
        after = after.with_pieces(replace(piece, grain=Grain(turned, piece.grain.one_way)))
        notes.extend(_notes(piece, parameters))
    after = _hung(after, context, parameters)
    return Change(after, grains=parameters.pieces, notes=tuple(notes))


def _wrapped(degrees: float) -> float:
    """A direction in (-180, 180]."""
    wrapped = degrees % 360.0
    return wrapped - 360.0 if wrapped > 180.0 else wrapped


def _is_on_bias(parameters: BiasParameters) -> bool:
    aside = abs(parameters.degrees) % 90.0
    return min(aside, 90.0 - aside) > _ON_BIAS


def _hung(pattern: Pattern, context: StepContext, parameters: BiasParameters) -> Pattern:
    """The pattern, told in the order of work that the cloth hangs out before its hem is turned."""
    if not _is_on_bias(parameters):
        return pattern
    titles = " and ".join(dict.fromkeys(pattern.pieces[name].title.lower() for name in parameters.pieces))
    text = f"Hang the {titles} for {BIAS_HANG_OUT.value:.0f} hours at least, then level the hem anew."
    line = Operation(part_name(context.slug, "hung"), "hems", text, parameters.pieces)
    return pattern.with_operations(line)


def _notes(piece: Piece, parameters: BiasParameters) -> Iterator[Finding]:
    """By how much it narrows: to be looked at until that was measured on a strip of the cloth."""
    if _is_on_bias(parameters):
        share = BIAS_NARROWS.value if parameters.narrows is None else parameters.narrows / 100.0
        width = piece.bounds.max_x - piece.bounds.min_x
        yield worded(
            STEP.operation,
            "bias-narrows",
            Severity.LOOK if parameters.narrows is None else Severity.NOTE,
            Measured(width * (1.0 - share), width),
            piece=piece.name,
            where=piece.name,
            piece_said=spoken(piece.name),
            narrower=width * share,
            share=100.0 * share,
            hours=BIAS_HANG_OUT.value,
        )


STEP = StepDefinition(
    operation="bias_grain",
    version=1,
    kind="style",
    title="Cut on the bias",
    sentence="{pieces}, the grain turned by {degrees} degrees",
    parameters=BiasParameters,
    run=run,
)
