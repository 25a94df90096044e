"""`notchbook measures pad`: what to lay on a dress form so that it has a client's measures."""

from typing import TYPE_CHECKING, Annotated, Any

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, UnitChoice
from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle, parse_length

if TYPE_CHECKING:
    from notchbook.body.charts import LevelPlan, PaddingPlan


def pad(
    form: Annotated[str, typer.Argument(metavar="FORM", help="Measures of the dress form.")],
    client: Annotated[str, typer.Argument(metavar="CLIENT", help="Measures of the client.")],
    others: Annotated[
        list[str] | None,
        typer.Argument(metavar="FORM2", help="Other forms that are at hand.", show_default=False),
    ] = None,
    layer: Annotated[
        str, typer.Option("--layer", metavar="LENGTH", help="Thickness of one layer of wadding, laid on.")
    ] = "5 mm",
    chart: Annotated[
        str,
        typer.Option(
            "--chart",
            "-c",
            metavar="CHART",
            help="Where no form will do, name a size of it.",
            show_default=False,
        ),
    ] = "",
    unit: UnitChoice = "cm",
    as_json: AsJson = False,
) -> None:
    """Plan how to pad a dress form for a client; of several forms, which needs least.

    Example: notchbook measures pad form.json client.json

    Example: notchbook measures pad form-a.json client.json form-b.json form-c.json --layer 4mm
    """
    from notchbook.app.comparing import read_chart_named, read_set_named
    from notchbook.body.charts import choose_form, largest_size_within

    hers = read_set_named(client)
    forms = [read_set_named(word) for word in (form, *(others or ()))]
    plans = choose_form(forms, hers, parse_length(layer, unit))
    best = plans[0]
    size = largest_size_within(read_chart_named(chart), hers) if chart else None
    style = LengthStyle(unit)

    def show(screen: Screen) -> None:
        _show_choice(screen, plans, style)
        _show_plan(screen, best, style)
        if size is not None:
            screen.line(f"A form that measures as size {size} of {chart} could be padded everywhere.")

    data = {
        "client": hers.name,
        "best": best.form,
        "can_be_padded": best.can_be_padded,
        "plans": [_plan_data(plan) for plan in plans],
        "largest_size_within": size,
    }
    answer(data, show, as_json=as_json, to_check=not best.can_be_padded or bool(best.remarks))


def _show_choice(screen: Screen, plans: tuple["PaddingPlan", ...], style: LengthStyle) -> None:
    if len(plans) == 1:
        return
    rows = [
        (plan.form, _verdict(plan, style), style.text(plan.added) if plan.can_be_padded else "")
        for plan in plans
    ]
    screen.table(
        ("form", "can it be padded", "girths to add, together"), rows, numbers=("girths to add, together",)
    )
    screen.line()


def _verdict(plan: "PaddingPlan", style: LengthStyle) -> str:
    from notchbook.body.quantity_words import said_key

    if plan.can_be_padded:
        return "yes"
    worst, *others = plan.too_large
    more = f", {len(others)} more" if others else ""
    return f"no: {said_key(worst.key)} {style.text(-worst.difference)} too large{more}"


def _show_plan(screen: Screen, plan: "PaddingPlan", style: LengthStyle) -> None:
    from notchbook.body.charts.padding.padding_level import girth_added
    from notchbook.body.quantity_words import said_key
    from notchbook.cli.measures.show_sets import show_remarks, signed

    screen.line(f"{plan.form} for {plan.client}, layers of {plan.layer_thickness:.3g} mm")
    screen.line()
    columns = ("level", "form", "client", "front", "back", "layers front", "layers back", "then", "short")
    screen.table(columns, [_level_cells(level, style) for level in plan.levels], numbers=columns[1:])
    screen.line()
    if plan.order:
        screen.line(f"Pad in this order: {', '.join(map(said_key, plan.order))}.")
    if any(level.still_short for level in plan.levels):
        felt = style.text(girth_added(1.0, 1.0))
        screen.line(f"Fill what is short with thin felt: 1 mm all round adds {felt}, a strip of it less.")
    if plan.too_large:
        screen.line("Where the form is too large, padding cannot help.")
    for change in plan.lengths:
        words = signed(change.key, change.difference, style)
        screen.line(f"{said_key(change.key)} {words}: {change.advice}.")
    if plan.absent:
        screen.line(f"Measured on one of the two only: {', '.join(map(said_key, plan.absent))}.")
    if any(level.fit == "pad" for level in plan.levels):
        screen.line("Thin each layer out toward the side seam and above and below its level; measure again")
        screen.line("over the cover before you trust it. Count the pins that go in and those that come out.")
    show_remarks(screen, plan.remarks, style)


def _level_cells(level: "LevelPlan", style: LengthStyle) -> tuple[str, ...]:
    from notchbook.body.charts.padding.level_plan import MOST_OVER
    from notchbook.body.quantity_words import said_key

    girths = (said_key(level.key), style.text(level.form), style.text(level.client))
    if level.fit == "pad":
        return (
            *girths,
            style.text(level.front),
            style.text(level.back),
            str(level.front_layers),
            str(level.back_layers),
            style.text(level.reached),
            style.text(level.still_short) if level.still_short else "",
        )
    over = f"{style.text(-level.difference)} over" if level.difference < -MOST_OVER else ""
    return (*girths, "", "", "", "", "fits" if level.fit == "fits" else "too large", over)


def _plan_data(plan: "PaddingPlan") -> dict[str, Any]:
    return {
        "form": plan.form,
        "can_be_padded": plan.can_be_padded,
        "layer_thickness": plan.layer_thickness,
        "girths_added": round(plan.added, 6),
        "order": list(plan.order),
        "levels": [_level_data(level) for level in plan.levels],
        "lengths": [
            {
                "key": change.key,
                "form": change.form,
                "client": change.client,
                "difference": round(change.difference, 6),
                "advice": change.advice,
            }
            for change in plan.lengths
        ],
        "absent": list(plan.absent),
        "remarks": [{"code": remark.code, "message": remark.problem.text()} for remark in plan.remarks],
    }


def _level_data(level: "LevelPlan") -> dict[str, Any]:
    return {
        "key": level.key,
        "form": level.form,
        "client": level.client,
        "difference": round(level.difference, 6),
        "fit": level.fit,
        "front_thickness": round(level.front, 6),
        "back_thickness": round(level.back, 6),
        "front_layers": level.front_layers,
        "back_layers": level.back_layers,
        "reached": round(level.reached, 6),
        "still_short": round(level.still_short, 6),
        "by_arcs": level.by_arcs,
        "grade": level.grade,
    }
