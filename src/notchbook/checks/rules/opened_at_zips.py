"""Is what lies behind a zip open where the zip opens?"""

from collections.abc import Iterator

from notchbook.checks.check import Spot, check
from notchbook.checks.subject import Subject
from notchbook.errors import NotchbookError
from notchbook.pattern import Edge, Finding, Pattern, Seam, Severity, run_of, spoken
from notchbook.pattern.seam import TURNED_SEAM
from notchbook.pattern.sewn import Directed
from notchbook.pattern.zip_openings import zip_opening
from notchbook.units import TOLERANCES


@check(
    id="opened-at-zips",
    title="Facings and linings are open where a zip opens",
    rationale=(
        "A zip parts the garment at its edge. A facing or lining that is sewn to that edge, and is closed "
        "behind the zip, holds it shut: the zip opens and nobody gets in. Its ends are turned in and sewn to "
        "the tape of the zip instead; a lining is sewn below its own zip notch only."
    ),
    severity=Severity.STOP,
    reads=("edges", "seams", "notches"),
    messages={
        "closed-behind-zip": "{seam} is sewn shut right behind the zip at {edge}: nobody gets in.",
    },
    suggestion=(
        "Make the facing anew with its step, so that its ends stay open there, or give the lining a notch "
        "where its zip ends."
    ),
)
def opened_at_zips(subject: Subject) -> Iterator[Finding]:
    """Seams of what is turned in that lie behind the opening of a zip."""
    pattern = subject.pattern
    for seam in pattern.seams.values():
        if seam.seam_class == TURNED_SEAM:
            for inner, outer in _ends(pattern, seam):
                yield from _closed(pattern, inner, outer, seam)


_Corner = tuple[Edge, str]
"""An edge, and the end of it at which a seam ends."""


def _closed(pattern: Pattern, inner: _Corner, outer: _Corner, turned: Seam) -> Iterator[Finding]:
    """The seam that closes what is turned in at one end of its edge, though a zip opens the garment there."""
    behind, corner = _beside(pattern, *inner), inner[1]
    opened = zip_opening(pattern, _beside(pattern, *outer), outer[1])
    if opened <= 0.0 or zip_opening(pattern, behind, corner) > min(opened, behind.length) / 2.0:
        return
    for seam in pattern.seams.values():
        if seam.name != turned.name and _holds(pattern, seam, behind.name):
            piece = pattern.piece_of(behind.name)
            yield opened_at_zips.finding(
                "closed-behind-zip",
                Spot(piece.name, behind.name, behind.path.start, (seam.name,)),
                seam=spoken(seam.name),
                edge=spoken(_beside(pattern, *outer).name),
            )


def _ends(pattern: Pattern, seam: Seam) -> Iterator[tuple[_Corner, _Corner]]:
    """Both ends of the seam: the edge and corner of what is turned in, and those of what it lies on."""
    try:
        inner, outer = run_of(pattern, seam.first), run_of(pattern, seam.second)
    except NotchbookError:
        return  # the check of the names tells of it
    if inner and outer:
        yield (inner[0].edge, inner[0].start), (outer[0].edge, outer[0].start)
        yield _last(inner[-1]), _last(outer[-1])


def _last(step: Directed) -> _Corner:
    return step.edge, step.edge.end if step.forward else step.edge.start


def _beside(pattern: Pattern, edge: Edge, corner: str) -> Edge:
    """The edge that meets this one at the corner."""
    piece = pattern.piece_of(edge.name)
    return piece.edge_after(edge.name) if edge.end == corner else piece.edge_before(edge.name)


def _holds(pattern: Pattern, seam: Seam, edge: str) -> bool:
    """Whether the edge is sewn in the seam, by more than nothing."""
    try:
        runs = (*run_of(pattern, seam.first), *run_of(pattern, seam.second))
    except NotchbookError:
        return False
    return any(one.edge.name == edge and one.edge.length > TOLERANCES.seam_walk for one in runs)
