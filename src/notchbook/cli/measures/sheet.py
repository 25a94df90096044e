"""`notchbook measures sheet`: a paper sheet to measure with."""

from pathlib import Path
from typing import Annotated, Literal

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, UnitChoice, garment_word, typed_block
from notchbook.cli.screen import Screen


def sheet(
    file: Annotated[
        Path | None,
        typer.Argument(
            metavar="[FILE]", help="Fill in what was taken of this body or form.", show_default=False
        ),
    ] = None,
    out: Annotated[Path, typer.Option("--out", "-o", metavar="FILE.pdf", help="The sheet.")] = Path(
        "measure-sheet.pdf"
    ),
    paper: Annotated[
        Literal["a4", "letter"], typer.Option("--paper", "-p", help="Paper of the printer.")
    ] = "a4",
    population: Annotated[
        Literal["women", "men"] | None,
        typer.Option(
            "--population",
            help="Whose figure stands on it: that of the file, otherwise women's.",
            show_default=False,
        ),
    ] = None,
    garment: Annotated[
        str,
        typer.Option(
            "--for",
            metavar="BLOCK|STYLE",
            callback=garment_word,
            help="A short sheet: only what this block or style needs and can use.",
            show_default=False,
        ),
    ] = "",
    unit: UnitChoice = "cm",
    as_json: AsJson = False,
) -> None:
    """Print a measure sheet: a figure with numbered tapes, and for each measure a line to write on.

    Example: notchbook measures sheet --out sheet.pdf --paper letter --unit in

    Example: notchbook measures sheet client.json --out client.pdf

    Example: notchbook measures sheet --for skirt --out skirt-sheet.pdf
    """
    from notchbook.body import read_measures
    from notchbook.output.measure_sheet import write_measure_sheet
    from notchbook.units import LengthStyle

    measures = None if file is None else read_measures(file)
    shown = population or (measures and measures.population) or "women"
    keys = _asked(garment) if garment else None
    write_measure_sheet(out, measures, shown, paper, LengthStyle(unit), keys)

    def show(screen: Screen) -> None:
        whose = f" of {measures.name}" if measures else ", blank"
        for_what = f" for {typed_block(garment)}" if garment else ""
        screen.line(f"Measure sheet{for_what}{whose}, figure of {shown}: {out}")

    data = {"file": str(out), "paper": paper, "population": shown, "filled": measures is not None}
    if garment:
        data["for"] = garment
    answer(data, show, as_json=as_json)


def _asked(garment: str) -> tuple[str, ...]:
    """What the garment asks for."""
    from notchbook.app.needs.of_garment import garment_named

    return garment_named(garment).keys
