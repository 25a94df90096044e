"""What a pattern rests on and nobody took: the estimates that move a line of it."""

from dataclasses import dataclass

from notchbook.app.bodies.uncertainty import answers
from notchbook.app.needs.of_steps import needs_of_recipe
from notchbook.body import Measure, PopulationName, plain_key
from notchbook.body.estimating.stale import StaleEstimate, stale_estimates
from notchbook.body.quantity_words import estimate_text, measure_text
from notchbook.recipe import Replay, estimated_reads
from notchbook.units import LengthStyle


@dataclass(frozen=True, slots=True)
class RestedOn:
    """An estimate of the set that the pattern rests on.

    ``is_stale`` says that it no longer follows from the measures; ``now`` is then what would be estimated,
    None where nothing is known any more."""

    measure: Measure
    is_stale: bool = False
    now: Measure | None = None

    def words(self, name: str, style: LengthStyle, population: PopulationName | None) -> str:
        """``hip depth 20.3 ± 1.8 cm``, and what it would be now where it no longer follows."""
        said = estimate_text(name, self.measure, style, population)
        if not self.is_stale:
            return said
        now = "nothing is known now" if self.now is None else f"now {measure_text(name, self.now, style)}"
        return f"{said} (no longer follows from the measures; {now})"


def rested_on(run: Replay) -> dict[str, RestedOn]:
    """Each estimate that moves a line of the pattern, by its key (with its side), in the order of the table.

    What a block needs always does; what only helps it is tried at both ends of its ±.
    """
    needed = needs_of_recipe(run.recipe, run.measures).needed
    found = {
        name: measure
        for name, measure in estimated_reads(run).items()
        if plain_key(name) in needed or answers(run, name, measure)
    }
    stale = {one.key: one for one in stale_estimates(run.measures)} if found else {}
    return {name: _rested(measure, stale.get(name)) for name, measure in found.items()}


def _rested(measure: Measure, stale: StaleEstimate | None) -> RestedOn:
    if stale is None:
        return RestedOn(measure)
    return RestedOn(measure, True, None if stale.now is None else stale.now.measure())
