"""Asking for what a draft cannot know: a choice that must be made, and to which waist lengths were taken.

Nobody is asked without a terminal, and no program: then the draft is refused, or says what it took.
"""

import sys
from collections.abc import Sequence
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, cast

import typer

from notchbook.cli.screen import err
from notchbook.errors import InputError, NotchbookError
from notchbook.units import LengthStyle, Unit, length_in_words, parse_stretch

if TYPE_CHECKING:
    from notchbook.app.contradictions import WaistAnswer
    from notchbook.app.draft_order import Drafted, DraftOrder
    from notchbook.app.offered_cure import OfferedCure
    from notchbook.body import MeasureSet
    from notchbook.pattern import Contradiction


def drafted_asking(order: "DraftOrder", unit: Unit, *, as_json: bool) -> "tuple[DraftOrder, Drafted]":
    """The order as it stands after all answers, and what came of it; refused as ``carry_out``.

    An answer that the order brings with it is taken in place of the question about the waist.
    """
    from notchbook.app.contradictions import contradiction_in, contradictions_of
    from notchbook.app.draft_order import carry_out

    may = may_ask(as_json=as_json)
    is_open = may or order.waist is not None
    while True:
        try:
            done = carry_out(order)
        except NotchbookError as error:
            answered = (_with_choice(order, error) or _with_cure(order, error, unit)) if may else None
            if answered is None and is_open:
                is_open = False
                answered = _with_waist(order, [contradiction_in(error)], unit)
            if answered is None or answered == order:
                raise
            order = answered
            continue
        if not is_open:
            return order, done
        is_open = False
        answered = _with_waist(order, contradictions_of(done.run), unit) or order
        if answered.measures == order.measures:
            return answered, done
        order = answered


def may_ask(*, as_json: bool) -> bool:
    """Whether somebody sits at a terminal who can be asked."""
    return not as_json and sys.stdin.isatty() and sys.stdout.isatty()


def asked_number(question: str, answers: Sequence[str]) -> int:
    """The place of the answer that she chose, from 0; asked again until it is one of them."""
    screen = err()
    screen.line(question)
    for number, words in enumerate(answers, start=1):
        screen.line(f"  {number}  {words}")
    while True:
        text = str(typer.prompt("Number", err=True)).strip()
        if text.isascii() and text.isdigit() and 1 <= int(text) <= len(answers):
            return int(text) - 1
        screen.line(f"Type a number from 1 to {len(answers)}.")


def asked_stretch(question: str, answers: Sequence[str], example: str) -> int | str:
    """The place of the class that she chose, from 0, or her own test of the cloth as she typed it."""
    screen = err()
    screen.line(question)
    for number, words in enumerate(answers, start=1):
        screen.line(f"  {number}  {words}")
    while True:
        text = str(typer.prompt(f"Number, or your own test such as {example}", err=True)).strip()
        if text.isascii() and text.isdigit() and 1 <= int(text) <= len(answers):
            return int(text) - 1
        try:
            return parse_stretch(text).text
        except InputError as refused:
            screen.line(f"{refused.text()} {refused.next_step()}")


def _with_choice(order: "DraftOrder", error: NotchbookError) -> "DraftOrder | None":
    """The order with the choice made for which the draft asks; None when it asks for none."""
    from notchbook.app.drafting import asks

    choices = asks(error)
    if not choices:
        return None
    said = error.facts.get("said")
    words = said if isinstance(said, tuple) and len(said) == len(choices) else choices
    setting = str(error.facts["setting"])
    answers, example = [str(word) for word in words], error.facts.get("typed")
    if isinstance(example, str):
        answer = asked_stretch(error.text(), answers, example)
        chosen = answer if isinstance(answer, str) else choices[answer]
    else:
        chosen = choices[asked_number(error.text(), answers)]
    return replace(order, parameters={**order.parameters, setting: chosen})


def _with_cure(order: "DraftOrder", error: NotchbookError, unit: Unit) -> "DraftOrder | None":
    """The order with a cure that she takes; None when none is offered, or she leaves it."""
    offered = cast("tuple[OfferedCure, ...]", error.facts.get("offered", ()))
    if not offered:
        return None
    answers = [*(cure.words(LengthStyle(unit)) for cure in offered), "Leave it"]
    number = asked_number(error.text(partial(length_in_words, style=LengthStyle(unit))), answers)
    return None if number == len(offered) else replace(order, take=(*order.take, offered[number].word))


def _with_waist(
    order: "DraftOrder", told: "Sequence[Contradiction | None]", unit: Unit
) -> "DraftOrder | None":
    """The order with the answer about the waist, on the measures as they then are; None when none is due."""
    from notchbook.app.contradictions import asks_for_waist, with_waist_answer

    due = next((one for one in told if asks_for_waist(one, order.measures)), None)
    if due is None:
        return None
    answer = order.waist or _asked_waist(due, order.measures, unit)
    return replace(order, measures=with_waist_answer(order.measures, due, answer), waist=answer)


def _asked_waist(told: "Contradiction", measures: "MeasureSet", unit: Unit) -> "WaistAnswer":
    from notchbook.app.contradictions import contradiction_in_words
    from notchbook.body.quantity_words import said_key

    words = contradiction_in_words(told, measures, LengthStyle(unit))
    answers: dict[WaistAnswer, str] = {
        "natural": "all to the natural waist, midway between the lowest rib and the top of the hip bone",
        "other": f"{said_key(told.explains, measures.population)} to another waist: draft with "
        f"{words.explains}",
        "navel": "all to the navel",
    }
    number = asked_number(f"{words.line()}\nTo which waist were they taken?", list(answers.values()))
    return list(answers)[number]
