"""What was made to measure, and by which number: on the screen and as data."""

from collections.abc import Sequence
from pathlib import Path
from typing import Any

from notchbook.app.amount_words import number_in_words
from notchbook.app.comparing.length_changes import LengthChange
from notchbook.app.finding_words import in_words, message_in
from notchbook.app.wishes.making_it_measure import Candidate, Consequences
from notchbook.app.wishes.solved_by_size import SizeSolved
from notchbook.app.wishes.target_findings import number_said
from notchbook.cli.screen import Screen
from notchbook.cli.show_pattern import command
from notchbook.pattern import Severity
from notchbook.recipe import Replay
from notchbook.recipe.targets import KeptTarget, Made, StepNumber, Wish, measured
from notchbook.recipe.targets.refusing import EXACT
from notchbook.units import LengthStyle, Unit, format_length

_MOST_EDGES = 8
"""Edges that are told one by one; the rest is counted."""


def show_made(screen: Screen, made: Made, effects: Consequences, unit: Unit) -> None:
    """Each number as it is and as it would be, what it gives, and what else changes."""
    screen.line(f"{made.after.recipe.name} for {made.after.measures.name}")
    screen.line()
    columns = ("wish", "number", "now", "becomes", "measures")
    screen.table(columns, _rows(made, unit), numbers=columns[2:])
    screen.line()
    _show_changes(screen, "Also changes", (*effects.girths, *effects.edges), unit)
    for broken in effects.broken:
        screen.line(f"look {_broken_words(broken, unit)}  [target-no-longer-holds]")
    style = LengthStyle(unit)
    for finding in effects.new_findings:
        grade = "STOP" if finding.severity is Severity.STOP else "look"
        screen.line(f"{grade} new to check: {message_in(finding, style)}  [{finding.code}]")
    for finding in effects.gone_findings:
        screen.line(f"     no more to check: {message_in(finding, style)}  [{finding.code}]")


def _rows(made: Made, unit: Unit) -> list[tuple[str, ...]]:
    return [
        (
            order.wish.said,
            number.said,
            number_in_words(_stored_before(made, number), unit),
            number_in_words(number.stored, unit),
            _fine(value, unit),
        )
        for order, number, value in zip(made.orders, made.numbers, made.measured, strict=True)
    ]


def _stored_before(made: Made, number: StepNumber) -> object:
    return next(order.number.stored for order in made.orders if order.number.word == number.word)


def _show_changes(screen: Screen, title: str, changes: Sequence[LengthChange], unit: Unit) -> None:
    if not changes:
        screen.line("No other girth and no other edge changes in length.")
        return
    rows = [
        (one.said, _fine(one.before, unit), _fine(one.after, unit), _signed(one.by, unit))
        for one in changes[:_MOST_EDGES]
    ]
    columns = (title.lower(), "before", "after", "by")
    screen.table(columns, rows, numbers=columns[1:])
    if len(changes) > _MOST_EDGES:
        screen.line(f"and {len(changes) - _MOST_EDGES} more.")
    screen.line()


def _broken_words(one: KeptTarget, unit: Unit) -> str:
    said = one.target.wish if one.wish is None else one.wish.said
    now = "cannot be measured any more" if one.found is None else f"would measure {_fine(one.found, unit)}"
    return f"{number_said(one)} was made to give {_fine(one.wanted, unit)} ({said}) and {now}; add --hold."


def holds(run: Replay, wish: Wish) -> bool:
    """Whether it measures already what is wished."""
    return abs(measured(run, wish.quantity) - wish.wanted(run.measures)) <= EXACT


