"""What the draft says about measures that do not go together."""

from collections.abc import Iterator
from typing import Final

from notchbook.blocks.upper_measures.dart_outlook import LOST_BELOW, DartOutlook
from notchbook.blocks.upper_measures.disagreement import Disagreement, Substitute, Trusted
from notchbook.body import PopulationName, measure_entry
from notchbook.body.quantity_words import said_key
from notchbook.pattern import Contradiction, Finding, Measured, Severity, worded

_CHECK: Final = "upper-measures"
"""The name under which the look at the measures speaks."""

_QUESTION: Final = "measure-to-which-waist"
"""The code of the question to which waist a length was taken."""

_CODES: Final = {
    "pair": "measures-contradict",
    "two-waists": "lengths-to-two-waists",
    "other-waist": "lengths-to-other-waist",
    "lost-dart": "bust-dart-lost",
}

_NOT_DRAWN: Final = ("upper_arm_girth",)
"""Measures that the look weighs and that no line of an upper block is drawn from: a sleeve takes the arm as
it stands in the set."""

LEAST_CHANGE: Final = 1.0
"""Degrees; a bust dart that changes by less is not spoken of."""


def contradiction_notes(front: str, trusted: Trusted) -> tuple[Finding, ...]:
    """The findings about the measures of this body; ``front`` is the name of the draft's front piece."""
    return tuple(_notes(front, trusted))


def _notes(front: str, trusted: Trusted) -> Iterator[Finding]:
    for one in trusted.disagreements:
        yield _disagreement_note(front, one, trusted.population)
    for substitute in trusted.substitutes:
        if substitute.key not in _NOT_DRAWN:
            yield _substitute_note(substitute, trusted.population)


def _disagreement_note(front: str, one: Disagreement, population: PopulationName | None) -> Finding:
    again = measure_entry(one.read_again)
    code = _CODES[one.kind]
    if one.deviations is None:
        code = "measures-rule-each-other-out"
    return worded(
        _CHECK,
        code,
        Severity.LOOK,
        Measured(one.given, one.explaining, measure_entry(one.key).unit),
        piece=front if one.dart else None,
        contradiction=Contradiction(
            first=one.pair.first,
            second=one.pair.second,
            explains=one.key,
            value=one.explaining,
            by=one.amount,
            read_again=one.read_again,
            question=_QUESTION if one.asks_waist else "",
        ),
        first=measure_entry(one.pair.first).label_for(population),
        second=said_key(one.pair.second, population),
        what=one.pair.what,
        explains=measure_entry(one.key).label_for(population),
        again=said_key(one.read_again, population),
        how=again.short_how,
        deviations=one.deviations or 0.0,
        lengths=_lengths(one, population),
        usual=one.dart.expected if one.dart else 0.0,
        nearly=_nearly(one, population),
        longer="longer" if one.lower else "shorter",
        below="below the natural waist" if one.lower else "below the natural one",
        place="the navel lies" if one.lower else "the waist that the set names lies",
        dart=_dart_words(one.dart),
    )


def _lengths(one: Disagreement, population: PopulationName | None) -> str:
    """The lengths that went to another waist, with their verb."""
    first = measure_entry(one.keys[0]).label_for(population)
    rest = [said_key(key, population) for key in one.keys[1:]]
    if not rest:
        return f"{first} is"
    return f"{', '.join([first, *rest[:-1]])} and {rest[-1]} are all"


def _nearly(one: Disagreement, population: PopulationName | None) -> str:
    if one.other is None:
        return ""
    return f" Another {said_key(one.other, population)} would explain it nearly as well."


def _dart_words(dart: DartOutlook | None) -> str:
    """The bust dart as it stands and as it would be, where that is another one."""
    if dart is None or abs(dart.angle - dart.expected) < LEAST_CHANGE:
        return ""
    then = f"{dart.expected:.0f}°" if dart.expected >= LOST_BELOW else "no dart"
    if dart.angle < LOST_BELOW:
        return f" As it stands no bust dart is left; with the explaining value it would be {then}."
    return f" The bust dart comes out at {dart.angle:.0f}°; with the explaining value it would be {then}."


def _substitute_note(one: Substitute, population: PopulationName | None) -> Finding:
    entry = measure_entry(one.key)
    amounts = Measured(one.given, one.used, entry.unit)
    label = entry.label_for(population)
    if one.was_taken:
        return worded(_CHECK, "measured-value-replaced", Severity.LOOK, amounts, label=label)
    return worded(_CHECK, "estimate-yields", Severity.NOTE, amounts, label=label)
