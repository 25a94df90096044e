"""The numbers of a recipe that may move: lengths in the trade's notation, and plain ones such as degrees."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any, Final, Literal

from notchbook.errors import InputError
from notchbook.recipe.parameter_paths import SIGN, path_in_words
from notchbook.recipe.parameters import read_amount
from notchbook.recipe.recipe import Recipe, StepRecord
from notchbook.recipe.registry import definition
from notchbook.units import Amount, Unit, quoted, suggestion
from notchbook.units.amount import Term
from notchbook.units.unit import MM_PER_UNIT

FARTHEST: Final = 3000.0
"""mm above a length, beyond which no number is sought: longer than any garment. Own judgment."""

LEAST: Final = -300.0
"""mm; no length is sought below it unless it is there already: nothing is taken off or lifted by more. Own
judgment."""

WIDEST: Final = 180.0
"""The same for plain numbers without limits of their own, which are degrees. Own judgment."""

_DECIMALS: Final = 9
"""Decimals of a number while it is sought; far below what any drawing shows."""

_RULER: Final = 64
"""The finest parts of an inch on a ruler."""

NumberKind = Literal["amount", "number"]


@dataclass(frozen=True, slots=True)
class StepNumber:
    """One number of one step. ``path`` leads to it within the parameters, ``title`` is that of the step.

    ``value`` is what moves: the plain part of a length in mm (shares of measures stay as they are), or the
    number itself; ``unit`` the unit in which a length is written. ``low`` and ``high`` limit the search.
    ``stored`` is None where the field was left empty, and its step decides.
    """

    step: str
    path: str
    title: str
    kind: NumberKind
    stored: str | float | None
    value: float
    low: float
    high: float
    unit: Unit = "mm"

    @property
    def word(self) -> str:
        """As it is named on the command line: ``skirt-1.length``."""
        return f"{self.step}{SIGN}{self.path}"

    @property
    def said(self) -> str:
        """In words: ``Draft skirt, hem girth``."""
        return f"{self.title}, {path_in_words(self.path)}"

    @property
    def first_step(self) -> float:
        """How far it is moved to see what it does: 1 mm, half a degree, or less where it may go less far."""
        return min(1.0 if self.kind == "amount" else 0.5, (self.high - self.low) / 100.0)

    def at(self, value: float) -> str | float:
        """What is kept when the moving part is this."""
        if self.kind == "number":
            return round(value, _DECIMALS)
        terms = () if self.stored is None else read_amount(str(self.stored)).terms
        shares = tuple(term for term in terms if term.measure is not None)
        plain = _in_unit(value, self.unit)
        if shares and not plain:
            return Amount(shares).text
        return Amount((*shares, Term(plain, unit=self.unit))).text


def _in_unit(mm: float, unit: Unit) -> Fraction:
    """The length in its unit: in inches a fraction of the ruler where it is one, else with few decimals."""
    exact = Fraction(repr(round(mm, _DECIMALS))) / MM_PER_UNIT[unit]
    ruler = Fraction(round(exact * _RULER), _RULER)
    if unit != "in" or abs(ruler - exact) * MM_PER_UNIT[unit] < Fraction(1, 10**6):
        return ruler if unit == "in" else exact
    return Fraction(round(exact * 10**_DECIMALS), 10**_DECIMALS)


def numbers_of(recipe: Recipe) -> tuple[StepNumber, ...]:
    """Every number that may move, in the order in which the steps run; fields left empty among them."""
    return tuple(number for record in recipe.ordered() for number in _numbers(record))


def number_named(recipe: Recipe, word: str) -> StepNumber:
    """The number of a word: ``skirt-1.length``, ``skirt.length``, or ``length`` where one step has it.

    InputError ``number-unknown`` (with the nearest one), ``number-ambiguous``.
    """
    slugs = {record.id: record.slug for record in recipe.steps}
    numbers = numbers_of(recipe)
    exact = [one for one in numbers if word in (one.word, f"{slugs[one.step]}{SIGN}{one.path}")]
    found = exact or [one for one in numbers if word == one.path]
    known = tuple(one.word for one in numbers)
    if not found:
        raise InputError("number-unknown", word=quoted(word), known=known, suggestion=suggestion(word, known))
    if len(found) > 1:
        raise InputError("number-ambiguous", word=quoted(word), known=tuple(one.word for one in found))
    return found[0]


def _numbers(record: StepRecord) -> Iterator[StepNumber]:
    form = definition(record.operation).form
    for path, schema, value in _leaves(form, record.parameters, form.get("$defs", {}), ()):
        number = _number(record, SIGN.join(path), schema, value)
        if number is not None:
            yield number


def amounts_in(form: Mapping[str, Any], parameters: Mapping[str, Any]) -> Iterator[str]:
    """The text of every amount among the parameters of a step, those within lists too.

    ``form`` is the JSON schema of the parameters.
    """
    for _, schema, value in _leaves(form, parameters, form.get("$defs", {}), ()):
        if schema.get("kind") == "amount" and isinstance(value, str):
            yield value


def _leaves(
    schema: Mapping[str, Any], value: Any, shared: Mapping[str, Any], path: tuple[str, ...]
) -> Iterator[tuple[tuple[str, ...], Mapping[str, Any], Any]]:
    """Each plain value of the parameters with its form and its path."""
    if "$ref" in schema:
        schema = shared[str(schema["$ref"]).rsplit("/", 1)[-1]]
    if "anyOf" in schema:
        options = [option for option in schema["anyOf"] if option.get("type") != "null"]
        yield from _leaves(options[0], value, shared, path)
    elif isinstance(value, Mapping):
        known = schema.get("properties", {})
        for key, part in value.items():
            if key in known:
                yield from _leaves(known[key], part, shared, (*path, key))
    elif isinstance(value, (list, tuple)):
        for index, part in enumerate(value):
            yield from _leaves(schema.get("items", {}), part, shared, (*path, str(index)))
    else:
        yield path, schema, value


def _number(record: StepRecord, path: str, schema: Mapping[str, Any], value: Any) -> StepNumber | None:
    title = record.title or record.operation.replace("_", " ")
    if schema.get("kind") == "amount" and (value is None or isinstance(value, str)):
        return _amount(record.id, path, title, value)
    is_number = isinstance(value, (int, float)) and not isinstance(value, bool)
    if schema.get("type") != "number" or not (value is None or is_number):
        return None
    low, high = (_bound(schema, word, value) for word in ("minimum", "maximum"))
    begin = min(max(0.0, low), high) if value is None else float(value)
    stored = None if value is None else float(value)
    return StepNumber(record.id, path, title, "number", stored, begin, low, high)


def _bound(schema: Mapping[str, Any], word: Literal["minimum", "maximum"], value: float | None) -> float:
    """The limit of the field itself; else that of the search."""
    exclusive = f"exclusive{word.capitalize()}"
    way = -WIDEST if word == "minimum" else WIDEST
    return float(schema.get(word, schema.get(exclusive, (value or 0.0) + way)))


def _amount(step: str, path: str, title: str, text: str | None) -> StepNumber | None:
    try:
        amount = read_amount(text or "0 mm")
    except InputError:
        return None  # a step that has stopped says so itself
    plain = [term for term in amount.terms if term.measure is None]
    value = sum(term.mm for term in plain)
    unit: Unit = next((term.unit for term in reversed(plain) if term.unit), "mm")
    low = LEAST + min(value, 0.0)
    return StepNumber(step, path, title, "amount", text, value, low, value + FARTHEST, unit)


def moved_number(number: StepNumber, value: float) -> StepNumber:
    """The number as it is kept after it was moved to this value."""
    return replace(number, stored=number.at(value), value=value)
