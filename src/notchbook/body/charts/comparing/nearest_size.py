"""Which size of a chart a body or dress form really is."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.comparing.garment_weights import GARMENT_WEIGHTS, Garment
from notchbook.body.charts.comparing.goes_over import GoesOver, goes_over
from notchbook.body.charts.comparing.populations import population_remarks
from notchbook.body.charts.comparing.size_position import SizePosition, size_position
from notchbook.body.charts.comparing.tolerance import tolerance_of
from notchbook.body.charts.comparing.waist_levels import Leveled, at_level_of
from notchbook.body.doubts.doubt import Doubt
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry
from notchbook.errors import InputError


@dataclass(frozen=True, slots=True)
class SizeDeviation:
    """One measure against the nearest size, mm (degrees, kg).

    ``difference`` is the body's value minus the size's; ``beyond`` says that it is more than two readings of
    a tape may differ. ``margin`` is the ± of a computed size, ``position`` where the value stands among all
    sizes, if the row tells.
    """

    key: str
    value: float
    size: float
    difference: float
    beyond: bool
    margin: float | None
    position: SizePosition | None


@dataclass(frozen=True, slots=True)
class NearestSize:
    """Which size it is for a garment.

    ``size`` is the nearest and ``runner_up`` the next one (empty in a chart of one size); ``distance`` and
    ``runner_up_distance`` are how far they lie off in steps of the chart, as the root of the weighted mean
    square over ``decided_by``. ``absent`` are measures that would decide too but are not known on both
    sides. ``deviations`` hold every measure that both have; ``remarks`` what makes the answer weaker.
    ``goes_over`` is the size that goes over the bust or hip, None where that girth is not known.
    """

    chart: str
    garment: Garment
    size: str
    distance: float
    runner_up: str
    runner_up_distance: float
    decided_by: tuple[str, ...]
    absent: tuple[str, ...]
    deviations: tuple[SizeDeviation, ...]
    remarks: tuple[Doubt, ...]
    goes_over: GoesOver | None = None

    @property
    def positions(self) -> tuple[SizePosition, ...]:
        """Where each measure stands, for those that tell sizes apart."""
        return tuple(one.position for one in self.deviations if one.position is not None)


def nearest_size(measures: MeasureSet, chart: SizeChart, garment: Garment = "dress") -> NearestSize:
    """The nearest size of a chart; the label of a form is not looked at.

    Lengths from or to the waist are brought to the waist level of the chart first, and a girth of a waist
    tied elsewhere is not used. Refused: none of the measures that decide is known on both sides
    (``chart-nothing-to-compare``).
    """
    if not chart.sizes:
        raise InputError("chart-empty", name=chart.name, where="")
    # All sizes are tied alike; a remark must name the chart and not the first of them.
    leveled = at_level_of(measures, replace(chart.sizes[0], name=chart.name))
    weights = GARMENT_WEIGHTS[garment]
    positions = {
        key: position
        for key in weights
        if (measure := leveled.measures.find(key)) is not None
        and (position := size_position(chart, key, measure.value)) is not None
    }
    if not positions:
        wanted = tuple(measure_entry(key).label for key in weights)
        raise InputError(
            "chart-nothing-to-compare", name=measures.name, chart=chart.name, wanted=wanted, where=""
        )
    ranked = sorted((_distance(positions, weights, at), at) for at in range(len(chart.sizes)))
    (distance, at), (second_distance, second) = ranked[0], ranked[min(1, len(ranked) - 1)]
    return NearestSize(
        chart=chart.name,
        garment=garment,
        size=chart.labels[at],
        distance=distance,
        runner_up=chart.labels[second] if second != at else "",
        runner_up_distance=second_distance,
        decided_by=tuple(positions),
        absent=tuple(key for key in weights if key not in positions),
        deviations=_deviations(leveled, chart, at),
        remarks=(
            *population_remarks(measures.name, measures.population, chart.name, chart.population),
            *leveled.remarks,
            *_remarks(measures, positions),
        ),
        goes_over=goes_over(leveled.measures, chart, garment, at),
    )


def _distance(positions: Mapping[str, SizePosition], weights: Mapping[str, float], at: int) -> float:
    total = sum(weights[key] for key in positions)
    squares = sum(weights[key] * (position.place - at) ** 2 for key, position in positions.items())
    return float((squares / total) ** 0.5)


def _deviations(leveled: Leveled, chart: SizeChart, at: int) -> tuple[SizeDeviation, ...]:
    size, found = chart.sizes[at], []
    for key, wanted in size.values.items():
        measure = leveled.measures.find(key)
        if measure is None:
            continue
        difference = measure.value - wanted.value
        found.append(
            SizeDeviation(
                key=key,
                value=measure.value,
                size=wanted.value,
                difference=difference,
                beyond=abs(difference) > tolerance_of(measure_entry(key), measure),
                margin=chart.margin(size.label_size, key),
                position=size_position(chart, key, measure.value),
            )
        )
    return tuple(found)


def _remarks(measures: MeasureSet, positions: Mapping[str, SizePosition]) -> list[Doubt]:
    """What makes the answer weaker: estimates among the measures that decide, values beyond the chart."""
    remarks: list[Doubt] = []
    for key, position in positions.items():
        label = measure_entry(key).label
        if position.beyond:
            problem = InputError(
                "chart-beyond",
                label=label,
                way=position.beyond,
                size=position.nearest,
                by=position.by,
                where="",
            )
            remarks.append(Doubt("check", (key,), problem))
        measure = measures.find(key)
        if measure is not None and measure.status == "estimated":
            problem = InputError("compare-estimated", label=label, error=measure.error, where="")
            remarks.append(Doubt("check", (key,), problem))
    return remarks
