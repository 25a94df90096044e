"""Move a dart to another place: close it where it is and open it elsewhere, by the same angle.

The piece turns about the pivot (the bust point), part by part, as a sloper is pivoted at the table; nothing
is redrawn and no length changes but that the edge of the new dart is in two parts. What is kept is the angle,
not the width: the farther the new mouth lies from the pivot, the wider it is. The new dart is turned about
the pivot itself, then its point is drawn back from it, and the edges are trued with the darts closed. Several
darts can be put together in one place, one dart shared out over several places, and a part of it left where
it is.
"""

from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from notchbook.errors import InputError, StepRefused
from notchbook.geometry import Point
from notchbook.pattern import (
    Finding,
    Intake,
    Measured,
    Pattern,
    Piece,
    Severity,
    part_name,
    piece_name,
    spoken,
    worded,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.slashing import (
    Assembled,
    Closing,
    DartNames,
    Legs,
    Opening,
    applied,
    dart_angle,
    pivot,
)
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    IntakeName,
    PivotName,
    PlaceParameters,
    StepContext,
    StepDefinition,
    StepParameters,
    Word,
)
from notchbook.style.darts.ends import dart_end, edge_word
from notchbook.style.darts.finishing import finished, pressed
from notchbook.style.darts.found import darts_named, pivot_of, place_on, still_edge
from notchbook.units import TOLERANCES

_WHOLE = 1e-9
"""Shares that add up to one within this are the whole."""


Share = Annotated[float, Field(gt=0.0, le=1.0)]


class NewPlaceParameters(StepParameters):
    """One place where a dart opens: ``at`` an edge, with which ``share`` of the angle."""

    at: PlaceParameters
    """Where on an edge of the piece the dart opens."""
    share: Share = 1.0
    """How much of the angle opens here; what is left over in all stays where it was."""
    short: AmountText | None = None
    """How far the point stays from the pivot; empty: as usual for this edge."""
    word: Word | None = None
    """What the dart is called in names; empty: as before when all of it moves here, else by the edge."""


class WiderDartParameters(StepParameters):
    """A dart (``intake``) of the piece that becomes wider, with which ``share`` of the angle."""

    intake: IntakeName
    """The dart that takes it over."""
    share: Share = 1.0
    """How much of the angle goes there; what is left over in all stays where it was."""
    short: AmountText | None = None
    """How far its point stays from the pivot; empty: as far as now."""


class TransferDartParameters(StepParameters):
    """The ``darts`` that are closed, the ``places`` where they open or the darts that they go ``into``, about
    which ``pivot``, and what lies ``still``."""

    darts: Annotated[tuple[IntakeName, ...], Field(min_length=1)]
    """The dart that moves; several are put together."""
    places: tuple[NewPlaceParameters, ...] = ()
    """Where it opens; several share it."""
    into: tuple[WiderDartParameters, ...] = ()
    """Darts of the piece that it is put into."""
    pivot: PivotName | None = None
    """The point about which the piece is turned; empty: the bust point, else the point of the dart."""
    still: EdgeName | None = None
    """An edge that does not move; empty: the one on the fold."""


@dataclass(frozen=True, slots=True)
class _Plan:
    """What is closed and what opens, with the way that each point is drawn back from the pivot, mm."""

    closings: tuple[Closing, ...]
    openings: tuple[Opening, ...]
    short: dict[str, float]
    moved: dict[str, float]
    """By how many degrees each dart opens that takes something over."""


def run(pattern: Pattern, context: StepContext, parameters: TransferDartParameters) -> Change:
    """Turn the parts of the piece, draw the points back, true the edges."""
    piece, darts = darts_named(pattern, parameters.darts)
    about = pivot_of(pattern, piece, darts[0], parameters.pivot)
    still = still_edge(pattern, piece, parameters.still)
    plan = _planned(pattern, context, parameters, (piece, darts, about))
    turned = pivot(piece, about, plan.closings, plan.openings, still)
    done = turned.piece
    for opening in plan.openings:
        done = pressed(done, done.intake(opening.legs.names.intake), still)
    done = finished(done, about, plan.short, tuple(into[0] for into in turned.merges.values()))
    assembled = Assembled(done, turned.splits, turned.merges, turned.removals)
    after, removals = applied(pattern, assembled)
    notes = tuple(_note(done, name, degrees) for name, degrees in plan.moved.items())
    return Change(after, turned.splits, turned.merges, removals, notes=notes)


