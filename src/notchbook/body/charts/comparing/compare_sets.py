"""Two sets of measures side by side: a form and a client, a client now and a year ago."""

from dataclasses import dataclass

from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.comparing.populations import population_remarks
from notchbook.body.charts.comparing.size_position import size_position
from notchbook.body.charts.comparing.tolerance import tolerance_of
from notchbook.body.charts.comparing.waist_levels import at_level_of
from notchbook.body.doubts.doubt import Doubt
from notchbook.body.measure import Measure
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry, measure_table
from notchbook.body.sides import Side, plain_key, sided_key
from notchbook.errors import InputError


@dataclass(frozen=True, slots=True)
class MeasureDifference:
    """One measure of both sets, mm (degrees, kg); ``key`` carries the side where the sides differ.

    ``difference`` is second minus first; ``beyond`` says that it is more than ``tolerance``, which two
    readings of a tape may differ by. ``steps`` is the difference in steps of a chart, where one is given and
    its row tells sizes apart. ``moved``: the second value was brought to the waist level of the first.
    """

    key: str
    first: Measure
    second: Measure
    difference: float
    tolerance: float
    beyond: bool
    steps: float | None = None
    moved: bool = False


@dataclass(frozen=True, slots=True)
class SetComparison:
    """What two sets have in common and what not; ``remarks`` say what cannot be compared as it stands."""

    first: str
    second: str
    rows: tuple[MeasureDifference, ...]
    only_first: tuple[str, ...]
    only_second: tuple[str, ...]
    remarks: tuple[Doubt, ...]

    @property
    def differing(self) -> tuple[MeasureDifference, ...]:
        """The measures that differ by more than two readings may, the largest share of its value first."""
        far = [row for row in self.rows if row.beyond]
        return tuple(sorted(far, key=lambda row: -abs(row.difference) / max(row.first.value, 1.0)))


def compare_sets(first: MeasureSet, second: MeasureSet, chart: SizeChart | None = None) -> SetComparison:
    """Each measure of both sets, the second brought to the waist level of the first.

    Values at a side are compared on that side. Methods that differ are told and not reckoned with.
    """
    leveled = at_level_of(second, first)
    rows: list[MeasureDifference] = []
    only_first: list[str] = []
    only_second: list[str] = []
    for key in measure_table():
        for side in _sides(key, first, leveled.measures):
            name = sided_key(key, side)
            one, other = first.find(key, side), leveled.measures.find(key, side)
            if one is not None and other is not None:
                moved = bool({key, name} & set(leveled.moved))
                rows.append(_difference(name, one, other, chart, moved=moved))
            elif one is not None and second.find(key, side) is None:
                only_first.append(name)
            elif other is not None:
                only_second.append(name)
    return SetComparison(
        first.name,
        second.name,
        tuple(rows),
        tuple(only_first),
        tuple(only_second),
        (
            *population_remarks(first.name, first.population, second.name, second.population),
            *leveled.remarks,
            *_method_remarks(rows),
        ),
    )


def _sides(key: str, first: MeasureSet, second: MeasureSet) -> tuple[Side, ...]:
    if first.sides_differ([key]) or second.sides_differ([key]):
        return ("left", "right")
    return ("both",)


def _difference(
    name: str, one: Measure, other: Measure, chart: SizeChart | None, *, moved: bool
) -> MeasureDifference:
    key = plain_key(name)
    difference = other.value - one.value
    tolerance = tolerance_of(measure_entry(key), one, other)
    return MeasureDifference(
        name,
        one,
        other,
        difference,
        tolerance,
        abs(difference) > tolerance,
        None if chart is None else _steps(chart, key, one.value, other.value),
        moved,
    )


def _steps(chart: SizeChart, key: str, one: float, other: float) -> float | None:
    places = [size_position(chart, key, value) for value in (one, other)]
    if places[0] is None or places[1] is None:
        return None
    return places[1].place - places[0].place


def _method_remarks(rows: list[MeasureDifference]) -> list[Doubt]:
    """A remark for every measure that was taken in two ways, by their own words."""
    return [
        Doubt(
            "check",
            (row.key,),
            InputError(
                "compare-methods",
                label=measure_entry(plain_key(row.key)).label,
                first=row.first.method,
                second=row.second.method,
                where="",
            ),
        )
        for row in rows
        if row.first.method and row.second.method and row.first.method != row.second.method
    ]
