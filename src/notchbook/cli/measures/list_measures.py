"""`notchbook measures list`: what can be measured, and how."""

from typing import TYPE_CHECKING, Annotated, Any

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, UnitChoice
from notchbook.cli.screen import Screen

if TYPE_CHECKING:
    from notchbook.body import MeasureEntry

_KIND_WORDS = {"mm": "length", "deg": "degrees", "kg": "kg"}


def list_measures(
    key: Annotated[
        str, typer.Argument(metavar="[MEASURE]", help="Show this one whole.", show_default=False)
    ] = "",
    unit: UnitChoice = "cm",
    as_json: AsJson = False,
) -> None:
    """List the measures in the order in which a body is measured, or show one whole.

    Example: notchbook measures list

    Example: notchbook measures list hip_depth
    """
    from notchbook.body import measure_entry, measure_table

    if key:
        from notchbook.cli.measures.show_measure import show_measure

        entry = measure_entry(key)
        answer({"measure": _data(entry)}, lambda screen: show_measure(screen, entry, unit), as_json=as_json)
    entries = tuple(measure_table().values())
    data = {"measures": [_data(entry) for entry in entries]}
    answer(data, lambda screen: _show_all(screen, entries), as_json=as_json)


def _show_all(screen: Screen, entries: "tuple[MeasureEntry, ...]") -> None:
    rows = [
        (str(entry.number), entry.key, entry.level, _KIND_WORDS[entry.unit], _clause(entry), entry.short_how)
        for entry in entries
    ]
    screen.table(("", "measure", "level", "unit", "ISO", "how"), rows, numbers=("",))
    screen.next_steps(
        (
            "notchbook measures list hip_depth   shows one whole",
            "notchbook measures sheet --out sheet.pdf   prints them beside a figure",
        )
    )


def _clause(entry: "MeasureEntry") -> str:
    return "" if entry.iso is None else entry.iso + ("?" if entry.iso_doubtful else "")


def _data(entry: "MeasureEntry") -> dict[str, Any]:
    return {
        "key": entry.key,
        "number": entry.number,
        "label": entry.label,
        "label_men": entry.label_for("men"),
        "asked_of_men": entry.asked_of_men,
        "on_form": entry.on_form,
        "definition": entry.definition,
        "how": entry.how,
        "level": entry.level,
        "landmarks": list(entry.landmarks),
        "kind": entry.kind,
        "unit": entry.unit,
        "sided": entry.sided,
        "twice": entry.twice,
        "repeat": entry.repeat,
        "usual": list(entry.usual),
        "possible": list(entry.possible),
        "iso": entry.iso,
        "iso_doubtful": entry.iso_doubtful,
    }
