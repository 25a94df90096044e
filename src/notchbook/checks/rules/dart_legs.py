"""Are the two legs of each dart equally long?"""

from collections.abc import Iterator

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.legs import leg_pairs
from notchbook.checks.subject import Subject
from notchbook.pattern import Finding, InnerDart, Piece, Severity, spoken


@check(
    id="dart-legs",
    title="Dart legs are equally long",
    rationale=(
        "The legs of a dart are sewn to each other from the mouth to the point. If one is longer, the "
        "mouth has a step, or the machinist stretches the shorter one and the point puckers. Legs go "
        "unequal when a dart is moved or the edge is redrawn without closing it. A dart inside a piece is "
        "sewn from its widest place to both its points: its legs agree above and below. Half a millimeter "
        "is what a pencil hides."
    ),
    severity=Severity.STOP,
    reads=("edges", "intakes"),
    messages={
        "dart-legs-differ": "{piece}: the legs of {dart} differ.",
        "dart-part-legs-differ": "{piece}: {part} its widest place the legs of {dart} differ.",
        "dart-ends-apart": "{piece}: the legs of {dart} do not end in one point.",
    },
    suggestion="Lengthen the shorter leg on its line, then true the edge with the dart closed.",
)
def dart_legs(subject: Subject) -> Iterator[Finding]:
    """Darts whose legs differ in length or do not end in one place, mm."""
    for pair in leg_pairs(subject.pattern):
        first, second = pair.lengths
        if abs(first - second) > subject.limits.dart_legs:
            yield dart_legs.finding(
                "dart-part-legs-differ" if pair.part else "dart-legs-differ",
                Spot(pair.piece.name, pair.dart, pair.mouth, pair.legs),
                Reading(second, first),
                piece=spoken(pair.piece.name),
                dart=spoken(pair.dart),
                part=pair.part,
            )
    for piece in subject.pattern.pieces.values():
        for dart in piece.inner_darts:
            yield from _apart(subject, piece, dart)


def _apart(subject: Subject, piece: Piece, dart: InnerDart) -> Iterator[Finding]:
    """Legs of a dart inside the piece that do not both begin and end at its two points."""
    legs = [piece.line(leg).path for leg in (dart.center_leg, dart.side_leg)]
    ends = ((dart.upper_point, [leg.start for leg in legs]), (dart.lower_point, [leg.end for leg in legs]))
    for name, places in ends:
        point = piece.points[name]
        gap = max(point.distance_to(place) for place in places)
        if gap > subject.limits.closure:
            yield dart_legs.finding(
                "dart-ends-apart",
                Spot(piece.name, dart.name, point, (name,)),
                Reading(gap, 0.0),
                piece=spoken(piece.name),
                dart=spoken(dart.name),
            )
