"""Notches where panels meet: along a seam such as the waist, each side shows where panels of the other end.

Where a bodice of panels is sewn to a skirt, the seams of the panels meet, or a notch on the whole piece shows
where one comes to lie. Where a dart opens there or a notch stands already, that shows it, and a second notch
would only be looked for on the other side. Joints of both sides that nearly meet are said with how far they
miss.
"""

from dataclasses import dataclass

from notchbook.errors import NameLost
from notchbook.pattern import (
    EdgeUse,
    Finding,
    Intake,
    Located,
    Measured,
    Notch,
    Pattern,
    Piece,
    Place,
    Severity,
    locate,
    part_name,
    run_of,
    spoken,
    worded,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.sewn import sewn_edge_length
from notchbook.recipe import Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import SeamName
from notchbook.style.lines.seams import notch_kind
from notchbook.units import TOLERANCES

NEAR = 12.0
"""mm; panels that end this near to each other were meant to meet. Own judgment: half an inch."""

SHOWN = 1.0
"""mm; two notches nearer than this are one cut of the scissors. Own judgment: a notch is as wide."""


class PanelNotchesParameters(StepParameters):
    """The ``seam`` along which panels meet."""

    seam: SeamName
    """The seam, such as that of the waist between bodice and skirt."""


@dataclass(frozen=True, slots=True)
class _Joint:
    """Where two panels meet on a run: how far along it, mm, and the piece that ends there."""

    at: float
    piece: str


def run(pattern: Pattern, context: StepContext, parameters: PanelNotchesParameters) -> Change:
    """Notch each side where the panels of the other meet."""
    seam = pattern.seams.get(parameters.seam)
    if seam is None:
        raise NameLost(
            "name-lost",
            name=parameters.seam,
            candidates=tuple(pattern.seams),
            by="no step",
            reason="no seam of this pattern has this name",
            wanted="seam",
        )
    first, second = _joints(pattern, seam.first), _joints(pattern, seam.second)
    notches: list[Notch] = []
    notes: list[Finding] = []
    for joints, others, uses in ((first, second, seam.second), (second, first, seam.first)):
        for joint in joints:
            nearest = min(others, key=lambda other: abs(other.at - joint.at), default=None)
            miss = NEAR if nearest is None else abs(nearest.at - joint.at)
            if miss >= NEAR:
                notch = _notch(pattern, context, joint, uses)
                if not _is_shown(pattern, locate(pattern, notch.place)):
                    notches.append(notch)
            elif joints is first and miss > TOLERANCES.seam_walk and nearest is not None:
                notes.append(_missed(seam.name, joint, nearest, miss))
    return Change(pattern.with_notches(*notches), notes=tuple(notes))


def _joints(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> tuple[_Joint, ...]:
    """The places on the run where one piece ends and the next begins."""
    found: list[_Joint] = []
    travelled, before = 0.0, ""
    for step in run_of(pattern, uses):
        piece = pattern.carriers[step.edge.name]
        if before and piece != before:
            found.append(_Joint(travelled, before))
        before = piece
        travelled += sewn_edge_length(pattern, step.edge)
    return tuple(found)


def _notch(pattern: Pattern, context: StepContext, joint: _Joint, uses: tuple[EdgeUse, ...]) -> Notch:
    """A notch on the run across the seam, as far along it as the joint."""
    travelled = 0.0
    for step in run_of(pattern, uses):
        length = sewn_edge_length(pattern, step.edge)
        if joint.at <= travelled + length + TOLERANCES.sew_length:
            break
        travelled += length
    piece = pattern.carriers[step.edge.name]
    name = part_name(f"{context.slug}.{last_word(piece)}", f"{last_word(joint.piece)}_seam_notch")
    place = Place(step.edge.name, step.start, min(joint.at - travelled, length))
    return Notch(name, place, notch_kind(piece), None, "panel")


def _is_shown(pattern: Pattern, place: Located) -> bool:
    """Whether a dart opens at the place, or a notch stands there already."""
    piece, edge = pattern.pieces[place.piece], place.edge
    ends = {edge.start: place.distance, edge.end: edge.length - place.distance}
    mouths = {point for dart in piece.darts for point in _mouth(piece, dart)}
    if any(point in mouths and apart <= SHOWN for point, apart in ends.items()):
        return True
    stand = (locate(pattern, notch.place) for notch in pattern.notches.values())
    return any(one.piece == piece.name and _apart(one, place) <= SHOWN for one in stand)


def _mouth(piece: Piece, dart: Intake) -> tuple[str, str]:
    """The points between which the dart opens."""
    return piece.edge(dart.first_leg).start, piece.edge(dart.second_leg).end


def _apart(first: Located, second: Located) -> float:
    return first.position.distance_to(second.position)


def _missed(seam: str, joint: _Joint, other: _Joint, miss: float) -> Finding:
    return worded(
        "panel_notches",
        "panels-miss",
        Severity.LOOK,
        Measured(miss, 0.0),
        names=(seam,),
        seam=spoken(seam),
        first=spoken(joint.piece),
        second=spoken(other.piece),
        miss=miss,
    )


STEP = StepDefinition(
    operation="panel_notches",
    version=1,
    kind="cut",
    title="Notches where panels meet",
    sentence="along {seam}",
    parameters=PanelNotchesParameters,
    run=run,
)
