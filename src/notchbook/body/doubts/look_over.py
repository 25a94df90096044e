"""Looking over a set of measures before it is used: by arithmetic, and against a population."""

from collections.abc import Iterable, Sequence
from typing import Final

from notchbook.body.doubts.consistency import check_consistent
from notchbook.body.doubts.doubt import Doubt, Suspect
from notchbook.body.doubts.looked_over import LookedOver
from notchbook.body.doubts.other_unit_doubt import other_unit_doubts
from notchbook.body.doubts.standing import Standing
from notchbook.body.doubts.unseen import unseen_slips
from notchbook.body.measure_set import MeasureSet
from notchbook.errors import InputError
from notchbook.units import LengthStyle, Unit

_OF_ONE_VALUE: Final = frozenset({"measure-impossible", "measure-unusual"})

_EXPLAINS: Final = 1.6
"""Standard deviations from which a value is named as what would explain a contradiction (own judgment)."""

_NEARLY_AS_WELL: Final = 3.0
"""Difference of squared deviations within which a second value explains it nearly as well (own judgment)."""


def look_over(measures: MeasureSet, style: LengthStyle, typed_in: Unit | None = None) -> LookedOver:
    """Everything to be asked about the set: ranges, contradictions, and each value given all others.

    The set is held against the population that it names; where it names none nothing is guessed, and
    ``not_held`` says so. ``style`` writes the words; ``typed_in`` is the unit in which the values were typed,
    if it is another than that of the style. Nothing is changed: what was probably meant is offered with each
    doubt.
    """
    unit = typed_in or style.unit
    other_unit = other_unit_doubts(measures, style, unit)
    if other_unit:
        problem = InputError("held-unit-first", where="")
        return LookedOver(other_unit, (), unseen_slips(measures, {}, None), None, "", problem)
    arithmetic = check_consistent(measures, style)
    if measures.population is None:
        problem = InputError("held-against-nobody", where="")
        return LookedOver(arithmetic, (), unseen_slips(measures, {}, None), None, "", problem)
    # Loaded here: arithmetic alone, and every draft, can do without numbers of a population.
    from notchbook.body.doubts.against_population import population_doubts
    from notchbook.body.population import population

    against = population(measures.population)
    doubts, standings = population_doubts(against, measures, style, unit)
    by_key = {one.key: one for one in standings}
    return LookedOver(
        doubts=_joined(arithmetic, doubts, standings),
        standings=standings,
        unseen=unseen_slips(measures, by_key, against.look_again),
        population=against.name,
        population_words=against.words,
        not_held=InputError("held-too-few", count=len(standings), where="") if len(standings) < 2 else None,
    )


def _joined(
    arithmetic: Sequence[Doubt], statistical: Sequence[Doubt], standings: Iterable[Standing]
) -> tuple[Doubt, ...]:
    """All doubts, stops first; what a population says about a value goes before its usual range."""
    covered = {key for doubt in statistical for key in doubt.keys}
    by_key = {one.key: one for one in standings}
    found = list(statistical)
    for doubt in arithmetic:
        if doubt.code in _OF_ONE_VALUE and covered.issuperset(doubt.keys):
            continue
        if doubt.code == "measure-unusual" and by_key.keys() >= set(doubt.keys):
            # The body is unusual as a whole: the rest lets expect such a value.
            continue
        if doubt.code == "waists-apart" and by_key.keys() >= set(doubt.keys):
            # The population knows both lengths and more of the body: what it says about them says it all.
            continue
        found.append(_explained(doubt, statistical, by_key))
    return tuple(sorted(found, key=lambda doubt: doubt.level != "stop"))


def _explained(doubt: Doubt, statistical: Sequence[Doubt], by_key: dict[str, Standing]) -> Doubt:
    """The contradiction with the values that would explain it, where the rest of the set can tell."""
    for other in statistical:
        named = other.suspects[:1]
        if named and named[0].key in doubt.keys:
            return Doubt(doubt.level, doubt.keys, doubt.problem, other.suspects, other.repairs)
    ranked = sorted((by_key[key] for key in doubt.keys if key in by_key), key=lambda one: -abs(one.z))
    if len(ranked) < 2 or abs(ranked[0].z) < _EXPLAINS:
        return doubt
    told = [one for one in ranked[:2] if one.z**2 >= ranked[0].z ** 2 - _NEARLY_AS_WELL]
    suspects = tuple(
        Suspect(one.key, one.value, one.expected, one.low, one.high, one.z, 1.0 / len(told)) for one in told
    )
    return Doubt(doubt.level, doubt.keys, doubt.problem, suspects, doubt.repairs)
