"""A style against a client, on the screen and as data."""

from collections.abc import Iterable
from typing import Any

from notchbook.app.comparing.measures import StyleComparison, StyleGirth
from notchbook.body import MeasureSet, measure_entry
from notchbook.body.quantity_words import said_key
from notchbook.cli.answer import answer
from notchbook.cli.measures.show_sets import set_data, show_absent, show_differences, show_remarks
from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle, Unit


def answer_style(
    client: MeasureSet, drafted_for: MeasureSet, compared: StyleComparison, unit: Unit, *, as_json: bool
) -> None:
    """A client against a style and the body that it was drafted for."""
    style = LengthStyle(unit)
    remarks = compared.measures.remarks

    def show(screen: Screen) -> None:
        screen.line(f"{compared.style}, drafted for {drafted_for.name}, held against {client.name}")
        screen.line()
        _show_girths(screen, compared.girths, style)
        show_differences(screen, compared.measures, style)
        show_absent(screen, client.name, compared.measures.only_first)
        for girth in compared.too_tight:
            screen.line(_tight_words(girth, style))
        show_remarks(screen, remarks, style)

    data = {
        "kind": "style",
        "style": compared.style,
        "drafted_for": drafted_for.name,
        "client": client.name,
        "girths": [_girth_data(girth) for girth in compared.girths],
        "too_tight": [girth.name for girth in compared.too_tight],
        "measures": set_data(compared.measures),
    }
    answer(data, show, as_json=as_json, to_check=bool(compared.too_tight or remarks))


def _show_girths(screen: Screen, girths: Iterable[StyleGirth], style: LengthStyle) -> None:
    rows = [
        (
            said_key(girth.measure),
            style.text(girth.body),
            "" if girth.client is None else style.text(girth.client),
            "gone" if girth.finished is None else style.text(girth.finished),
            "" if girth.body_ease is None else style.text(girth.body_ease),
            "" if girth.client_ease is None else style.text(girth.client_ease),
            "" if girth.usual is None else " to ".join(style.text(ease) for ease in girth.usual),
        )
        for girth in girths
    ]
    columns = ("girth", "drafted for", "client", "finished", "ease then", "ease on client", "usual ease")
    if rows:
        screen.table(columns, rows, numbers=columns[1:])
        screen.line("Finished: as sewn, along the sew line, darts closed, the opening edge to edge.")
        screen.line()


def _tight_words(girth: StyleGirth, style: LengthStyle) -> str:
    ease = girth.client_ease or 0.0
    smaller = f"{style.text(-ease)} smaller than the client, " if ease < 0.0 else ""
    label = measure_entry(girth.measure).label
    return f"{label}: {smaller}{style.text(girth.short_by)} less than the least usual ease."


def _girth_data(girth: StyleGirth) -> dict[str, Any]:
    return {
        "girth": girth.name,
        "measure": girth.measure,
        "body": _rounded(girth.body),
        "client": _rounded(girth.client),
        "finished": _rounded(girth.finished),
        "wanted_ease": _rounded(girth.wanted_ease),
        "body_ease": _rounded(girth.body_ease),
        "client_ease": _rounded(girth.client_ease),
        "usual_ease": None if girth.usual is None else list(girth.usual),
        "short_by": _rounded(girth.short_by),
    }


def _rounded(value: float | None) -> float | None:
    return None if value is None else round(value, 6)
