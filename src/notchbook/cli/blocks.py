"""`notchbook blocks`: what can be drafted."""

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson
from notchbook.cli.screen import Screen


def blocks(as_json: AsJson = False) -> None:
    """List the blocks and the measures that they need.

    Example: notchbook blocks
    """
    from notchbook.app.drafting import blocks as known_blocks
    from notchbook.body import measure_entry

    known = known_blocks()
    fields = {block.operation: block.parameters.model_json_schema()["properties"] for block in known}

    def show(screen: Screen) -> None:
        for block in known:
            screen.line(f"{block.operation}: {block.title}")
            rows = [(key, measure_entry(key).label, "needed") for key in block.needs.needed]
            rows += [(key, measure_entry(key).label, "helps") for key in block.needs.helpful]
            screen.table(("measure", "", ""), rows)
            screen.line()
            settings = [
                (name, str(field.get("default", ""))) for name, field in fields[block.operation].items()
            ]
            screen.table(("--set", "when not set"), settings)
        screen.next_steps((f"notchbook draft {known[0].operation} --measures FILE",))

    data = {
        "blocks": [
            {
                "name": block.operation,
                "title": block.title,
                "needed": list(block.needs.needed),
                "helpful": list(block.needs.helpful),
                "settings": {name: field.get("default") for name, field in fields[block.operation].items()},
            }
            for block in known
        ]
    }
    answer(data, show, as_json=as_json)
