"""`notchbook compare`: one style against another."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, OtherMeasures, StyleName, UnitChoice, style_path
from notchbook.cli.screen import Screen

if TYPE_CHECKING:
    from notchbook.app.comparing.styles import StyleDifference
    from notchbook.body import Measure


def compare(
    style: StyleName,
    other: Annotated[
        Path,
        typer.Argument(metavar="OTHER.json", help="The style to hold against it.", callback=style_path),
    ],
    measures: OtherMeasures = None,
    unit: UnitChoice = "cm",
    as_json: AsJson = False,
) -> None:
    """Compare two styles: steps, measures, and millimeters per edge.

    Each is run on its own measures, or both on those that are given.

    Example: notchbook compare skirt.json wide.json
    """
    from notchbook.app.comparing.styles import compare_styles
    from notchbook.app.style_file import read_style, run_style
    from notchbook.body import read_measures
    from notchbook.cli.show_style_difference import show_style_difference

    body = None if measures is None else read_measures(measures)
    first, second = (run_style(read_style(path), body) for path in (style, other))
    found = compare_styles(first, second)

    def show(screen: Screen) -> None:
        screen.line(f"{other} against {style}")
        screen.line()
        show_style_difference(screen, found, unit, second.measures.population)

    answer(_data(found), show, as_json=as_json)


def _data(found: "StyleDifference") -> dict[str, Any]:
    from notchbook.cli.show_made import change_data

    return {
        "added": [record.id for record in found.added],
        "removed": [record.id for record in found.removed],
        "reordered": [record.id for record in found.reordered],
        "fields": [
            {"step": one.step, "field": one.path, "before": one.before, "after": one.after}
            for one in found.fields
        ],
        "measures": [
            {"key": one.key, "before": _value(one.before), "after": _value(one.after)}
            for one in found.measures
        ],
        "girths": [change_data(one) for one in found.girths],
        "lengths": [change_data(one) for one in found.lengths],
        "moved": [{"name": one.name, "moved": round(one.moved, 6)} for one in found.moved],
        "gone": list(found.gone),
        "new": list(found.new),
    }


def _value(measure: "Measure | None") -> float | None:
    return None if measure is None else measure.value
