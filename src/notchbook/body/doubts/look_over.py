"""Looking over a set of measures before it is used: by arithmetic, and against a population."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Final

from notchbook.body.doubts.child import is_child
from notchbook.body.doubts.consistency import check_consistent
from notchbook.body.doubts.doubt import Doubt, Suspect
from notchbook.body.doubts.explained_already import without_explained
from notchbook.body.doubts.half_scale import is_half_scale
from notchbook.body.doubts.looked_over import LookedOver
from notchbook.body.doubts.other_unit_doubt import other_unit_doubts
from notchbook.body.doubts.standing import Standing
from notchbook.body.doubts.unseen import unseen_slips
from notchbook.body.doubts.waist_drops import with_possible_drop
from notchbook.body.doubts.zeros import without_zeros, zero_doubts
from notchbook.body.measure_set import MeasureSet
from notchbook.body.waist_drop import DROP_KEY
from notchbook.errors import InputError
from notchbook.units import LengthStyle, Unit

if TYPE_CHECKING:
    from notchbook.body.doubts.file_shift import BesideFile

_OF_ONE_VALUE: Final = frozenset({"measure-impossible", "measure-unusual"})

_EXPLAINS: Final = 1.6
"""Standard deviations from which a value is named as what would explain a contradiction (own judgment)."""

_NEARLY_AS_WELL: Final = 3.0
"""Difference of squared deviations within which a second value explains it nearly as well (own judgment)."""


def look_over(
    measures: MeasureSet,
    style: LengthStyle,
    typed_in: Unit | None = None,
    *,
    beside: "BesideFile | None" = None,
) -> LookedOver:
    """Everything to be asked about the set: ranges, contradictions, and each value given all others.

    The set is held against the population that it names; where it names none nothing is guessed, and
    ``not_held`` says so. ``style`` writes the words; ``typed_in`` is the unit in which the values were typed,
    if it is another than that of the style. ``beside`` is what is off in the whole file that the set stands
    in: its values are held against what that file lets expect. Nothing is changed: what was probably meant
    is offered with each doubt.
    """
    unit = typed_in or style.unit
    zeros = zero_doubts(measures)
    if zeros:
        rest = look_over(without_zeros(measures), style, typed_in, beside=beside)
        return replace(
            rest, doubts=tuple(sorted((*zeros, *rest.doubts), key=lambda one: one.level != "stop"))
        )
    if is_half_scale(measures):
        half = tuple(doubt for doubt in check_consistent(measures, style) if doubt.code not in _OF_ONE_VALUE)
        return _not_held(half, measures, "held-half-scale")
    other_unit = other_unit_doubts(measures, style, unit)
    if other_unit:
        return _not_held(other_unit, measures, "held-unit-first")
    arithmetic = beside.arithmetic(measures, style) if beside else check_consistent(measures, style)
    if is_child(measures):
        possible = tuple(doubt for doubt in arithmetic if doubt.code != "measure-unusual")
        return _not_held(possible, measures, "held-no-child")
    if measures.population is None:
        return _not_held(arithmetic, measures, "held-against-nobody")
    # Loaded here: arithmetic alone, and every draft, can do without numbers of a population.
    from notchbook.body.doubts.held import held_against
    from notchbook.body.population import population

    against = population(measures.population)
    doubts, standings = held_against(against, with_possible_drop(measures), style, unit, beside)
    by_key = {one.key: one for one in standings}
    return LookedOver(
        doubts=_joined(
            without_explained(arithmetic, doubts, measures, style), doubts, standings, against.look_again
        ),
        standings=standings,
        unseen=unseen_slips(measures, by_key, against.look_again),
        population=against.name,
        population_words=against.words,
        not_held=InputError("held-too-few", count=len(standings), where="") if len(standings) < 2 else None,
        cautions=_cautions(measures),
    )


def _not_held(doubts: tuple[Doubt, ...], measures: MeasureSet, why: str) -> LookedOver:
    """What there is to say where the set is held against nobody."""
    problem = InputError(why, where="")
    return LookedOver(doubts, (), unseen_slips(measures, {}, None), None, "", problem)


def _cautions(measures: MeasureSet) -> tuple[InputError, ...]:
    """What must be said of a set that is no body of any population."""
    if measures.kind == "body":
        return ()
    what, is_shaped = ("Forms", "are shaped") if measures.kind == "form" else ("Size charts", "are made")
    return (InputError("held-other-shape", what=what, is_shaped=is_shaped, where=""),)


def _joined(
    arithmetic: Sequence[Doubt],
    statistical: Sequence[Doubt],
    standings: Iterable[Standing],
    look_again: float,
) -> tuple[Doubt, ...]:
    """All doubts, stops first; what a population says about a value goes before its usual range."""
    covered = {key for doubt in statistical for key in doubt.keys}
    stopped = {key for doubt in statistical if doubt.level == "stop" for key in doubt.keys}
    by_key = {one.key: one for one in standings}
    found = list(statistical)
    for doubt in arithmetic:
        # What no body has stays a stop, whatever else is asked about it.
        told = stopped if doubt.level == "stop" else covered
        if doubt.code in _OF_ONE_VALUE and told.issuperset(doubt.keys):
            continue
        if doubt.code == "waist-drop-unusual" and DROP_KEY in covered:
            continue
        if doubt.code == "measure-unusual" and by_key.keys() >= set(doubt.keys):
            # The body is unusual as a whole: the rest lets expect such a value.
            continue
        if doubt.code == "waist-over-hip" and _all_fit(doubt, by_key, look_again):
            # On men it is common, and the rest lets expect it.
            continue
        if doubt.code == "waists-apart" and by_key.keys() >= set(doubt.keys):
            # The population knows both lengths and more of the body: what it says about them says it all.
            continue
        found.append(_explained(doubt, statistical, by_key))
    return tuple(sorted(found, key=lambda doubt: doubt.level != "stop"))


def _all_fit(doubt: Doubt, by_key: dict[str, Standing], look_again: float) -> bool:
    """Whether the population knows all values of the doubt, and none of them is worth a second look."""
    return all(key in by_key and abs(by_key[key].z) < look_again for key in doubt.keys)


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
