"""Which size of a chart a body or form is, as the page shows it on small rulers."""

import math
from typing import Final

from notchbook.body import MeasureSet
from notchbook.body.charts import (
    GARMENT_WEIGHTS,
    NearestSize,
    SizeChart,
    SizeDeviation,
    SizePosition,
    goes_over_words,
)
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.answers.quantities import (
    label_of,
    remarks_of,
    said_difference,
    said_keys,
    said_value,
)
from notchbook.workroom.answers.refusal import Refusal
from notchbook.workroom.reader import Reader


class NearestLine(Answer):
    """One measure against the nearest size.

    ``place`` counts steps from the first size (0), null where the row does not tell sizes apart;
    ``place_words`` say the same. ``decides``: the size of the garment hangs on it. ``beyond``: off by more
    than two readings of a tape may differ. ``margin_text`` is the ± of a computed size.
    """

    key: str
    label: str
    value_text: str
    size_text: str
    difference_text: str
    margin_text: str
    beyond: bool
    decides: bool
    place: float | None
    place_words: str


class NearestAnswer(Answer):
    """The nearest size overall: ``sentence`` says it; ``labels`` are the sizes, smallest first.

    ``goes_over`` is the size that goes over the bust or hip, empty where none is known, and
    ``goes_over_words`` say it. ``caveat`` is one sentence about the chart, to stand beside the size.
    ``absent`` would decide too but are not known on both sides; ``remarks`` make the answer weaker.
    """

    chart_name: str
    chart_words: str
    garment: str
    labels: tuple[str, ...]
    size: str
    sentence: str
    goes_over: str
    goes_over_words: str
    caveat: str
    off_words: str
    lines: tuple[NearestLine, ...]
    absent: tuple[str, ...]
    remarks: tuple[Refusal, ...]


def nearest_answer(
    measures: MeasureSet, chart: SizeChart, found: NearestSize, reader: Reader
) -> NearestAnswer:
    """The answer in the reader's unit, the measures that decide first."""
    weights = GARMENT_WEIGHTS[found.garment]
    ordered = sorted(found.deviations, key=lambda one: one.key not in weights)
    return NearestAnswer(
        chart_name=chart.name,
        chart_words=chart_words(chart),
        garment=found.garment,
        labels=chart.labels,
        size=found.size,
        sentence=_sentence(measures, chart, found),
        goes_over="" if found.goes_over is None else found.goes_over.size,
        goes_over_words=goes_over_words(found, reader.style),
        caveat=chart.caveat,
        off_words=_off_words(found),
        lines=tuple(_line(one, decides=one.key in found.decided_by, reader=reader) for one in ordered),
        absent=said_keys(found.absent),
        remarks=remarks_of(found.remarks, reader),
    )


def chart_words(chart: SizeChart) -> str:
    """Where the figures of a chart come from."""
    words = {"computed": "Computed: ", "imported": "", "typed": ""}[chart.status]
    if not chart.source:
        return {"computed": "Computed.", "imported": "Imported.", "typed": "Typed in."}[chart.status]
    return f"{words}{chart.source}{f' ({chart.grade})' if chart.grade else ''}."


def _sentence(measures: MeasureSet, chart: SizeChart, found: NearestSize) -> str:
    label = f" The label says {measures.label_size}." if measures.label_size else ""
    return f"Nearest to size {found.size} overall{_between(chart, found)}.{label}"


ON_THE_SIZE: Final = 0.1
"""Steps of the chart; what lies nearer is on the size."""

DISAGREE: Final = 2.0
"""Steps of the chart; measures that lie farther apart do not agree on a size."""


def _between(chart: SizeChart, found: NearestSize) -> str:
    """Between which sizes it lies: the weighted mean of the measures that decide."""
    deciding = _deciding(found)
    ways = {one.beyond for one in deciding}
    if ways in ({"below"}, {"above"}):
        return f" ({ways.pop()} it: the chart ends there)"
    weights = [GARMENT_WEIGHTS[found.garment][one.key] for one in deciding]
    place = sum(weight * one.place for weight, one in zip(weights, deciding, strict=True)) / sum(weights)
    lower, upper = math.floor(place), math.ceil(place)
    is_on_it = min(place - lower, upper - place) < ON_THE_SIZE
    if is_on_it or lower < 0 or upper >= len(chart.labels):
        return ""
    return f" (between {chart.labels[lower]} and {chart.labels[upper]})"


def _off_words(found: NearestSize) -> str:
    words = f"By {_joined(said_keys(found.decided_by))} it lies {found.distance:.1f} sizes off"
    if found.runner_up:
        words = f"{words}; size {found.runner_up} is {found.runner_up_distance:.1f} off"
    ordered = sorted(_deciding(found), key=lambda one: one.place)
    least, most = ordered[0], ordered[-1]
    if most.place - least.place < DISAGREE:
        return f"{words}."
    (low,), (high,) = said_keys((least.key,)), said_keys((most.key,))
    return (
        f"{words}. Its measures do not agree on a size: {low} alone is nearest to {least.nearest}, "
        f"{high} alone to {most.nearest}."
    )


def _deciding(found: NearestSize) -> list[SizePosition]:
    return [one for one in found.positions if one.key in found.decided_by]


def _joined(words: tuple[str, ...]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def _line(one: SizeDeviation, *, decides: bool, reader: Reader) -> NearestLine:
    return NearestLine(
        key=one.key,
        label=label_of(one.key),
        value_text=said_value(one.key, one.value, reader),
        size_text=said_value(one.key, one.size, reader),
        difference_text=said_difference(one.key, one.difference, reader),
        margin_text=said_value(one.key, one.margin, reader),
        beyond=one.beyond,
        decides=decides,
        place=None if one.position is None else one.position.place,
        place_words="" if one.position is None else _place_words(one.position, reader),
    )


def _place_words(position: SizePosition, reader: Reader) -> str:
    by = f" by {said_value(position.key, position.by, reader)}" if position.beyond else ""
    return f"{position.words}{by}"
