"""Walking seams on the finished outline, from notch to notch, with dense polylines."""

from collections.abc import Iterator
from dataclasses import dataclass

from notchbook.checks.measured import place_along
from notchbook.checks.sewn import sewn, sewn_share
from notchbook.errors import NotchbookError
from notchbook.pattern import Notch, Pattern, Seam, locate, run_of
from notchbook.pattern.names import last_word
from notchbook.pattern.sewn import Directed

Run = tuple[Directed, ...]


@dataclass(frozen=True, slots=True)
class WalkedSeam:
    """A seam with its two runs and their measured lengths as sewn, mm."""

    seam: Seam
    runs: tuple[Run, Run]
    lengths: tuple[float, float]

    @property
    def misfit(self) -> float:
        """How much the second run is too long, declared ease apart, mm."""
        return self.lengths[1] - self.lengths[0] - self.seam.ease


@dataclass(frozen=True, slots=True)
class Met:
    """A notch met on one run: its distance from the beginning, mm."""

    notch: Notch
    label: str
    distance: float


def walked_seams(pattern: Pattern) -> Iterator[WalkedSeam]:
    """Every seam with two sides whose edges all live; the check of the names tells of the others."""
    for seam in pattern.seams.values():
        try:
            runs = (run_of(pattern, seam.first), run_of(pattern, seam.second))
        except NotchbookError:
            continue
        if not runs[0] or not runs[1]:
            continue
        first, second = (sum(sewn(pattern, step.edge) for step in run) for run in runs)
        yield WalkedSeam(seam, runs, (first, second))


def notches_met(pattern: Pattern, walked: WalkedSeam, side: int) -> list[Met]:
    """The notches of a seam on its first (0) or second (1) run, in walking order."""
    found = []
    for notch in pattern.notches.values():
        if not notch.serves(walked.seam.name):
            continue
        distance = _distance(pattern, walked.runs[side], notch)
        if distance is not None:
            found.append(Met(notch, last_word(notch.name), distance))
    return sorted(found, key=lambda met: met.distance)


def _distance(pattern: Pattern, run: Run, notch: Notch) -> float | None:
    """How far along a run the notch lies, mm; None when it lies elsewhere or its edge is gone."""
    try:
        place = locate(pattern, notch.place)
    except NotchbookError:
        return None
    travelled = 0.0
    for step in run:
        if step.edge.name == place.edge.name:
            return travelled + place_along(step.path, place.position)[0] * sewn_share(pattern, step.edge)
        travelled += sewn(pattern, step.edge)
    return None
