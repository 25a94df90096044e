"""The measures of one body, dress form or size of a chart."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, fields, replace
from types import MappingProxyType
from typing import Any, Final, Literal

from notchbook.body.circumstances import Circumstances
from notchbook.body.measure import Measure, Status
from notchbook.body.measure_table import measure_entry, measure_table
from notchbook.body.one_line import LONGEST_NAME, LONGEST_NOTE, one_line
from notchbook.body.sides import SIDES, Side, plain_key, sided_key, split_key
from notchbook.errors import InputError

SetKind = Literal["body", "form", "chart"]
WaistLevel = Literal["natural", "lower", "navel"]
RiseMethod = Literal["sitting", "standing", "outside_minus_inside"]
PopulationName = Literal["women", "men"]
TakenAs = Literal["book", "survey"]

KINDS: Final[tuple[SetKind, ...]] = ("body", "form", "chart")
WAIST_LEVELS: Final[tuple[WaistLevel, ...]] = ("natural", "lower", "navel")
RISE_METHODS: Final[tuple[RiseMethod, ...]] = ("sitting", "standing", "outside_minus_inside")
POPULATIONS: Final[tuple[PopulationName, ...]] = ("women", "men")
TAKEN_AS: Final[tuple[TakenAs, ...]] = ("book", "survey")

USUAL_NAVEL_DROP: Final = 40.0
"""mm from the natural waist down to the navel where nothing better is known: women 46 (SD 17), men 35
(SD 19), computed from ANSUR II, between them."""

_CHOICES: Final[dict[str, tuple[str | None, ...]]] = {
    "kind": KINDS,
    "waist_level": WAIST_LEVELS,
    "rise_method": (*RISE_METHODS, None),
    "population": (*POPULATIONS, None),
    "taken_as": TAKEN_AS,
}


@dataclass(frozen=True)
class MeasureSet:
    """Named measures in a fixed order, symmetric until a side says otherwise.

    ``values`` maps a key, or a key with a side (``hip_depth@left``), to its measure. A side that has
    no value of its own takes the plain value. For a girth given per side, the value means the whole
    girth that the body would have if both sides were like this one.
    ``waist_level`` goes with the values: ``natural``, or ``lower`` by ``waist_drop`` mm, or the ``navel``,
    by ``waist_drop`` where it was measured and else by what is usual; so does ``rise_method``, since eases
    depend on both. ``kind``: a body, a dress form or a size of a chart.
    ``population`` names whom the values are held against when they are looked over; without one nothing
    is foretold. ``label_size`` is what is written on a dress form or stands over a size of a chart.
    ``taken_as`` says whose definitions the measures follow: those of this ``book``, or those of the
    ``survey`` (records of ANSUR II, whose waist is at the navel whatever ``waist_level`` says).
    Refused: unknown keys and sides, wrong choices (``measure-choice``), a drop that does not go with the
    level (``waist-level``), no name (``measures-name``). Impossible values are not refused here: see
    :func:`notchbook.body.check_consistent`.
    """

    name: str
    values: Mapping[str, Measure] = field(default_factory=dict)
    kind: SetKind = "body"
    waist_level: WaistLevel = "natural"
    waist_drop: float = 0.0
    rise_method: RiseMethod | None = None
    note: str = ""
    population: PopulationName | None = None
    label_size: str = ""
    circumstances: Circumstances = field(default_factory=Circumstances)
    taken_as: TakenAs = "book"

    def __post_init__(self) -> None:
        name = one_line(self.name, "name", LONGEST_NAME)
        if not name:
            raise InputError("measures-name", where="")
        object.__setattr__(self, "name", name)
        object.__setattr__(self, "note", one_line(self.note, "note", LONGEST_NOTE))
        object.__setattr__(self, "label_size", one_line(self.label_size, "label_size", LONGEST_NAME))
        object.__setattr__(self, "values", MappingProxyType(_in_order(self.values)))
        for what, known in _CHOICES.items():
            if getattr(self, what) not in known:
                words = tuple(word for word in known if word)
                raise InputError(
                    "measure-choice", what=what, given=getattr(self, what), known=words, where=""
                )
        drop = Measure(self.waist_drop).value
        object.__setattr__(self, "waist_drop", drop)
        if self.waist_level != "navel" and (self.waist_level == "lower") != (drop > 0):
            raise InputError("waist-level", level=self.waist_level, drop=drop, where="")

    @classmethod
    def from_mm(
        cls,
        name: str,
        values: Mapping[str, float],
        status: Status = "measured",
        population: PopulationName | None = None,
    ) -> "MeasureSet":
        """A set of plain values (mm; degrees for angles, kg for weight), all of one status."""
        taken = {key: Measure(value, status) for key, value in values.items()}
        return cls(name, taken, population=population)

    @property
    def drop_below_natural(self) -> float:
        """mm from the natural waist down to this waist; the usual one for a navel whose drop is not known."""
        return self.waist_drop or (USUAL_NAVEL_DROP if self.waist_level == "navel" else 0.0)

    def find(self, key: str, side: Side = "both") -> Measure | None:
        """The measure on this side, or None when it was not taken.

        A side without its own value takes the plain one. For both sides: the plain value; where only
        the two sides are known, their mean, which for a girth is the whole girth.
        """
        measure_entry(key)
        plain = self.values.get(key)
        if side != "both":
            return self.values.get(sided_key(key, side), plain)
        if plain is not None:
            return plain
        left, right = self.values.get(f"{key}@left"), self.values.get(f"{key}@right")
        return None if left is None or right is None else _mean(left, right)

    def get(self, key: str, side: Side = "both") -> Measure:
        """As :meth:`find`, but a measure that was not taken is refused (``measure-missing``).

        The refusal names the side only where the other one is known: else both are missing.
        """
        found = self.find(key, side)
        if found is None:
            missing = sided_key(key, side) if key in self.measure_keys() else key
            raise InputError("measure-missing", keys=(missing,), name=self.name)
        return found

    def value(self, key: str, side: Side = "both") -> float:
        """The value in mm (degrees, kg); a missing one is refused (``measure-missing``)."""
        return self.get(key, side).value

    def has(self, key: str) -> bool:
        """Whether the measure is known for both sides."""
        return self.find(key, "left") is not None and self.find(key, "right") is not None

    def require(self, keys: Iterable[str]) -> None:
        """Refuse once, naming all of these that are missing (``measure-missing``)."""
        missing = tuple(key for key in keys if not self.has(key))
        if missing:
            raise InputError("measure-missing", keys=missing, name=self.name)

    def measure_keys(self) -> tuple[str, ...]:
        """The keys without sides, each once, in the order of the measure table."""
        return tuple(dict.fromkeys(plain_key(text) for text in self.values))

    def sides_differ(self, keys: Iterable[str] | None = None) -> bool:
        """Whether left and right have other values in any of these measures (by default, in any at all)."""
        if not any("@" in name for name in self.values):
            return False
        asked = self.measure_keys() if keys is None else keys
        return any(self._value_or_none(key, "left") != self._value_or_none(key, "right") for key in asked)

    def _value_or_none(self, key: str, side: Side) -> float | None:
        found = self.find(key, side)
        return None if found is None else found.value

    def with_value(self, key: str, measure: Measure | float, side: Side = "both") -> "MeasureSet":
        """The set with this value in place; a plain number counts as measured."""
        new = measure if isinstance(measure, Measure) else Measure(measure)
        return replace(self, values={**self.values, sided_key(key, side): new})

    def without(self, key: str, side: Side = "both") -> "MeasureSet":
        """The set without this value (``both``: without the plain one; sides stay)."""
        name = sided_key(key, side)
        return replace(self, values={text: value for text, value in self.values.items() if text != name})

    def __hash__(self) -> int:
        return hash((self.name, tuple(self.values.items()), self.kind, self.waist_level, self.waist_drop))

    def __reduce__(self) -> tuple[Any, ...]:
        # A mapping proxy cannot be carried to another process; a dict can.
        values = {one.name: getattr(self, one.name) for one in fields(self)}
        return (_set_of, (values | {"values": dict(self.values)},))


def _set_of(values: dict[str, Any]) -> MeasureSet:
    return MeasureSet(**values)


def _in_order(values: Mapping[str, Measure]) -> dict[str, Measure]:
    position = {key: index for index, key in enumerate(measure_table())}

    def place(text: str) -> tuple[int, int]:
        key, side = split_key(text)
        return position[key], SIDES.index(side)

    return {text: values[text] for text in sorted(values, key=place)}


def _mean(left: Measure, right: Measure) -> Measure:
    if left == right:
        return left
    status: Status = "measured"
    error = None
    if "estimated" in (left.status, right.status):
        status, error = "estimated", max(left.error or 0.0, right.error or 0.0)
    elif "chart" in (left.status, right.status):
        status = "chart"
    return Measure((left.value + right.value) / 2, status, error, note="mean of left and right")
