"""What a run of a recipe came to, as `draft` and `check` show it: figures first, then what is to be said."""

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from notchbook.cli import show_closures, show_contradictions, show_cures, show_pattern
from notchbook.cli.focus import WHOLE, Focus
from notchbook.cli.screen import Screen
from notchbook.cli.show_estimates import estimate_data, show_estimates, show_not_filled
from notchbook.units import Unit

if TYPE_CHECKING:
    from collections.abc import Mapping

    from notchbook.app.bodies.filling_estimates import Filled
    from notchbook.app.bodies.resting_on_estimates import RestedOn
    from notchbook.app.eases.ease_rows import EaseRow
    from notchbook.app.offered_cure import OfferedCure
    from notchbook.checks import Closure, Report
    from notchbook.pattern import Contradiction
    from notchbook.recipe import Replay


@dataclass(frozen=True)
class RunFigures:
    """The figures of a run: ease table, estimates, closures, contradictions, cures offered and taken."""

    run: "Replay"
    eases: "tuple[EaseRow, ...]"
    estimates: "Mapping[str, RestedOn]"
    closures: "tuple[Closure, ...]"
    contradictions: "tuple[Contradiction, ...]"
    offered: "tuple[OfferedCure, ...]"
    taken: "tuple[OfferedCure, ...]"


def figures_of(run: "Replay", words: tuple[str, ...], taken: "tuple[OfferedCure, ...]") -> RunFigures:
    """The figures; InputError ``cure-not-offered`` where a word of a cure took nothing."""
    from notchbook.app.bodies.resting_on_estimates import rested_on
    from notchbook.app.contradictions import contradictions_of
    from notchbook.app.curing import offered_cures, require_offered
    from notchbook.app.eases.ease_rows import ease_table
    from notchbook.app.examining import subject_of
    from notchbook.app.step_cures import step_cures
    from notchbook.checks import closures

    offered = (*offered_cures(run), *step_cures(run))
    require_offered(words, taken, offered)
    return RunFigures(
        run=run,
        eases=ease_table(run),
        estimates=rested_on(run),
        closures=closures(subject_of(run)),
        contradictions=contradictions_of(run),
        offered=offered,
        taken=taken,
    )


def show_figures(
    screen: Screen, figures: RunFigures, unit: Unit, filled: "Filled | None" = None, focus: Focus = WHOLE
) -> None:
    """What the pattern rests on, and its ease table."""
    show_estimates(screen, figures.estimates, figures.run.measures.population, unit)
    show_not_filled(screen, filled)
    show_pattern.show_eases(screen, figures.eases, unit, focus, figures.run.measures.population)
    show_cures.show_taken(screen, figures.taken, unit)


def show_judged(
    screen: Screen, figures: RunFigures, report: "Report", unit: Unit, focus: Focus = WHOLE
) -> None:
    """The findings, the closures, and what would heal."""
    show_pattern.show_report(screen, report, unit, figures.run.measures, focus)
    show_closures.show_closures(screen, figures.closures, unit, figures.run.measures.population)
    show_cures.show_cures(screen, figures.offered, unit)


def figure_data(figures: RunFigures, report: "Report") -> dict[str, Any]:
    """All of it as data; lengths in mm."""
    from notchbook.checks import closures_data

    return {
        "eases": show_pattern.ease_data(figures.eases),
        "estimates": estimate_data(figures.estimates),
        "report": report.to_data(),
        "closures": closures_data(figures.closures),
        "contradictions": show_contradictions.contradiction_data(figures.contradictions),
        "cures": show_cures.cure_data(figures.offered),
        "taken": show_cures.cure_data(figures.taken),
    }