def show_candidates(
    screen: Screen, run: Replay, wish: Wish, found: Sequence[Candidate], unit: Unit, style: Path
) -> None:
    """The numbers that could give it, the least stirring first."""
    here = measured(run, wish.quantity)
    wanted = wish.wanted(run.measures)
    screen.line(f"{wish.said}: {_fine(here, unit)} now, {_fine(wanted, unit)} wished.")
    screen.line()
    able = [one for one in found if one.made is not None]
    rows = [
        (
            one.number.word,
            number_in_words(one.number.stored, unit),
            number_in_words(one.made.numbers[0].stored, unit),
            _fine(one.stirs, unit),
        )
        for one in able
        if one.made is not None
    ]
    if rows:
        columns = ("number", "now", "would become", "other edges change by")
        screen.table(columns, rows, numbers=columns[1:])
    elif holds(run, wish):
        screen.line("It measures that already, and no number of this style moves it.")
    else:
        screen.line("No number of this style gives it.")
    for one in found:
        if one.refusal is not None:
            screen.line(f"no   {one.refusal.text(in_words(LengthStyle(unit)))}  [{one.refusal.code}]")
    if able:
        rest = f'"{wish.text}" --by {able[0].number.word}'
        screen.next_steps((command("make-it-measure", style, rest, unit=unit),))


def show_sizes(screen: Screen, solved: Sequence[SizeSolved], unit: Unit) -> None:
    """What each size needs; under the table why a size has none."""
    done = [(one.name, one.made) for one in solved if one.made is not None]
    if done:
        numbers = [number.said for number in done[0][1].numbers]
        rows = [
            (name, *(number_in_words(number.stored, unit) for number in made.numbers)) for name, made in done
        ]
        screen.table(("size", *numbers), rows, numbers=numbers)
    for one in solved:
        if one.refusal is not None:
            screen.line(
                f"no   {one.name}: {one.refusal.text(in_words(LengthStyle(unit)))}  [{one.refusal.code}]"
            )


def made_data(made: Made, effects: Consequences) -> dict[str, Any]:
    """What was solved and what else changes, as data; lengths in mm."""
    return {
        "style": made.after.recipe.name,
        "body": made.after.measures.name,
        "solved": solved_data(made),
        "girths": [change_data(one) for one in effects.girths],
        "edges": [change_data(one) for one in effects.edges],
        "broken": [{"number": number_said(one), "wish": one.target.wish} for one in effects.broken],
        "new_findings": [one.code for one in effects.new_findings],
        "gone_findings": [one.code for one in effects.gone_findings],
    }


def solved_data(made: Made) -> list[dict[str, Any]]:
    """Each wish with its number before and after; lengths in mm."""
    return [
        {
            "wish": order.wish.text,
            "number": number.word,
            "before": _stored_before(made, number),
            "after": number.stored,
            "measured": round(value, 6),
            "wanted": round(wanted, 6),
        }
        for order, number, value, wanted in zip(
            made.orders, made.numbers, made.measured, made.wanted, strict=True
        )
    ]


def change_data(one: LengthChange) -> dict[str, Any]:
    """One length before and after, mm."""
    return {"name": one.name, "before": round(one.before, 6), "after": round(one.after, 6)}


def candidate_data(found: Sequence[Candidate]) -> list[dict[str, Any]]:
    """The numbers that could move, the least stirring first."""
    return [
        {
            "number": one.number.word,
            "now": one.number.stored,
            "becomes": None if one.made is None else one.made.numbers[0].stored,
            "stirs": round(one.stirs, 6),
            "refused": None if one.refusal is None else one.refusal.code,
        }
        for one in found
    ]


def size_data(solved: Sequence[SizeSolved]) -> list[dict[str, Any]]:
    """What each size needs."""
    return [
        {
            "size": one.name,
            "solved": [] if one.made is None else solved_data(one.made),
            "refused": None if one.refusal is None else one.refusal.code,
        }
        for one in solved
    ]


def _fine(mm: float, unit: Unit) -> str:
    """A length fine enough to show what was solved: to a tenth of a millimeter."""
    return format_length(mm, unit, {"mm": 1, "cm": 2, "in": 3}[unit])


def _signed(mm: float, unit: Unit) -> str:
    text = _fine(mm, unit)
    return text if text.startswith("-") else f"+{text}"
