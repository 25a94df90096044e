"""Looking at the measures of an upper body before a bodice is drafted from them."""

from collections.abc import Sequence

from notchbook.blocks.upper_measures.agreement_table import pairs
from notchbook.blocks.upper_measures.by_arithmetic import by_arithmetic, farthest_off
from notchbook.blocks.upper_measures.dart_outlook import DartOutlook
from notchbook.blocks.upper_measures.disagreement import Disagreement, Substitute, Trusted
from notchbook.blocks.upper_measures.expecting import expected_value
from notchbook.blocks.upper_measures.limits import Breach, breaches, is_within
from notchbook.blocks.upper_measures.read_again import read_again
from notchbook.blocks.upper_measures.upper_measures import UpperMeasures
from notchbook.blocks.upper_measures.usual_dart import dart_outlook


def look_at_upper(measures: UpperMeasures) -> Trusted:
    """What contradicts each other, what would explain it, and which values the draft takes.

    A measured value is replaced only where no draft could stand on it and the rest lets expect another one;
    estimates yield to what was measured. Everything replaced is named.
    """
    yielded = _yielding_estimates(measures)
    trusted = _with(measures, yielded)
    found = _named(trusted)
    found, replaced = _with_breaches(trusted, found)
    used = _with(trusted, replaced)
    outlook = dart_outlook(used)
    if outlook is not None and outlook.is_lost and not any(one.dart for one in found):
        found += _lost_dart(used, outlook)
    return Trusted(used, tuple(found), (*yielded, *replaced), outlook)


def _named(measures: UpperMeasures) -> list[Disagreement]:
    """What does not go together by what the population lets expect; nothing where there is none."""
    if measures.population is None or measures.is_child:
        return []
    # Loaded here: a body without a population is drafted without numbers of one.
    from notchbook.blocks.upper_measures.naming import named_disagreements

    return named_disagreements(measures)


def _with(measures: UpperMeasures, substitutes: Sequence[Substitute]) -> UpperMeasures:
    for one in substitutes:
        measures = measures.with_value(one.key, one.used)
    return measures


def _yielding_estimates(measures: UpperMeasures) -> tuple[Substitute, ...]:
    """Estimates that do not follow from what was measured: beyond their own ± off what it lets expect."""
    found = []
    for key, estimate in measures.estimated.items():
        expected = expected_value(measures, key)
        if expected is not None and abs(expected.value - estimate.value) > estimate.error:
            found.append(Substitute(key, estimate.value, expected.value, was_taken=False))
    return tuple(found)


def _with_breaches(
    measures: UpperMeasures, found: list[Disagreement]
) -> tuple[list[Disagreement], tuple[Substitute, ...]]:
    """The same with what arithmetic forbids, and the values that a draft must replace to stand."""
    replaced: dict[str, Substitute] = {}
    for breach in breaches(measures):
        told = next((one for one in found if _tells(one, breach)), None)
        if told is None:
            told = by_arithmetic(measures, breach)
            if told is None:
                continue
            found = [*found, told]
        if breach.limit.replaces and _mends(measures, told, breach):
            replaced[told.key] = Substitute(
                told.key, told.given, told.explaining, was_taken=told.key in measures.taken
            )
    return found, tuple(replaced.values())


def _tells(one: Disagreement, breach: Breach) -> bool:
    """Whether this disagreement speaks of the measures that pass the limit."""
    return one.key in breach.limit.keys


def _mends(measures: UpperMeasures, one: Disagreement, breach: Breach) -> bool:
    """Whether the value that the rest of the body lets expect keeps the limit."""
    is_expected = one.deviations is not None
    return is_expected and is_within(breach.limit, measures.with_value(one.key, one.explaining))


def _lost_dart(measures: UpperMeasures, outlook: DartOutlook) -> list[Disagreement]:
    """The two lengths that leave no dart, where neither of them is far enough off to be named alone."""
    pair = next(one for one in pairs() if "front_waist_length" in one and "back_waist_length" in one)
    deviations, key, value = farthest_off(measures, (pair.first, pair.second))
    given = measures.find(key)
    if value is None or given is None:
        return []
    again = read_again(measures, key, pair)
    return [Disagreement("lost-dart", pair, key, (key,), given, value, again, deviations, dart=outlook)]
