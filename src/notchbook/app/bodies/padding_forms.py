"""Padding dress forms for a client: what she types, and which form of the book needs least."""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from notchbook.app.studio import EntrySummary, Studio
from notchbook.body import MeasureSet
from notchbook.body.charts import LAYER_THICKNESS, PaddingPlan, padding_plan
from notchbook.body.charts.padding.choose_form import rank_of
from notchbook.body.charts.padding.padding_plan import LEAST_THICKNESS, MOST_THICKNESS
from notchbook.errors import InputError
from notchbook.units import MM_PER_UNIT, Unit, format_length, parse_length, quoted, written_unit


@dataclass(frozen=True, slots=True)
class FormPlan:
    """A form of the book with its plan; without one, ``problem`` says why it cannot be held to the client."""

    entry: EntrySummary
    form: MeasureSet
    plan: PaddingPlan | None
    problem: InputError | None = None


def read_layer(text: str, unit: Unit) -> float:
    """The thickness of a layer in mm; a bare number is in ``unit``.

    Refused: a bare number that is no thickness in this unit and is one in mm (``padding-thickness-bare``),
    ``number-*``, ``length-*``. Any other thickness of no wadding is refused by the plan.
    """
    thickness = parse_length(text, unit)
    if written_unit(text) is None and not _is_wadding(thickness) and _is_wadding(parse_length(text, "mm")):
        raise InputError(
            "padding-thickness-bare",
            text=quoted(text.strip()),
            unit=unit,
            least=LEAST_THICKNESS,
            most=MOST_THICKNESS,
            where="",
        )
    return thickness


def written_layer(thickness: float, unit: Unit) -> str:
    """The thickness, mm, as wadding is sold: for inches the fraction where it is one, else millimeters."""
    sixty_fourths = Fraction(repr(round(thickness, 3))) / MM_PER_UNIT["in"] * 64
    if unit == "in" and abs(sixty_fourths - round(sixty_fourths)) < Fraction(1, 100):
        return format_length(thickness, "in", fraction_denominator=64)
    return f"{thickness:.3g} mm"


def check_form_first(forms: Iterable[MeasureSet], client: MeasureSet) -> None:
    """Refuse a body among the forms where the client is a dress form (``padding-swapped``)."""
    for form in forms:
        if form.kind == "body" and client.kind == "form":
            raise InputError("padding-swapped", first=form.name, second=client.name)


def _is_wadding(thickness: float) -> bool:
    return LEAST_THICKNESS <= thickness <= MOST_THICKNESS


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
    try:
        return FormPlan(entry, form, padding_plan(form, client, layer))
    except InputError as error:
        if error.code != "padding-nothing":
            raise
        return FormPlan(entry, form, None, error)
