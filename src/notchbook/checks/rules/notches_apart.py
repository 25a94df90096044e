"""Does a notch stand so near to that of a dart or fold that one is taken for the other?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.subject import Subject
from notchbook.errors import InputError, NameLost
from notchbook.geometry import Point
from notchbook.pattern import Finding, Intake, Notch, Piece, Severity, locate, spoken
from notchbook.units import TOLERANCES


@check(
    id="notches-apart",
    title="Notches can be told apart",
    rationale=(
        "A dart leg, the line of a pleat and the end of gathers are notched where they meet the edge. A "
        "balance notch a few millimeters beside one of them reads as the dart or pleat itself: the "
        "machinist lays the fold to it, or matches the fold to the other piece. Notches that fall on one "
        "place are one cut and do no harm."
    ),
    severity=Severity.LOOK,
    reads=("edges", "notches", "intakes"),
    messages={
        "notches-too-near": "{notch} stands so near to the notch of {intake} that one is taken for the other."
    },
    suggestion="Move the notch together with its mate, or the dart or pleat.",
)
def notches_apart(subject: Subject) -> Iterator[Finding]:
    """Notches beside the mouth of a dart or fold, or an end of gathers; mm between the two, straight."""
    pattern = subject.pattern
    for notch in pattern.notches.values():
        try:
            place = locate(pattern, notch.place)
        except (NameLost, InputError):
            continue  # told by the checks of names and places
        piece = pattern.pieces[place.piece]
        near = sorted((place.position.distance_to(mouth), name) for name, mouth in _mouths(piece))
        near = [(apart, name) for apart, name in near if not _is_its_own(notch, name)]
        if near and TOLERANCES.seam_walk < near[0][0] < subject.limits.notch_alike:
            apart, intake = near[0]
            yield notches_apart.finding(
                "notches-too-near",
                Spot(piece.name, notch.name, place.position, (notch.name, intake)),
                Reading(apart, subject.limits.notch_alike),
                notch=spoken(notch.name),
                intake=spoken(intake),
            )


def _is_its_own(notch: Notch, intake: str) -> bool:
    """Whether the notch marks this intake: the beginning or end of gathers, named after them."""
    return notch.name.startswith(f"{intake}_")


def _mouths(piece: Piece) -> Iterator[tuple[str, Point]]:
    """The places on the outline of the piece that an open intake is notched at."""
    for intake in piece.intakes:
        if intake.has_legs:
            ends = piece.edge(intake.first_leg).path.start, piece.edge(intake.second_leg).path.end
            if ends[0].distance_to(ends[1]) > TOLERANCES.seam_walk:
                yield from ((intake.name, end) for end in ends)
        elif _ends_within(piece, intake):
            path = piece.edge(intake.edge).path
            yield from ((intake.name, end) for end in (path.start, path.end))


def _ends_within(piece: Piece, intake: Intake) -> bool:
    """Whether what is drawn in is a part of an edge, so that its ends are notched."""
    is_open = intake.amount > TOLERANCES.seam_walk
    return is_open and intake.edge != intake.mouth and piece.has_edge(intake.edge)
