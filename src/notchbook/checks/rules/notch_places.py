"""Does each notch lie on its edge?"""

from collections.abc import Iterator

from notchbook.checks.check import Spot, check
from notchbook.checks.subject import Subject
from notchbook.errors import InputError, NameLost
from notchbook.pattern import Finding, Severity, locate, spoken


@check(
    id="notch-places",
    title="Notches lie on their edges",
    rationale=(
        "A notch is placed along its edge from a named end. On a smaller body, or after the edge was "
        "shortened, a fixed distance may run past the end, and the notch would be cut into another seam "
        "or not at all. Places that should follow the size are given as a share of the edge or from "
        "another notch."
    ),
    severity=Severity.STOP,
    reads=("edges", "notches"),
    messages={"notch-beyond-edge": "The notch {notch} lies beyond the end of {edge}."},
    suggestion="Place the notch nearer to its end, or as a share of the edge.",
)
def notch_places(subject: Subject) -> Iterator[Finding]:
    """Notches that lie beyond the end of their edge."""
    for notch in subject.pattern.notches.values():
        try:
            locate(subject.pattern, notch.place)
        except NameLost:
            continue  # told by the check of the names
        except InputError:
            yield notch_places.finding(
                "notch-beyond-edge",
                Spot(None, notch.name, None, (notch.place.edge,)),
                notch=spoken(notch.name),
                edge=spoken(notch.place.edge),
            )
