"""The preview of an import on the screen."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle

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
    steps = [_answer(question) for question in shown.questions]
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
    screen.line(
        f"{len(shown.rows)} sets of kind {shown.mapping.kind}: {shown.good} can be stored, "
        f"{shown.refused} refused, {shown.to_check} to look at again"
    )
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
    if not row.good:
        return "refused"
    return "look again" if row.doubts else "good"


def _reasons(screen: Screen, shown: "Preview") -> None:
    """Each refusal and doubt with its place, the first of many."""
    place = shown.table.body_place
    words = []
    for row in shown.rows:
        where = f"{place} {row.number}"
        for refusal in row.refusals:
            cell = f", {refusal.line}" if refusal.line else ""
            words.append(f"refused: {where}{cell}: {refusal.message} [{refusal.code}]")
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
    if not question.rows:
        return ""
    return f" (look at {', '.join(str(row) for row in question.rows)})"


def _answer(question: "Question") -> str:
    """The words that answer a question, ready to be changed."""
    if question.about == "twice":
        return f"--skip '{question.line}'"
    if question.about == "unit":
        unit = question.options[0] if question.options else "UNIT"
        return f"--column '{question.line}=:{unit}', or --skip '{question.line}'"
    target = question.options[0] if question.options else "MEASURE"
    return f"--column '{question.line}={target}', or --skip '{question.line}'"
