"""Take up a dart otherwise: as gathers, as ease, as a tuck or as a pleat.

The dart is not sewn to its point any more. Its mouth stays open and the edge runs across it: for gathers and
ease as one smooth line, drawn in evenly between two notches; for a tuck or pleat so that the edge lies on
itself when it is folded. As sewn the edge is as long as it was, and every seam at it still agrees.
"""

from dataclasses import replace
from typing import Annotated, Literal

from pydantic import Field

from notchbook.errors import InputError, StepRefused
from notchbook.pattern import (
    Finding,
    Group,
    Intake,
    Measured,
    Pattern,
    Piece,
    Severity,
    frozen_map,
    piece_name,
    spoken,
    worded,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.slashing import Assembled, applied
from notchbook.recipe import AmountText, Change, IntakeName, StepContext, StepDefinition, StepParameters
from notchbook.style.darts.drawn_in import DrawnIn, drawn_in_dart
from notchbook.style.darts.folded import Folded, folded_dart
from notchbook.style.darts.found import darts_named
from notchbook.units import TOLERANCES

Into = Literal["gather", "ease", "tuck", "pleat"]


class ConvertDartParameters(StepParameters):
    """The ``darts``, what they are turned ``into``, and how far that reaches."""

    darts: Annotated[tuple[IntakeName, ...], Field(min_length=1)]
    """The darts that are taken up otherwise."""
    into: Into = "gather"
    """Gathers, ease, a tuck (a fold stitched down a little) or a pleat (a fold held at the edge alone)."""
    beside: AmountText = "25 mm"
    """Gathers and ease: how far they reach to both sides of the mouth."""
    stitched: AmountText = "40 mm"
    """Tuck: how far it is stitched down from the edge."""


def run(pattern: Pattern, context: StepContext, parameters: ConvertDartParameters) -> Change:
    """Convert every dart; all or nothing. StepRefused ``dart-empty`` for one that takes up nothing here."""
    splits: dict[str, tuple[str, ...]] = {}
    merges: dict[str, tuple[str, ...]] = {}
    removals: dict[str, str] = {}
    notes: list[Finding] = []
    for name in parameters.darts:
        piece, (dart,) = darts_named(pattern, (name,))
        _require_mouth(piece, dart)
        if parameters.into in ("tuck", "pleat"):
            pattern = pattern.with_pieces(_folded(piece, dart, parameters, context))
        else:
            change = _drawn_in(pattern, piece, dart, parameters, context)
            pattern = change.pattern
            splits.update(change.splits)
            merges.update(change.merges)
            removals.update(change.removals)
        notes.append(_note(pattern, dart))
    return Change(pattern, splits, merges, removals, notes=tuple(notes))


def _require_mouth(piece: Piece, dart: Intake) -> None:
    mouth = piece.edge(dart.first_leg).path.start.distance_to(piece.edge(dart.second_leg).path.end)
    if mouth <= TOLERANCES.sew_length:
        raise StepRefused("dart-empty", dart=spoken(dart.name))


def _owner(context: StepContext, piece: Piece) -> str:
    return piece_name(context.slug, last_word(piece.name))


def _folded(piece: Piece, dart: Intake, parameters: ConvertDartParameters, context: StepContext) -> Piece:
    kind: Folded = "tuck" if parameters.into == "tuck" else "pleat"
    leg = piece.edge(dart.first_leg).length
    stitched = context.positive(parameters.stitched, "stitched")
    if kind == "tuck" and stitched >= leg:
        raise InputError("tuck-as-long-as-dart", dart=spoken(dart.name), stitched=stitched, leg=leg)
    lengths = (stitched, stitched) if kind == "tuck" else (0.0, min(_PLEAT_LINE, leg))
    return folded_dart(piece, dart, kind, lengths, _owner(context, piece))


_PLEAT_LINE = 50.0
"""mm of the lines of a pleat that are drawn: enough to lay the fold. Own judgment."""


def _drawn_in(
    pattern: Pattern, piece: Piece, dart: Intake, parameters: ConvertDartParameters, context: StepContext
) -> Change:
    kind: DrawnIn = "gather" if parameters.into == "gather" else "ease"
    beside = context.positive(parameters.beside, "beside")
    drawn = drawn_in_dart(piece, dart, kind, beside, _owner(context, piece))
    assembled = Assembled(drawn.piece, drawn.splits, drawn.merges, drawn.removals)
    after, removals = applied(pattern, assembled)
    groups = {**after.groups, drawn.intake.edge: Group(drawn.stretch, context.step)}
    return Change(replace(after, groups=frozen_map(groups)), drawn.splits, drawn.merges, removals)


def _note(pattern: Pattern, dart: Intake) -> Finding:
    """What is taken up and over which stretch; looked at where cloth does not ease in so much."""
    intake = pattern.intakes[dart.name]
    piece = pattern.piece_of(dart.name)
    if intake.is_folded:
        amount = sum(piece.edge(leg).length for leg in (intake.first_leg, intake.second_leg))
        stretch = 0.0
    else:
        amount = intake.amount
        members = pattern.groups[intake.edge].members
        stretch = sum(pattern.edges[member].length for member in members) - amount
    beyond = intake.kind == "ease" and amount > _MOST_EASED * stretch
    code = "dart-folded" if intake.is_folded else "dart-drawn-in"
    return worded(
        "convert-dart",
        "dart-eased-too-much" if beyond else code,
        Severity.LOOK if beyond else Severity.NOTE,
        Measured(amount, _MOST_EASED * stretch if beyond else None, "mm"),
        piece=piece.name,
        where=dart.name,
        dart=spoken(dart.name),
        kind={"gather": "gathers", "ease": "ease"}.get(intake.kind, f"a {intake.kind}"),
        amount=amount,
        stretch=stretch,
        share=100.0 * amount / stretch if stretch > 0.0 else 0.0,
    )


_MOST_EASED = 0.15
"""Share of the sewn stretch that woven cloth eases in at most; more is gathered. Trade handbooks, from
memory, as the check of eased seams has it."""


STEP = StepDefinition(
    operation="convert_dart",
    version=2,
    kind="style",
    title="Dart to gathers, ease or fold",
    sentence="{darts} to {into}",
    parameters=ConvertDartParameters,
    run=run,
    upcasters={1: dict},
)
