"""The trims that a style needs beside its cloth: buttons, zips, hooks, buckles and cords, how many, how long
and where they go, counted from the marks and notches of the pattern."""

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping
from typing import Any, Final

from notchbook.app.button_sizes import lignes
from notchbook.app.zip_lengths import ZipKind, bought_zip
from notchbook.body.doubts.child import is_child
from notchbook.finish import HouseTable, production_table
from notchbook.finish.sewing.joints import Joints
from notchbook.finish.sewing.zips import run_on
from notchbook.output.paper_info import PaperTrim
from notchbook.pattern import Operation, Pattern, Piece, spoken
from notchbook.pattern.names import instance_of, last_word
from notchbook.pattern.zip_openings import parts_whole
from notchbook.recipe import Replay
from notchbook.recipe.parameters import read_amount
from notchbook.units import LengthStyle, counted

_ZIP: Final = "zip"
_SELDOM: Final = "few shops keep these: order it"
"""Said of an invisible zip that parts (common practice, from memory)."""

_ONE_SIDE: Final = re.compile(r"wearer's (right|left)\b")
"""Said in the order of work of an opening between the wearer's two sides: one of them has the buttons."""

_HOOKS: Final[Mapping[str, str]] = {
    "hook_and_bar": "hook and bar",
    "hook_and_eye": "hook and eye",
    "press_stud": "press stud",
}
"""The kinds of the step ``hook_and_eye`` as they are bought."""


_Given = Mapping[str, Mapping[str, Any]]
"""The parameters of each step, by its slug."""


def bought_trims(run: Replay, style: LengthStyle, house: HouseTable | None = None) -> tuple[PaperTrim, ...]:
    """Everything that is bought by the piece, in the order of buttons, zips, hooks, buckles and cords.

    Zips are told in the lengths that ``house`` says are sold (None: the table of the program)."""
    given = {record.slug: record.parameters for record in run.recipe.steps}
    return (
        *_buttons(run, given, style),
        *_zips(run.pattern, given, style, house or production_table()),
        *_hooks(run),
        *_buckles(run, style),
        *_cords(run, style),
    )


def _mm(run: Replay, amount: object) -> float:
    return read_amount(str(amount)).evaluate(run.measures.value)


def _buttons(run: Replay, given: _Given, style: LengthStyle) -> Iterator[PaperTrim]:
    """One line for each size of button, with how many go where."""
    sizes: dict[str, list[tuple[int, str]]] = defaultdict(list)
    for piece in run.pattern.pieces.values():
        by_step: dict[str, int] = defaultdict(int)
        for mark in piece.marks:
            if mark.kind == "button":
                by_step[instance_of(mark.name)] += 1
        for slug, count in by_step.items():
            size = given.get(slug, {}).get("button")
            words = "" if size is None else _size_words(_mm(run, size), style)
            sizes[words].append((count * _sewn_in(run.pattern, piece, slug), piece.title.lower()))
    for size, places in sorted(sizes.items()):
        number = counted(sum(count for count, _ in places), "button")
        yield PaperTrim(
            f"{number}, {size}" if size else number,
            ", ".join(f"{count} on the {where}" for count, where in places),
        )


def _size_words(diameter: float, style: LengthStyle) -> str:
    """As buttons are asked for: by their diameter, and in lignes."""
    return f"{style.text(diameter)} ({lignes(diameter)} L)"


def _sewn_in(pattern: Pattern, piece: Piece, slug: str) -> int:
    """In how many panels the buttons of a step are sewn: both of a pair, but one side of an opening."""
    told = (one.text for one in pattern.operations.values() if instance_of(one.name) == slug)
    return 2 if piece.cut == "pair" and not any(map(_ONE_SIDE.search, told)) else 1


def _zips(pattern: Pattern, given: _Given, style: LengthStyle, house: HouseTable) -> Iterator[PaperTrim]:
    """One line for each zip, as long as it is sold for the opening; one that goes on over a waist is one."""
    goes_on = run_on(pattern, Joints(pattern))
    zips = [one for one in pattern.operations.values() if last_word(one.name) == _ZIP]
    for first in zips:
        if first.name in goes_on:
            continue
        parts = [first, *(one for one in zips if goes_on.get(one.name) == first.name)]
        length = sum(_opened(pattern, one) for one in parts)
        is_invisible = given.get(instance_of(first.name), {}).get("setting") == "invisible"
        is_parting = len(parts) == 1 and _parts(pattern, first)
        kind: ZipKind = "parting" if is_parting else "invisible" if is_invisible else "closed"
        bought = bought_zip(kind, length, house.zips, style)
        named = f"{'invisible zip' if is_invisible else _ZIP}{' that parts' if is_parting else ''}"
        where = " and ".join(dict.fromkeys(_place(one) for one in parts))
        seldom = _SELDOM if is_invisible and is_parting else ""
        remark = "; ".join(part for part in (f"in the {where}", bought.advice, seldom) if part)
        yield PaperTrim(f"1 {named}, {style.text(bought.length)} long", remark)


def _parts(pattern: Pattern, zip_line: Operation) -> bool:
    """Whether the edge falls open from end to end."""
    slug = instance_of(zip_line.name)
    stops = (one for one in pattern.notches.values() if "zip" in one.purpose)
    return any(parts_whole(pattern, one.place) for one in stops if instance_of(one.name) == slug)


def _opened(pattern: Pattern, zip_line: Operation) -> float:
    """How far a zip opens, mm as sewn, by the first notch of its step where it stops."""
    slug = instance_of(zip_line.name)
    stops = (one for one in pattern.notches.values() if "zip" in one.purpose)
    return next((one.place.amount for one in stops if instance_of(one.name) == slug), 0.0)


def _place(zip_line: Operation) -> str:
    """The edge with the zip; of a fly, whose line names its own seams and pieces, the step."""
    slug = instance_of(zip_line.name)
    edge = next((name for name in zip_line.at if instance_of(name) != slug), None)
    if edge is None:
        return slug.replace("_", " ")
    *piece, seam = dict.fromkeys(spoken(edge).split(", "))
    return f"{seam} of the {piece[0]}" if piece and piece[0] != seam else seam


def _hooks(run: Replay) -> Iterator[PaperTrim]:
    for record in run.recipe.steps:
        if record.operation == "hook_and_eye":
            titles = (
                piece.title.lower()
                for piece in run.pattern.pieces.values()
                if any(instance_of(mark.name) == record.slug for mark in piece.marks)
            )
            kind = _HOOKS[str(record.parameters.get("kind", "hook_and_bar"))]
            yield PaperTrim(f"1 {kind}", " and ".join(f"on the {title}" for title in dict.fromkeys(titles)))


def _buckles(run: Replay, style: LengthStyle) -> Iterator[PaperTrim]:
    for record in run.recipe.steps:
        if record.operation == "belt":
            width = style.text(_mm(run, record.parameters.get("width", "40 mm")))
            yield PaperTrim("1 buckle", f"for a belt {width} wide")


def _cords(run: Replay, style: LengthStyle) -> Iterator[PaperTrim]:
    for record in run.recipe.steps:
        if record.operation == "hood" and record.parameters.get("drawstring"):
            runs = sum(
                edge.length * (1.0 if piece.cut == "single" else 2.0)
                for piece in run.pattern.pieces.values()
                for edge in piece.outline
                if instance_of(edge.name) == record.slug and last_word(edge.name) == "face"
            )
            caution = (
                "; no cord at a young child's neck, local rules come first" if is_child(run.measures) else ""
            )
            yield PaperTrim("1 cord", f"{style.text(runs)} round the face, and its ends{caution}")
