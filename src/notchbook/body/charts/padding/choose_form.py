"""Which of several forms, or which size, can be padded to a client with least work."""

from collections.abc import Sequence

from notchbook.body.charts.chart import SizeChart
from notchbook.body.charts.padding.padding_level import MAIN_GIRTHS, padding_levels
from notchbook.body.charts.padding.padding_plan import LAYER_THICKNESS, PaddingPlan, padding_plan
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry


def choose_form(
    forms: Sequence[MeasureSet], client: MeasureSet, layer_thickness: float = LAYER_THICKNESS
) -> tuple[PaddingPlan, ...]:
    """A plan for every form, the best first, in the order of :func:`rank_of`."""
    ranked = [(form, padding_plan(form, client, layer_thickness)) for form in forms]
    ranked.sort(key=lambda pair: rank_of(pair[1], pair[0], client))
    return tuple(plan for _form, plan in ranked)


def rank_of(plan: PaddingPlan, form: MeasureSet, client: MeasureSet) -> tuple[bool, int, float, float]:
    """The place of a form among others, the best first.

    Forms that are nowhere larger than the client come first, among them those whose main girths are all
    known, then the one that needs least; the rest follow, the one that is least too large first.
    """
    excess = -sum(level.difference for level in plan.too_large)
    return (not plan.can_be_padded, len(unknown_main_girths(form, client)), excess, plan.added)


def unknown_main_girths(form: MeasureSet, client: MeasureSet) -> tuple[str, ...]:
    """The main girths that are known on the client and not on the form."""
    return tuple(key for key in MAIN_GIRTHS if client.find(key) is not None and form.find(key) is None)


def largest_size_within(chart: SizeChart, client: MeasureSet) -> str | None:
    """The largest size whose girths are nowhere larger than the client's: a form of it can be padded.

    Levels that one of the two does not have are passed over; None where even the smallest size is too
    large somewhere, or no level is known on both.
    """
    found = None
    for size in chart.sizes:
        shared = [
            (measure_entry(key).repeat, on_size.value - on_client.value)
            for key in padding_levels()
            if (on_size := size.find(key)) is not None and (on_client := client.find(key)) is not None
        ]
        if shared and all(larger <= tolerance for tolerance, larger in shared):
            found = size.label_size
    return found
