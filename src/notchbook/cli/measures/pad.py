"""`notchbook measures pad`: what to lay on a dress form so that it has a client's measures."""

from typing import Annotated

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, UnitChoice
from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle


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
    from notchbook.app.bodies.padding_forms import check_form_first, read_layer
    from notchbook.app.comparing.measures import read_chart_named, read_set_named
    from notchbook.body.charts import choose_form, largest_size_within
    from notchbook.cli.measures.show_padding import padding_data, show_choice, show_plan

    hers = read_set_named(client)
    forms = [read_set_named(word) for word in (form, *(others or ()))]
    check_form_first(forms, hers)
    plans = choose_form(forms, hers, read_layer(layer, unit))
    best = plans[0]
    size = largest_size_within(read_chart_named(chart), hers) if chart else None
    style = LengthStyle(unit)

    def show(screen: Screen) -> None:
        show_choice(screen, plans, style)
        show_plan(screen, best, style)
        if size is not None:
            screen.line(f"A form that measures as size {size} of {chart} could be padded everywhere.")

    data = {
        "client": hers.name,
        "best": best.form,
        "can_be_padded": best.can_be_padded,
        "plans": [padding_data(plan) for plan in plans],
        "largest_size_within": size,
    }
    answer(data, show, as_json=as_json, to_check=not best.can_be_padded or bool(best.remarks))
