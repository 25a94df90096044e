"""`notchbook make-it-measure`: which number of a step makes something come out as wished."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson, OtherMeasures, StyleName, UnitChoice
from notchbook.cli.screen import Screen
from notchbook.errors import InputError

if TYPE_CHECKING:
    from notchbook.recipe import Replay
    from notchbook.recipe.targets import Made, Order
    from notchbook.units import Unit

Wishes = Annotated[
    list[str] | None,
    typer.Argument(
        metavar="WISH",
        help='What is to measure how much, such as "around hem = 160 cm"; several are solved together.',
        show_default=False,
    ),
]

By = Annotated[
    list[str] | None,
    typer.Option(
        "--by",
        metavar="NUMBER",
        help="The number that may move, such as skirt.flare; one for each wish, in their order.",
        show_default=False,
    ),
]

Sizes = Annotated[
    str | None,
    typer.Option(
        "--sizes",
        metavar="CHART",
        help="Solve anew for every size of a chart, and say what each needs; nothing is written.",
        show_default=False,
    ),
]


def make_it_measure(
    style: StyleName,
    wishes: Wishes = None,
    by: By = None,
    again: Annotated[bool, typer.Option("--again", help="Solve every kept wish of the style anew.")] = False,
    hold: Annotated[
        bool, typer.Option("--hold", help="Hold the kept wishes too: their numbers may move with it.")
    ] = False,
    let_go: Annotated[
        str | None,
        typer.Option(
            "--let-go", metavar="NUMBER", help="Let the wish of this number go.", show_default=False
        ),
    ] = None,
    sizes: Sizes = None,
    measures: OtherMeasures = None,
    out: Annotated[
        Path | None,
        typer.Option(
            "--out", "-o", metavar="STYLE.json", help="Write the style with the number.", show_default=False
        ),
    ] = None,
    unit: UnitChoice = "cm",
    as_json: AsJson = False,
) -> None:
    """Make something measure what is wished, by a number of a step.

    Without --by it lists the numbers that could move, and ends with 1 where none gives it. What else would
    move is said; nothing is written without --out. A wish names a length, a whole round, the ease or misfit
    of a seam, a finished girth, a level or a distance:

    "length skirt.front/side_seam = 58 cm"; "around hem = 160 cm"; "ease front_armhole, back_armhole = 12
    mm"; "misfit side_seam = 0"; "finished waist = 74 cm"; "level hip_line below 10 cm = 104 cm"; "distance
    skirt.front/waist_side to skirt.front/hem_side down = 60 cm".

    Example: notchbook make-it-measure skirt.json "around hem = 160 cm" --by flare --out wide.json

    Example: notchbook make-it-measure wide.json --again --measures marta.csv --out marta.json
    """
    from notchbook.app.style_file import read_style, run_style
    from notchbook.app.wishes.making_it_measure import orders_for
    from notchbook.body import read_measures
    from notchbook.cli.progress import progress_of_drafts
    from notchbook.recipe import targets

    body = None if measures is None else read_measures(measures)
    run = run_style(read_style(style), body)
    asked, named = tuple(wishes or ()), tuple(by or ())
    _refuse_unclear(asked, named, again=again or let_go is not None)
    read = tuple(path for path in (style, measures) if path is not None)
    if let_go is not None:
        _let_go(run, let_go, out, read, as_json=as_json)
    if sizes is not None:
        orders = () if again else orders_for(run, _pairs(asked, named), unit)
        _by_size(run, orders, sizes, unit, as_json=as_json)
    if asked and not named:
        _list(run, asked[0], unit, style, as_json=as_json)
    orders = () if again else orders_for(run, _pairs(asked, named), unit, hold=hold)
    with progress_of_drafts() as tell:
        made = targets.solve_again(run, tell) if again else targets.make_it_measure(run, orders, tell=tell)
    _show(made, unit, out, read, as_json=as_json)


def _refuse_unclear(wishes: tuple[str, ...], by: tuple[str, ...], *, again: bool) -> None:
    """Refuse words that say nothing, or not which number goes with which wish."""
    if again and (wishes or by):
        raise InputError("solve-again-alone")
    if not again and not wishes:
        raise InputError("wish-missing")
    if by and len(by) != len(wishes):
        raise InputError("wishes-and-numbers", wishes=len(wishes), numbers=len(by))
    if len(wishes) > 1 and not by:
        raise InputError("wishes-and-numbers", wishes=len(wishes), numbers=0)


def _pairs(wishes: tuple[str, ...], by: tuple[str, ...]) -> list[tuple[str, str]]:
    if len(wishes) != len(by):
        raise InputError("wishes-and-numbers", wishes=len(wishes), numbers=len(by))
    return list(zip(wishes, by, strict=True))


def _let_go(run: "Replay", word: str, out: Path | None, read: tuple[Path, ...], *, as_json: bool) -> None:
    from notchbook.app.staging import refuse_over_input
    from notchbook.app.style_file import write_style
    from notchbook.cli.show_pattern import file_data, show_files
    from notchbook.recipe import replay, targets

    number = targets.number_named(run.recipe, word)
    recipe = targets.without_target(run.recipe, number)
    if out is not None:
        refuse_over_input(out, read)
        write_style(replay(recipe, run.measures, run), out)
    files = {} if out is None else {"json": out}

    def show(screen: Screen) -> None:
        screen.line(f"{number.said} stands without a wish.")
        show_files(screen, files)

    answer({"let_go": number.word, "files": file_data(files)}, show, as_json=as_json)


def _list(run: "Replay", text: str, unit: "Unit", style: Path, *, as_json: bool) -> None:
    from notchbook.app.wishes.making_it_measure import candidates
    from notchbook.cli.progress import progress_of_numbers
    from notchbook.cli.show_made import candidate_data, holds, show_candidates
    from notchbook.recipe.targets import read_wish

    wish = read_wish(text, run, unit)
    with progress_of_numbers() as tell:
        found = candidates(run, wish, tell)
    data = {"wish": wish.text, "candidates": candidate_data(found)}
    answer(
        data,
        lambda screen: show_candidates(screen, run, wish, found, unit, style),
        as_json=as_json,
        to_check=not holds(run, wish) and all(one.made is None for one in found),
    )


def _by_size(run: "Replay", orders: "tuple[Order, ...]", word: str, unit: "Unit", *, as_json: bool) -> None:
    from notchbook.app.comparing.measures import read_chart_named
    from notchbook.app.wishes.solved_by_size import solved_by_size
    from notchbook.cli.show_made import show_sizes, size_data

    chart = read_chart_named(word)
    solved = solved_by_size(run.recipe, [chart.size(label) for label in chart.labels], orders)
    refused = any(one.refusal is not None for one in solved)
    data = {"chart": word, "sizes": size_data(solved)}
    answer(data, lambda screen: show_sizes(screen, solved, unit), as_json=as_json, to_check=refused)


def _show(made: "Made", unit: "Unit", out: Path | None, read: tuple[Path, ...], *, as_json: bool) -> None:
    from notchbook.app.staging import refuse_over_input
    from notchbook.app.style_file import write_style
    from notchbook.app.wishes.making_it_measure import consequences
    from notchbook.cli.show_made import made_data, show_made
    from notchbook.cli.show_pattern import file_data, show_files

    effects = consequences(made)
    if out is not None:
        refuse_over_input(out, read)
        write_style(made.after, out)
    files = {} if out is None else {"json": out}

    def show(screen: Screen) -> None:
        show_made(screen, made, effects, unit)
        show_files(screen, files)
        if out is None:
            screen.next_steps(("Nothing is written yet: add --out STYLE.json.",))

    data = {**made_data(made, effects), "files": file_data(files)}
    turned = bool(effects.new_findings or effects.broken)
    answer(data, show, as_json=as_json, to_check=turned)
