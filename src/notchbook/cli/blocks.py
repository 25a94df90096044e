"""`notchbook blocks`: what can be drafted."""

from dataclasses import asdict
from typing import TYPE_CHECKING, Annotated, Any

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, block_word, typed_block
from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle

if TYPE_CHECKING:
    from notchbook.recipe import StepDefinition, UsualEase


def blocks(
    name: Annotated[
        str,
        typer.Argument(
            metavar="[BLOCK]",
            help="Only this block, with its eases and what it refuses.",
            callback=block_word,
        ),
    ] = "",
    as_json: AsJson = False,
) -> None:
    """List the blocks and the measures that they need.

    Example: notchbook blocks

    Example: notchbook blocks bodice
    """
    from notchbook.app.needs.garment_parameters import block_named
    from notchbook.app.needs.garment_parameters import blocks as all_blocks

    known = (block_named(name),) if name else all_blocks()

    def show(screen: Screen) -> None:
        for block in known:
            _show_block(screen, block)
            if name:
                _show_eases(screen, block)
                _show_refusals(screen, block)
        first = typed_block(known[0].operation)
        screen.next_steps(
            (f"notchbook draft {first} --measures FILE", *([] if name else [f"notchbook blocks {first}"]))
        )

    answer({"blocks": [_block_data(block) for block in known]}, show, as_json=as_json)


def _show_block(screen: Screen, block: "StepDefinition[Any]") -> None:
    screen.line(f"{block.operation}: {block.title}")
    if block.drafted_with:
        screen.line(f"Drafted with: {', '.join(block.drafted_with)}, unless the style has it.")
    screen.table(("measure", "", ""), _measure_rows(block))
    screen.line()
    settings = [(name, "" if value is None else str(value)) for name, value in _settings(block).items()]
    screen.table(("--set", "when not set"), settings)
    screen.line()


def _show_eases(screen: Screen, block: "StepDefinition[Any]") -> None:
    rows = [_ease_cells(row) for row in _eases(block)]
    if rows:
        screen.table(("ease", "", "drafted", "usual", "from"), rows, numbers=("drafted", "usual"))
        screen.line()


def _show_refusals(screen: Screen, block: "StepDefinition[Any]") -> None:
    from notchbook.errors import as_read, entry

    if block.refuses:
        screen.line("Refused:")
        for code in block.refuses:
            screen.line(f"  {as_read(entry(code).message)}  [{code}]")


def _measure_rows(block: "StepDefinition[Any]") -> list[tuple[str, str, str]]:
    from notchbook.body import measure_entry

    return [(key, measure_entry(key).label, standing) for key, standing in block.needs.standings]


def _ease_cells(row: "UsualEase") -> tuple[str, ...]:
    def said(value: float) -> str:
        return LengthStyle("cm").text(value) if row.unit == "mm" else f"{value:g} %"

    usual = "" if row.least is None or row.most is None else f"{said(row.least)} to {said(row.most)}"
    whose = " ".join(word.replace("_", " ") for word in (row.silhouette, row.wearer) if word)
    return (row.of, whose, said(row.drafted), usual, f"{row.source} ({row.grade})")


def _settings(block: "StepDefinition[Any]") -> dict[str, Any]:
    fields = block.parameters.model_json_schema()["properties"]
    return {name: field.get("default") for name, field in fields.items()}


def _eases(block: "StepDefinition[Any]") -> "tuple[UsualEase, ...]":
    return () if block.eases is None else block.eases()


def _block_data(block: "StepDefinition[Any]") -> dict[str, Any]:
    from notchbook.errors import as_read, entry

    return {
        "name": block.operation,
        "title": block.title,
        "drafted_with": list(block.drafted_with),
        "needed": list(block.needs.needed),
        "sometimes": [{"when": one.when, "keys": list(one.keys)} for one in block.needs.sometimes],
        "estimated": list(block.needs.estimated),
        "helpful": list(block.needs.helpful),
        "settings": _settings(block),
        "eases": [asdict(row) for row in _eases(block)],
        "refuses": {code: as_read(entry(code).message) for code in block.refuses},
    }
