"""The reference page of the measures: every measure, level and landmark, from their tables."""

from __future__ import annotations

from notchbook.body import (
    POPULATIONS,
    Landmark,
    MeasureEntry,
    landmark_table,
    level_table,
    measure_table,
)
from notchbook.body.figure import figure, figure_svg
from notchbook.units import format_degrees, format_length

INTRODUCTION = """\
The order is the order in which a body is measured: height at the wall, the waist tape tied, girths of the
trunk from the top down, then from behind, from before, from beside for shoulder and arm, the legs, the ways
through the crotch, last sitting down. Definitions and ways are our own words after the standard and common
practice. ISO means a clause of ISO 8559-1:2017; all clauses are second-hand, and nothing confirms those with
a question mark. A value outside its usual range is asked about; outside its possible range it is refused.
"repeat" is how far a second reading may lie from the first (common practice, no source)."""

FIGURES = """\
The numbers on the figures are those of the table. Their heights, breadths and depths follow the means of the
women and the men of the U.S. Army survey ANSUR II (2012), no civilian population: they show where the tape
goes, not what a body should be.

![Women: front, back, side and sitting, with the ways of the tape](figure-women.svg)

![Men: front, back, side and sitting, with the ways of the tape](figure-men.svg)"""


def figure_pictures() -> dict[str, str]:
    """The two drawn figures, path under docs/ -> SVG text."""
    return {f"reference/figure-{name}.svg": figure_svg(figure(name)) for name in POPULATIONS}


def measure_page(head: str) -> str:
    """The whole page."""
    entries = tuple(measure_table().values())
    lines = [head, "# Measures", "", INTRODUCTION, "", FIGURES, ""]
    lines += ["| | measure | name | level | ISO | read |", "|---|---|---|---|---|---|"]
    lines += [_row(entry) for entry in entries]
    for entry in entries:
        lines += _whole(entry)
    lines += ["", "## Levels", ""]
    lines += [f"- **{name}**: {words}" for name, words in level_table().items()]
    lines += ["", "## Landmarks", ""]
    lines += [_landmark(mark) for mark in landmark_table().values()]
    return "\n".join(lines) + "\n"


def _row(entry: MeasureEntry) -> str:
    read = "twice" if entry.twice else "once"
    sides = ", left and right" if entry.sided else ""
    link = f"[{entry.label}](#{entry.label.lower().replace(' ', '-')})"
    return f"| {entry.number} | `{entry.key}` | {link} | {entry.level} | {_clause(entry)} | {read}{sides} |"


def _whole(entry: MeasureEntry) -> list[str]:
    facts = [
        f"- Landmarks: {', '.join(entry.landmarks)}." if entry.landmarks else "",
        f"- Level: {entry.level}. Repeat: {_amount(entry, entry.repeat)}."
        + (" Read twice, the tape off between." if entry.twice else ""),
        f"- Usual: {_range(entry, entry.usual)} ({entry.usual_from}; {entry.usual_grade}).",
        f"- Possible: {_range(entry, entry.possible)} (house judgment; common practice, no source).",
        f"- ISO 8559-1:2017: {_clause(entry)} (second-hand{', doubtful' if entry.iso_doubtful else ''})."
        if entry.iso
        else "",
        f"- For each mm that the waist is tied lower it changes by {entry.waist_shift:+d} mm."
        if entry.waist_shift
        else "",
    ]
    return [
        "",
        f"## {entry.label}",
        "",
        f"`{entry.key}`, number {entry.number}. {entry.definition}",
        "",
        entry.how,
        "",
        *(fact for fact in facts if fact),
    ]


def _clause(entry: MeasureEntry) -> str:
    return "" if entry.iso is None else entry.iso + ("?" if entry.iso_doubtful else "")


def _amount(entry: MeasureEntry, value: float) -> str:
    if entry.is_length:
        return format_length(value, "cm")
    return format_degrees(value) if entry.unit == "deg" else f"{value:g} kg"


def _range(entry: MeasureEntry, ends: tuple[float, float]) -> str:
    return f"{_amount(entry, ends[0])} to {_amount(entry, ends[1])}"


def _landmark(mark: Landmark) -> str:
    standard = f" In the standard: {mark.standard} (from memory)." if mark.standard else ""
    return f"- **{mark.name}**: {mark.definition}{standard}"
