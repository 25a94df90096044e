"""The words that several commands take, each with its help."""

from pathlib import Path
from typing import Annotated, Literal

import typer

from notchbook.units import Unit
from notchbook.units.style_number import is_style_number

PaperWord = Literal["a4", "letter", "both"]


def block_word(typed: str | None) -> str | None:
    """The name of a block as it is kept: one of two words may be typed with a hyphen, ``circle-skirt``."""
    return typed and typed.replace("-", "_")


def typed_block(operation: str) -> str:
    """The name of a block as it is typed, ``circle-skirt``; a style as it is."""
    return operation if _is_style(operation) else operation.replace("_", "-")


def garment_word(typed: str) -> str:
    """The name of a block as :func:`block_word` has it; the path of a style file and the number of a style
    of the rack as they were typed."""
    return typed if _is_style(typed) else typed.replace("-", "_")


def _is_style(word: str) -> bool:
    return word.lower().endswith(".json") or is_style_number(word)


BlockName = Annotated[
    str,
    typer.Argument(
        metavar="BLOCK", help="The block to draft; `notchbook blocks` lists them.", callback=block_word
    ),
]

GarmentName = Annotated[
    str,
    typer.Argument(
        metavar="BLOCK|STYLE",
        help="The block to draft (`notchbook blocks` lists them), a style of the rack by its number "
        "(`notchbook rack`), or a style file.",
        callback=garment_word,
    ),
]


def style_path(typed: Path) -> Path:
    """The path as it is; refused (``style-of-rack``) where it is the number of a style of the rack."""
    number = str(typed).upper()
    if typed.suffix or typed.exists() or not _is_style(number):
        return typed
    from notchbook.app.rack.styles import rack
    from notchbook.errors import InputError

    if number in (style.recipe.number for style in rack()):
        raise InputError("style-of-rack", number=number)
    return typed


StyleName = Annotated[
    Path,
    typer.Argument(
        metavar="STYLE.json",
        help="A style file that `notchbook draft` has written.",
        callback=style_path,
    ),
]

MeasuresFile = Annotated[
    Path,
    typer.Option(
        "--measures",
        "-m",
        metavar="FILE",
        help="Measures of a body or dress form, .json or .csv.",
        show_default=False,
    ),
]

OtherMeasures = Annotated[
    Path | None,
    typer.Option(
        "--measures",
        "-m",
        metavar="FILE",
        help="Run the style on these measures instead of its own.",
        show_default=False,
    ),
]

Settings = Annotated[
    list[str] | None,
    typer.Option(
        "--set",
        "-s",
        metavar="NAME=VALUE",
        help="Set an ease, a length or a count of darts; may be repeated.",
        show_default=False,
    ),
]

UnitChoice = Annotated[
    Unit, typer.Option("--unit", "-u", help="Unit of lengths on the screen and of bare numbers in --set.")
]

DateText = Annotated[
    str,
    typer.Option(
        "--date",
        metavar="YYYY-MM-DD",
        help="Date on the papers; today when not given. The same date gives the same files.",
        show_default=False,
    ),
]

RevisionText = Annotated[
    str,
    typer.Option("--revision", metavar="LETTER", help="Revision written on the papers.", show_default=False),
]

HouseFile = Annotated[
    Path | None,
    typer.Option(
        "--house",
        metavar="FILE.toml",
        help="Allowances, hems and marks of your own house; see docs/tasks/house-table.md.",
        show_default=False,
    ),
]

PopulationWord = Literal["women", "men"]

PopulationChoice = Annotated[
    PopulationWord | None,
    typer.Option(
        "--population",
        help="Whose bodies the measures are held against; asked for where the file names none.",
        show_default=False,
    ),
]

FillIn = Annotated[
    bool, typer.Option("--estimate", help="Fill in what is missing by estimates; every paper says so.")
]

PaperChoice = Annotated[
    PaperWord, typer.Option("--paper", "-p", help="Paper of the printer; `both` prints true on either.")
]

DespiteFindings = Annotated[
    bool,
    typer.Option("--despite-findings", help="Write it although a check found what would spoil cloth."),
]

Take = Annotated[
    list[str] | None,
    typer.Option(
        "--take",
        metavar="CODE",
        help="Take a cure that was offered under this code; it then stands in the style. May be repeated.",
        show_default=False,
    ),
]

WaistWord = Annotated[
    Literal["natural", "other", "navel"] | None,
    typer.Option(
        "--waist",
        help="The answer, should the draft ask to which waist lengths were taken: all to the natural waist, "
        "the doubtful one to another waist, or all to the navel.",
        show_default=False,
    ),
]

AsJson = Annotated[bool, typer.Option("--json", help="Answer in JSON, for programs.")]
