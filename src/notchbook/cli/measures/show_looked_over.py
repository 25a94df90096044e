"""What `notchbook measures check` says, in words and as data."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle

if TYPE_CHECKING:
    from notchbook.app.looking_over.report import LookedRow
    from notchbook.app.looking_over.whole_file import FileLookedOver
    from notchbook.body import LookedOver, MeasureSet

MOST_MEANT = 3
"""A repair of more values than these is told in words."""

MOST_ROWS_SHOWN = 20
"""Bodies that stand on the screen; the report has all of them."""


LEVEL_WORDS = {"check": "look again"}
"""What the screen says for a level; the others are said as they are."""

MOST_UNSEEN = 3
"""Measures that are told of what cannot be seen, unless all are asked for."""


def show_one(
    screen: Screen, measures: "MeasureSet", looked: "LookedOver", style: LengthStyle, *, whole: bool = False
) -> None:
    """One body: each doubt, what would explain it, and what cannot be seen; ``whole``: of all measures."""
    from notchbook.body.doubts.statistic_words import range_words, within_sentence
    from notchbook.body.doubts.unseen import passes_to_one_waist

    screen.line(f"{measures.name}: {len(measures.values)} measures, {_held_words(looked)}")
    for caution in looked.cautions:
        screen.line(f"{caution.text()} {caution.next_step()}  [{caution.code}]")
    for doubt in looked.doubts:
        screen.line()
        screen.line(f"{LEVEL_WORDS.get(doubt.level, doubt.level)}  {doubt.problem.text(style.text)}")
        for suspect in () if doubt.code in _SAYS_THE_RANGE else doubt.suspects:
            screen.line(f"      Most likely: {within_sentence(range_words(suspect, style))}.")
        screen.line(f"      {doubt.problem.next_step(style.text)}  [{doubt.code}]")
    if not looked.doubts:
        screen.line("Nothing stands out.")
    if looked.not_held is not None:
        screen.line()
        screen.line(f"{looked.not_held.text()} {looked.not_held.next_step()}  [{looked.not_held.code}]")
    _show_unseen(screen, looked, style, whole=whole)
    if looked.population and passes_to_one_waist(measures):
        screen.line("Lengths that all go to one wrong waist: about half of such sets pass unnoticed.")


def _show_unseen(screen: Screen, looked: "LookedOver", style: LengthStyle, *, whole: bool) -> None:
    """What passes unnoticed: of bust, waist and hip and then of the others, the worst first."""
    from notchbook.body.doubts.rest_words import listed
    from notchbook.body.doubts.statistic_words import label_of_text_key, within_sentence
    from notchbook.body.doubts.unseen import worst_first

    unseen = [one for one in worst_first(looked.unseen) if one.slip is not None and (whole or one.twice)]
    if not unseen:
        if looked.take_twice:
            told = [within_sentence(label_of_text_key(key)) for key in looked.take_twice]
            screen.line(f"Take twice: {listed(told)}.")
        return
    shown = unseen if whole else unseen[:MOST_UNSEEN]
    screen.line()
    screen.line("What this cannot see: a slip smaller than these passes unnoticed as often as not.")
    slips = [
        (label_of_text_key(one.key), style.text(one.slip or 0.0), "take twice" if one.twice else "")
        for one in shown
    ]
    screen.table(("measure", "slip", ""), slips, numbers=("slip",))
    if len(unseen) > len(shown):
        screen.line(f"and {len(unseen) - len(shown)} more to take twice; --all shows every measure")


_SAYS_THE_RANGE = frozenset(
    {
        "measure-unlike-rest",
        "measure-against-rest",
        "one-of-two-unlike-rest",
        "measure-to-which-waist",
        "measures-hide-each-other",
    }
)
"""Codes whose words give the range that would agree themselves."""


def _held_words(looked: "LookedOver") -> str:
    return f"held against {looked.population_words}" if looked.population_words else "held against nobody"


def one_data(measures: "MeasureSet", looked: "LookedOver", style: LengthStyle) -> dict[str, Any]:
    """One body as data; values in mm, degrees, kg."""
    return {
        "body": measures.name,
        "level": looked.level,
        "population": looked.population,
        "held_against": looked.population_words,
        "not_held": None if looked.not_held is None else looked.not_held.text(),
        "cautions": [caution.text() for caution in looked.cautions],
        "doubts": [
            {
                "level": doubt.level,
                "code": doubt.code,
                "keys": list(doubt.keys),
                "message": doubt.problem.text(style.text),
                "next_step": doubt.problem.next_step(style.text),
                "suspects": [
                    {
                        name: getattr(one, name)
                        for name in ("key", "value", "expected", "low", "high", "z", "share")
                    }
                    for one in doubt.suspects
                ],
                "repairs": [
                    {
                        "slip": one.slip,
                        "question": one.question,
                        "values": dict(one.values),
                        "share": one.share,
                    }
                    for one in doubt.repairs
                ],
            }
            for doubt in looked.doubts
        ],
        "values": [_named(one, *_REACH, "sd") for one in looked.standings],
        "unseen": [
            {"key": one.key, "slip": one.slip, "readings": one.readings, "take_twice": one.twice}
            for one in looked.unseen
        ],
    }


_REACH = ("key", "value", "expected", "low", "high", "z")


def _named(one: object, *names: str) -> dict[str, Any]:
    """These fields of a thing as data."""
    return {name: getattr(one, name) for name in names}


def show_bodies(screen: Screen, done: "FileLookedOver", style: LengthStyle, report: Path | None) -> None:
    """Many bodies: how many of each level, what is off in the whole file, and the worst of them."""
    from notchbook.app.looking_over.report import report_cells
    from notchbook.errors import InputError

    told = ("stop", "check", "fine", *(("not held",) if done.count("not held") else ()), "refused")
    counts = ", ".join(f"{done.count(level)} {LEVEL_WORDS.get(level, level)}" for level in told)
    screen.line(f"{len(done.rows)} bodies: {counts}")
    if done.nobody:
        problem = InputError("held-against-nobody", where="")
        screen.line(f"{done.nobody} of them: {problem.text()} {problem.next_step()}")
    for shift in done.shifts:
        screen.line(f"whole file  {shift.problem.text(style.text)}")
        screen.line(f"            {shift.problem.next_step(style.text)}  [{shift.problem.code}]")
    flagged = sorted((row for row in done.rows if row.level != "fine"), key=_worst_first)
    shown = [report_cells(row) for row in flagged[:MOST_ROWS_SHOWN]]
    if shown:
        columns = ("id", "level", "z", "measure", "unit", "value", "expected", "probably meant")
        picked = [
            (cells[0], LEVEL_WORDS.get(cells[1], cells[1]), *cells[2:7], _meant(row, cells))
            for row, cells in zip(flagged, shown, strict=False)
        ]
        screen.table(columns, picked, numbers=("z", "value", "expected"))
    if len(flagged) > len(shown):
        screen.line(f"and {len(flagged) - len(shown)} more; the report has all of them")
    screen.line(f"{done.seconds:.1f} s")
    if report is not None:
        screen.line(f"written: {report}")


def _meant(row: "LookedRow", cells: Sequence[str]) -> str:
    """What was probably meant; of a whole set in another unit the question alone."""
    many = next((repair for repair in row.repairs if len(repair.values) > MOST_MEANT), None)
    if many:
        return f"all {len(many.values)} lengths: {many.question}"
    return cells[10] or (row.message if row.level in ("refused", "not held") else "")


def _worst_first(row: "LookedRow") -> tuple[int, float]:
    order = ("refused", "stop", "check", "not held", "fine").index(row.level)
    return order, -abs(row.standing.z) if row.standing else 0.0


def bodies_data(done: "FileLookedOver", report: Path | None) -> dict[str, Any]:
    """Many bodies as data: counts, the whole file, and the rows that are not fine."""
    from notchbook.app.looking_over.report import COLUMNS, report_cells

    return {
        "bodies": len(done.rows),
        **{level: done.count(level) for level in ("stop", "check", "fine", "refused")},
        "not_held": done.count("not held"),
        "held_against_nobody": done.nobody,
        "whole_file": [
            {
                "code": shift.problem.code,
                "population": shift.population,
                "keys": list(shift.shift.keys),
                "off": shift.shift.off,
                "message": shift.problem.text(),
            }
            for shift in done.shifts
        ],
        "rows": [
            dict(zip(COLUMNS, report_cells(row), strict=True)) for row in done.rows if row.level != "fine"
        ],
        "seconds": round(done.seconds, 3),
        "files": {} if report is None else {"report": str(report)},
    }