def _planned(
    pattern: Pattern,
    context: StepContext,
    parameters: TransferDartParameters,
    found: tuple[Piece, tuple[Intake, ...], Point],
) -> _Plan:
    piece, darts, about = found
    given = sum(place.share for place in parameters.places) + sum(dart.share for dart in parameters.into)
    if not 0.0 < given <= 1.0 + _WHOLE:
        raise InputError("dart-shares", share=given)
    whole = given >= 1.0 - _WHOLE
    taken = 1.0 if whole else given
    closings = [Closing(dart, _angle(piece, dart, about) * taken, removed=whole) for dart in darts]
    each = sum(closing.degrees for closing in closings) / given
    short = {} if whole else {dart.name: _short_now(piece, dart, about) for dart in darts}
    moved: dict[str, float] = {}

    def take_over(name: str, share: float, amount: str | None, usual: float) -> None:
        if name in moved:
            raise InputError("dart-word-twice", dart=spoken(name))
        moved[name] = each * share
        short[name] = usual if amount is None else context.mm(amount)

    openings: list[Opening] = []
    for place in parameters.places:
        word = place.word or (last_word(darts[0].name) if whole and len(parameters.places) == 1 else None)
        opening = _opening(pattern, context, piece, place.at, word, each * place.share)
        openings.append(opening)
        take_over(opening.legs.names.intake, place.share, place.short, dart_end(place.at.edge).short)
    for wider in parameters.into:
        dart = _widened(pattern, piece, wider.intake, darts)
        _angle(piece, dart, about)
        closings.append(Closing(dart, -each * wider.share, removed=False))
        take_over(dart.name, wider.share, wider.short, _short_now(piece, dart, about))
    return _Plan(tuple(closings), tuple(openings), short, moved)


def _short_now(piece: Piece, dart: Intake, about: Point) -> float:
    """How far the point of a dart of the piece stays from the pivot, mm."""
    return piece.points[dart.point].distance_to(about)


def _widened(pattern: Pattern, piece: Piece, name: str, closed: tuple[Intake, ...]) -> Intake:
    """The dart of the piece that takes something over; it cannot be one of those that give it."""
    carrier, (dart,) = darts_named(pattern, (name,))
    if carrier.name != piece.name:
        raise StepRefused("darts-apart", darts=(spoken(dart.name), *(spoken(one.name) for one in closed)))
    if dart in closed:
        raise StepRefused("dart-into-itself", dart=spoken(dart.name))
    return dart


def _angle(piece: Piece, dart: Intake, about: Point) -> float:
    """The angle of the dart seen from the pivot; its legs must be equally long from there."""
    first, second = piece.edge(dart.first_leg).path.start, piece.edge(dart.second_leg).path.end
    off = abs(first.distance_to(about) - second.distance_to(about))
    if off > TOLERANCES.seam_walk:
        raise StepRefused("dart-misses-pivot", dart=spoken(dart.name), off=off)
    return dart_angle(piece, dart, about)


def _opening(
    pattern: Pattern,
    context: StepContext,
    piece: Piece,
    at: PlaceParameters,
    word: str | None,
    degrees: float,
) -> Opening:
    found, from_start = place_on(pattern, context, piece, at)
    owner = piece_name(context.slug, last_word(piece.name))
    names = DartNames.of(part_name(owner, word or f"{edge_word(found.edge.name)}_dart"), from_start)
    return Opening(found, degrees, Legs(names, mouth=at.edge))


def _note(piece: Piece, name: str, degrees: float) -> Finding:
    """What the dart takes up where it is now."""
    dart = piece.intake(name)
    width = piece.edge(dart.first_leg).path.start.distance_to(piece.edge(dart.second_leg).path.end)
    return worded(
        "transfer-dart",
        "dart-moved",
        Severity.NOTE,
        Measured(width, None, "mm"),
        piece=piece.name,
        where=name,
        dart=spoken(name),
        angle=degrees,
        width=width,
    )


STEP = StepDefinition(
    operation="transfer_dart",
    version=1,
    kind="style",
    title="Transfer dart",
    sentence="{darts}, to {places}, into {into}",
    parameters=TransferDartParameters,
    run=run,
)
