"""A size chart: the measures of each size, with whom they are for and where they come from."""

from collections.abc import Mapping
from dataclasses import dataclass, field, fields, replace
from types import MappingProxyType
from typing import Any, Final, Literal

from notchbook.body.measure import Measure
from notchbook.body.measure_set import POPULATIONS, MeasureSet, PopulationName
from notchbook.body.measure_table import measure_entry, measure_table
from notchbook.body.one_line import LONGEST_NOTE, one_line
from notchbook.errors import InputError
from notchbook.units import quoted

ChartStatus = Literal["computed", "typed", "imported"]

CHART_STATUSES: Final[tuple[ChartStatus, ...]] = ("computed", "typed", "imported")

LONGEST_CHART_NAME: Final = 80
LONGEST_LABEL: Final = 30

Margins = Mapping[str, Mapping[str, float]]
"""Label of a size -> key -> half width in mm within which nine of ten bodies of that size lie."""


@dataclass(frozen=True)
class SizeChart:
    """Sizes side by side, smallest first; a value is what the size *is*, exact by agreement.

    ``sizes`` are sets of kind ``chart`` told apart by ``label_size``, all tied at the same waist level and
    without sides. ``keys`` are the rows, those still empty too. ``main_measure`` is the one that the sizes
    step by. ``population`` names whom the chart is for. ``source`` and ``grade`` say where the figures come
    from and how sure they are; ``status``: computed, typed in or imported. ``caveat`` is one short sentence
    that is said beside every size that was found in the chart. ``margins`` belong to computed values: nine
    bodies of ten lie within them, and the note says of whom.
    Refused: no name (``measures-name``), a size without label (``chart-label-missing``) or with one that
    stands already (``chart-label-twice``), sides (``chart-sides``), sizes tied at different waists
    (``chart-waist-levels``), wrong choices (``measure-choice``), unknown keys.
    """

    name: str
    sizes: tuple[MeasureSet, ...] = ()
    population: PopulationName | None = None
    source: str = ""
    grade: str = ""
    status: ChartStatus = "typed"
    note: str = ""
    main_measure: str = "bust_girth"
    keys: tuple[str, ...] = ()
    margins: Margins = field(default_factory=dict)
    caveat: str = ""

    def __post_init__(self) -> None:
        name = one_line(self.name, "name", LONGEST_CHART_NAME)
        if not name:
            raise InputError("measures-name", where="")
        object.__setattr__(self, "name", name)
        for what in ("source", "grade", "caveat", "note"):
            object.__setattr__(self, what, one_line(getattr(self, what), what, LONGEST_NOTE))
        _check_choice("status", self.status, CHART_STATUSES)
        _check_choice("population", self.population, (*POPULATIONS, None))
        measure_entry(self.main_measure)
        object.__setattr__(self, "sizes", tuple(self._as_size(size) for size in self.sizes))
        self._check_sizes()
        object.__setattr__(self, "keys", self._ordered_keys())
        object.__setattr__(self, "margins", self._known_margins())

    def _as_size(self, size: MeasureSet) -> MeasureSet:
        label = one_line(size.label_size, "label_size", LONGEST_LABEL)
        if not label:
            raise InputError("chart-label-missing", name=self.name, where="")
        for text in size.values:
            if "@" in text:
                raise InputError("chart-sides", key=quoted(text), where="")
        return replace(
            size,
            name=f"{self.name}, size {label}",
            kind="chart",
            label_size=label,
            population=self.population,
            values={key: Measure(measure.value, "chart") for key, measure in size.values.items()},
        )

    def _check_sizes(self) -> None:
        labels = self.labels
        for label in labels:
            if labels.count(label) > 1:
                raise InputError("chart-label-twice", size=quoted(label), where="")
        tied = {(size.waist_level, size.waist_drop, size.rise_method) for size in self.sizes}
        if len(tied) > 1:
            raise InputError("chart-waist-levels", name=self.name, where="")

    def _ordered_keys(self) -> tuple[str, ...]:
        given = set(self.keys).union(*(size.values for size in self.sizes))
        for key in given:
            measure_entry(key)
        return tuple(key for key in measure_table() if key in given)

    def _known_margins(self) -> Margins:
        """Margins of values that are there; those of others say nothing."""
        known = {size.label_size: size.values for size in self.sizes}
        kept = {
            label: MappingProxyType({key: Measure(half).value for key, half in row.items() if key in values})
            for label, values in known.items()
            if (row := self.margins.get(label))
        }
        return MappingProxyType({label: row for label, row in kept.items() if row})

    @property
    def labels(self) -> tuple[str, ...]:
        """The labels of the sizes, in order."""
        return tuple(size.label_size for size in self.sizes)

    def position(self, label: str) -> int:
        """Where the size stands, from 0; an unknown one is refused (``chart-size-unknown``)."""
        if label not in self.labels:
            raise InputError(
                "chart-size-unknown", size=quoted(label), known=self.labels, name=self.name, where=""
            )
        return self.labels.index(label)

    def size(self, label: str) -> MeasureSet:
        """The size with this label; an unknown one is refused (``chart-size-unknown``)."""
        return self.sizes[self.position(label)]

    def row(self, key: str) -> tuple[float | None, ...]:
        """The values of a measure over the sizes, mm (degrees, kg); None where a cell is empty."""
        measure_entry(key)
        found = (size.values.get(key) for size in self.sizes)
        return tuple(None if measure is None else measure.value for measure in found)

    def margin(self, label: str, key: str) -> float | None:
        """The margin (±, mm) of a computed value, or None."""
        return self.margins.get(label, {}).get(key)

    def __hash__(self) -> int:
        return hash((self.name, self.sizes, self.keys, self.status))

    def __reduce__(self) -> tuple[Any, ...]:
        # A mapping proxy cannot be carried to another process; a dict can.
        values = {one.name: getattr(self, one.name) for one in fields(self)}
        values["margins"] = {label: dict(row) for label, row in self.margins.items()}
        return (_chart_of, (values,))


def _chart_of(values: dict[str, Any]) -> SizeChart:
    return SizeChart(**values)


def _check_choice(what: str, given: str | None, known: tuple[str | None, ...]) -> None:
    if given not in known:
        words = tuple(word for word in known if word)
        raise InputError("measure-choice", what=what, given=given, known=words, where="")
