"""The preview of an import on the screen."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle, counted

if TYPE_CHECKING:
    from notchbook.body.charts import ChartDoubt
    from notchbook.body.importing import MappedLine, Preview, PreviewRow, PreviewValue, Question

_ROWS: Final = 8
_VALUES: Final = 6
_REASONS: Final = 12

_LAYOUTS: Final = {
    "body_a_row": "one body a row",
    "measure_a_row": "one measure a row",
    "sizes_across": "measures as rows, a column for each set",
    "own_sets": "sets of this program",
}
_DELIMITERS: Final = {"\t": "tabs", ";": "semicolons", ",": "commas", "|": "upright lines", ":": "colons"}


def show_preview(screen: Screen, shown: "Preview", doubts: Sequence["ChartDoubt"] = ()) -> None:
    """What was found, what each column means, the first rows, and what is refused or to be asked.

    ``doubts`` are those about a size chart as a whole.
    """
    _head(screen, shown)
    if shown.mapping.lines:
        _lines(screen, shown)
    _rows(screen, shown)
    _reasons(screen, shown)
    for doubt in doubts:
        screen.line(f"look again: {doubt.problem.text(style_of(shown).text)} [{doubt.code}]")
    if shown.questions:
        screen.line()
        screen.line("To be answered before anything is stored:")
        for question in shown.questions:
            screen.line(f"  {question.words}{_where(question)}")


def next_steps(shown: "Preview", *, has_place: bool, only_good: bool) -> tuple[str, ...]:
    """What stands between the preview and storing it; nothing when all is said."""
    lines = {line.number: line for line in shown.mapping.lines}
    steps = [step for question in shown.questions for step in _answers(question, lines.get(question.number))]
    if sum(question.about == "unit" for question in shown.questions) > 1:
        steps.append("--unit cm (or in, mm) where all columns without a unit have the same")
    if shown.refused and not only_good:
        steps.append("put the refused rows right, or add --only-good")
    if not has_place:
        steps.append("say where it goes: --book FILE, or --out FOLDER")
    return tuple(steps)


def _head(screen: Screen, shown: "Preview") -> None:
    table = shown.table
    words = [_LAYOUTS[table.layout]]
    if table.delimiter in _DELIMITERS:
        words.append(f"cells separated by {_DELIMITERS[table.delimiter]}")
    if table.header_line:
        words.append(f"header in line {table.header_line}")
    screen.line(f"{shown.source or 'the table'}: {', '.join(words)}")
    counts = [f"{shown.good} can be stored", f"{shown.refused} refused"]
    counts += [f"{shown.left_out} left out"] if shown.left_out else []
    counts += (
        [f"{shown.waiting} {'waits' if shown.waiting == 1 else 'wait'} for an answer"]
        if shown.waiting
        else []
    )
    counts += [f"{shown.to_check} to look at again"]
    screen.line(f"{counted(len(shown.rows), 'set')} of kind {shown.mapping.kind}: {', '.join(counts)}")
    if not shown.held:
        screen.line("Too long to be held against its population here: see notchbook measures check.")
    for aside in shown.set_aside:
        place = f"line {aside.number}" if aside.number else "a column"
        screen.line(f"set aside: {place}, “{aside.text}” ({aside.why})")
    screen.line()


def _lines(screen: Screen, shown: "Preview") -> None:
    rows = [
        (line.name, line.target or "left out", line.unit, _why(line), " · ".join(line.samples))
        for line in shown.mapping.lines
    ]
    screen.table((shown.mapping.place, "means", "unit", "why", "such as"), rows)
    screen.line()


def _why(line: "MappedLine") -> str:
    words = "; ".join(part for part in (line.why, line.unit_why) if part)
    return words if line.sure else f"to be asked: {words}"


def _rows(screen: Screen, shown: "Preview") -> None:
    style = style_of(shown)
    rows = [
        (str(row.number), row.name, _values(row.values, style), _state(row)) for row in shown.rows[:_ROWS]
    ]
    screen.table((shown.table.body_place, "name", "measures", ""), rows)
    if len(shown.rows) > _ROWS:
        screen.line(f"... and {len(shown.rows) - _ROWS} more")


def style_of(shown: "Preview") -> LengthStyle:
    """Inches where the table is in inches, else centimeters."""
    units = {line.unit for line in shown.mapping.lines}
    return LengthStyle("in" if "in" in units and "cm" not in units else "cm")


def _values(values: Sequence["PreviewValue"], style: LengthStyle) -> str:
    from notchbook.body import measure_entry, split_key
    from notchbook.body.quantity_words import quantity_text

    words = [
        f"{value.key} {quantity_text(measure_entry(split_key(value.key)[0]), value.value, style)}"
        for value in values[:_VALUES]
    ]
    more = len(values) - len(words)
    return ", ".join(words) + (f" and {more} more" if more else "")


def _state(row: "PreviewRow") -> str:
    if row.state == "good":
        known = f"already in the book as {row.in_book}" if row.in_book else ""
        return known or ("look again" if row.doubts else "good")
    if row.state == "left_out":
        return f"left out, in the book as {row.in_book}" if row.in_book else "left out"
    return "to be asked" if row.state == "asked" else "refused"


def _reasons(screen: Screen, shown: "Preview") -> None:
    """Each refusal and doubt with its place, the first of many."""
    place = shown.table.body_place
    words = []
    for row in shown.rows:
        where = f"{place} {row.number}"
        for refusal in row.refusals:
            cell = f", {refusal.line}" if refusal.line else ""
            said = f"{refusal.message} {refusal.next_step}"
            words.append(f"refused: {where}{cell}: {said} [{refusal.code}]")
        for doubt in row.doubts:
            level = "refused" if row.contradicted and doubt.level == "stop" else "look again"
            words.append(f"{level}: {where}: {doubt.message} [{doubt.code}]")
    if words:
        screen.line()
    for line in words[:_REASONS]:
        screen.line(line)
    if len(words) > _REASONS:
        screen.line(f"... and {len(words) - _REASONS} more; --json has them all")


def _where(question: "Question") -> str:
    if not question.rows or not question.number:
        return ""
    return f" (look at {', '.join(str(row) for row in question.rows)})"


def _answers(question: "Question", line: "MappedLine | None") -> tuple[str, ...]:
    """The words that answer a question, ready to be changed; with the unit where that is open too."""
    if question.about == "again":
        return ("--again skip, or --again add (one row: --row NUMBER=skip, --row NUMBER=add)",)
    if question.about == "row_unit":
        likely = question.options[0]
        more = ["..."] if len(question.rows) > _ROWS else []
        said = " ".join([*(f"--row {number}={likely}" for number in question.rows[:_ROWS]), *more])
        others = ", ".join(question.options[1:])
        return (f"{said}, or another unit in its stead{f' ({others})' if others else ''}, or skip",)
    if question.about == "twice":
        return (f"--skip '{question.line}'",)
    if question.about == "unit":
        meant = f":{question.options[0] if question.options else 'UNIT'}"
    else:
        meant = (question.options[0] if question.options else "MEASURE") + _unit_beside(line)
    return (f"--column '{question.line}={meant}', or --skip '{question.line}'",)


def _unit_beside(line: "MappedLine | None") -> str:
    """The unit behind a measure, where it is to be said as well."""
    if line is None or (line.target and line.unit_sure):
        return ""
    from notchbook.body.importing.unit_words import take_unit

    named = take_unit(line.name)[1].unit
    return "" if named and not line.target else f":{line.unit or 'UNIT'}"
