"""True a notch: move it along its edge to where it meets its mate on the other side of the seam."""

from dataclasses import replace

from notchbook.errors import StepRefused
from notchbook.pattern import (
    Finding,
    Measured,
    Notch,
    Pattern,
    Seam,
    Severity,
    locate,
    run_of,
    spoken,
    worded,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.place import Place
from notchbook.pattern.sewn import Directed, sewn_edge_length
from notchbook.recipe import Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import NotchName
from notchbook.style.truing.found import found_notch, found_seam
from notchbook.units import TOLERANCES


class TrueNotchParameters(StepParameters):
    """The ``notch`` that moves; its mate stays."""

    notch: NotchName
    """The notch that is moved to meet its mate."""


def run(pattern: Pattern, context: StepContext, parameters: TrueNotchParameters) -> Change:
    """Count the notch anew, as far from the beginning of the seam as its mate.

    Where the seam has ease that may lie anywhere, the notch shares it by its place along the seam.
    """
    notch = found_notch(pattern, parameters.notch)
    if notch.seam is None:
        raise StepRefused("true-notch-alone", notch=spoken(notch.name))
    seam = found_seam(pattern, notch.seam)
    runs = (run_of(pattern, seam.first), run_of(pattern, seam.second))
    side, old = _side_of(pattern, runs, notch)
    goal = _mate(pattern, seam, runs[1 - side], notch)
    if seam.ease != 0.0 and seam.ease_between is None:
        goal *= _length(pattern, runs[side]) / _length(pattern, runs[1 - side])
    if abs(goal - old) <= TOLERANCES.join:
        return Change(pattern)
    moved = replace(notch, place=_place(pattern, runs[side], goal, seam))
    return Change(pattern.with_notches(moved), notes=(_told(pattern, moved, seam, goal - old),))


def _side_of(pattern: Pattern, runs: tuple[tuple[Directed, ...], ...], notch: Notch) -> tuple[int, float]:
    """On which run of the seam the notch lies, and how far along it, mm as sewn."""
    for side in (0, 1):
        distance = _along(pattern, runs[side], notch)
        if distance is not None:
            return side, distance
    raise StepRefused("true-notch-elsewhere", notch=spoken(notch.name))


def _mate(pattern: Pattern, seam: Seam, run: tuple[Directed, ...], notch: Notch) -> float:
    """How far along the other run the notch of the same word lies."""
    for other in pattern.notches.values():
        if (
            other.name != notch.name
            and other.serves(seam.name)
            and last_word(other.name) == last_word(notch.name)
        ):
            distance = _along(pattern, run, other)
            if distance is not None:
                return distance
    raise StepRefused("true-notch-no-mate", notch=spoken(notch.name), seam=spoken(seam.name))


def _along(pattern: Pattern, run: tuple[Directed, ...], notch: Notch) -> float | None:
    found = locate(pattern, notch.place)
    travelled = 0.0
    for step in run:
        sewn = sewn_edge_length(pattern, step.edge)
        if step.edge.name == found.edge.name:
            share = found.distance / step.edge.length
            return travelled + sewn * (share if step.forward else 1.0 - share)
        travelled += sewn
    return None


def _length(pattern: Pattern, run: tuple[Directed, ...]) -> float:
    return sum(sewn_edge_length(pattern, step.edge) for step in run)


def _place(pattern: Pattern, run: tuple[Directed, ...], goal: float, seam: Seam) -> Place:
    """The place so far along the run; StepRefused where the run ends before it."""
    travelled = 0.0
    for step in run:
        sewn = sewn_edge_length(pattern, step.edge)
        if goal <= travelled + sewn + TOLERANCES.sew_length:
            return Place(step.edge.name, step.start, min(goal - travelled, sewn))
        travelled += sewn
    raise StepRefused("true-notch-beyond", seam=spoken(seam.name), length=travelled, wanted=goal)


def _told(pattern: Pattern, notch: Notch, seam: Seam, moved: float) -> Finding:
    place = locate(pattern, notch.place)
    return worded(
        "true-notch",
        "notch-trued",
        Severity.NOTE,
        Measured(abs(moved)),
        piece=place.piece,
        where=notch.name,
        names=(seam.name,),
        notch=spoken(notch.name),
        seam=spoken(seam.name),
        moved=abs(moved),
    )


STEP = StepDefinition(
    operation="true_notch",
    version=1,
    kind="style",
    title="True a notch",
    sentence="{notch} to its mate",
    parameters=TrueNotchParameters,
    run=run,
)
