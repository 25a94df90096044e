"""`notchbook measures list`: what can be measured."""

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson
from notchbook.cli.screen import Screen


def list_measures(as_json: AsJson = False) -> None:
    """List the measures in the order in which a body is measured, each with its definition.

    Example: notchbook measures list
    """
    from notchbook.body import measure_table

    entries = tuple(measure_table().values())

    def show(screen: Screen) -> None:
        screen.table(
            ("measure", "name", "how"), [(entry.key, entry.label, entry.definition) for entry in entries]
        )

    data = {
        "measures": [
            {
                "key": entry.key,
                "label": entry.label,
                "definition": entry.definition,
                "kind": entry.kind,
                "unit": entry.unit,
                "sided": entry.sided,
            }
            for entry in entries
        ]
    }
    answer(data, show, as_json=as_json)
