"""Which dress form of the book needs least padding for a client."""

from dataclasses import dataclass

from notchbook.app.studio import EntrySummary, Studio
from notchbook.body import MeasureSet
from notchbook.body.charts import LAYER_THICKNESS, PaddingPlan, padding_plan
from notchbook.body.charts.padding.choose_form import rank_of, unknown_main_girths
from notchbook.errors import InputError


@dataclass(frozen=True, slots=True)
class FormPlan:
    """A form of the book with its plan; without one, ``problem`` says why it cannot be held to the client.

    ``unknown`` are main girths of the client that were not measured on the form.
    """

    entry: EntrySummary
    form: MeasureSet
    plan: PaddingPlan | None
    unknown: tuple[str, ...] = ()
    problem: InputError | None = None


def form_plans(studio: Studio, client: int, layer_thickness: float = LAYER_THICKNESS) -> tuple[FormPlan, ...]:
    """A plan for every form of the book, in the order of ``rank_of``; those without a plan last.

    ``layer_thickness`` mm. Refused: a thickness of no wadding (``padding-thickness``), ``entry-not-body``.
    """
    hers = studio.open_body(client).measures
    forms = [pair for pair in studio.all_bodies() if pair[0].kind == "form" and pair[0].id != client]
    plans = [_form_plan(entry, form, hers, layer_thickness) for entry, form in forms]
    known = sorted(
        ((rank_of(one.plan, one.form, hers), one) for one in plans if one.plan is not None),
        key=lambda pair: pair[0],
    )
    return (*(one for _rank, one in known), *(one for one in plans if one.plan is None))


def _form_plan(entry: EntrySummary, form: MeasureSet, client: MeasureSet, layer: float) -> FormPlan:
    unknown = unknown_main_girths(form, client)
    try:
        return FormPlan(entry, form, padding_plan(form, client, layer), unknown)
    except InputError as error:
        if error.code != "padding-nothing":
            raise
        return FormPlan(entry, form, None, unknown, error)
