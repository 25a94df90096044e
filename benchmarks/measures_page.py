"""The page of the survey of measures, from its figures."""

from __future__ import annotations

from typing import Any

from notchbook.body import measure_entry

INTRODUCTION = """<!-- Written by benchmarks/survey_measures.py; run `make survey`. -->
# How well the populations foretell bodies, and which slips they notice

Judged on rows of the survey that neither the populations nor their limits were made from: those of
[data/survey/ansur](../../data/survey/ansur/SOURCE.md) whose number ends in 0. They are soldiers as the
others are: this says nothing about civilians, children or old people. Everything here is held against the
survey's own way of measuring, the waist at the navel. What it means for a patternmaker stands in
[How measures are judged](../how-measures-are-judged.md)."""

SLIP_KEY = """- A record is *flagged* when one of its values reaches the stop limit. *Clean records flagged*
  is the false alarm that was realized on the held-back rows with the limit as shipped; in brackets the
  limits within which the true share lies (95 %).
- *Named*: among the flagged records, how often the worst value is the one that slipped.
- *Look again*: how often the slipped value itself reaches the lower limit. One clean value of a hundred
  does.
- Each slip is planted into every length of every held-back record, both ways, one at a time; weight stands
  beside them without slips. *Swapped digits* count from a change of 3 cm: neighbors among the whole
  centimeters (95 typed as 59), or any neighbors, the tenths too (91.7 typed as 97.1; 93.5 as 95.3 changes
  too little). The second kind holds many slips of 3 to 8 cm, which no rule sees in a bust or a waist.
- *Not noticed* inches: these statistics see no other value than those of the record; the limits of the
  measure table stand beside them in the program and refuse most of these few.
- *Tape noise*: SD 7 mm added to every value, 3.5 mm below 30 cm, judged with the tape of the book's table.
- *Not labeled*: the same records in a file that does not say that the survey took them, so that they are
  held to the definitions of this book, the waist at the navel.
- *Even chance*: the slip that the lower limit sees in half of the cases, for measures as this book takes
  them, at the natural waist, by tape, the other 21 given.
- *What the program says*: the same slips typed to the millimeter and looked over by the program itself,
  with its arithmetic, explanations and offers. *Labeled*: single bodies, every length of 20 of them. *In a
  file without label*: all held-back rows in one file that does not say how they were taken, one slip in
  every row, so that the file must be recognized as well. *Named*: among those looked at or stopped, how
  often the first value named is the one that slipped. *True among the offers*: of the slips for which
  something is offered, how often the true value is among it, to 6 mm.
- *Plain range*: mean ± so many SD for each measure on its own, set to the same rate of false alarms on the
  rows that the populations are made from."""

COVERAGE_KEY = """Share of the held-back values that lie within the interval that was foretold for them.
Values that are differences of others to the mm (standing rise, front crotch length) are left out."""


def page(found: dict[str, Any]) -> str:
    """The report as a page."""
    lines = [INTRODUCTION, ""]
    lines += ["The 22 measures: " + ", ".join(map(_label, found["judged"])) + ".", ""]
    lines += ["The 12 measures: " + ", ".join(map(_label, found["twelve"])) + ".", ""]
    for name, part in found["populations"].items():
        lines += [
            f"## {name.capitalize()}",
            "",
            f"Held against {part['words']}; {part['rows']} rows held back.",
        ]
        stops = ", ".join(f"{limit} with {count}" for count, limit in part["stops"].items())
        lines += [f"Look again from |z| {part['look_again']}, stop from {stops} values.", ""]
        lines += [
            *_coverage(part["coverage"]),
            "",
            *_slips(part["arms"]),
            "",
            *_by_measure(part["arms"], part["blind_spots"]),
            "",
            *_program(part["program"]),
            "",
        ]
    return "\n".join([*lines, "## How to read the slips", "", SLIP_KEY]) + "\n"


def _coverage(found: dict[str, Any]) -> list[str]:
    lines = ["### Intervals", "", COVERAGE_KEY, ""]
    lines += [
        "| measure | SD given 4 | 90 / 95 / 99 % | SD given all | 90 / 95 / 99 % |",
        "|---|--:|--:|--:|--:|",
    ]
    four, others = found["from 4 entries"], found["from all others"]
    lines.append(f"| **all** | | **{_shares(four['overall'])}** | | **{_shares(others['overall'])}** |")
    for key, one in others["by_measure"].items():
        start = four["by_measure"].get(key)
        first = f"{start['sd']} | {_shares(start['inside'])}" if start else " | "
        lines.append(f"| {_label(key)} | {first} | {one['sd']} | {_shares(one['inside'])} |")
    return lines


def _slips(arms: dict[str, Any]) -> list[str]:
    kinds = list(next(iter(arms.values()))["slips"])
    lines = ["### Slips noticed", "", "| measures | clean records flagged | " + " | ".join(kinds) + " |"]
    lines.append("|---|--:|" + "--:|" * len(kinds))
    for words, one in arms.items():
        cells = [_percent(one["slips"][kind]["share"]) for kind in kinds]
        lines.append(f"| {words} | {_with_limits(one['false_alarms'])} | {' | '.join(cells)} |")
    lines += ["", "| 22 measures | noticed | 95 % limits | named | look again |", "|---|--:|--:|--:|--:|"]
    for kind, one in arms["22 measures"]["slips"].items():
        limits = f"{_percent(one['low'])} to {_percent(one['high'])}"
        shares = (_percent(one["share"]), limits, _percent(one["right"]), _percent(one["look_again"]))
        lines.append(f"| {kind} | {' | '.join(shares)} |")
    missed = [f"{_label(key)} {was:.0f} typed as {typed:.0f}" for key, was, typed in _missed(arms)]
    return [
        *lines,
        "",
        f"Inches and centimeters not noticed (22 measures, mm): {', '.join(missed) or 'none'}.",
    ]


def _missed(arms: dict[str, Any]) -> list[list[Any]]:
    """The slips of unit that went by: key, value, what was typed; mm."""
    missed: list[list[Any]] = arms["22 measures"]["slips"]["inch and cm"]["missed"]
    return missed


def _by_measure(arms: dict[str, Any], blind: dict[str, float]) -> list[str]:
    slips, noise = arms["22 measures"]["slips"], arms["22 measures, tape noise"]["slips"]
    plain = arms["plain range, 22 measures"]["slips"]
    kinds = ("swapped digits, whole cm", "swapped digits, tenths too", "10 cm", "5 cm", "2 cm")
    lines = ["### Slips noticed, by measure (22 measures)", ""]
    lines += ["| measure | " + " | ".join(kinds) + " | 5 cm, tape noise | 5 cm, plain range | even chance |"]
    lines += ["|---|" + "--:|" * (len(kinds) + 3)]
    for key in slips["5 cm"]["by_measure"]:
        cells = [_cell(slips[kind], key) for kind in kinds]
        cells += [_cell(noise["5 cm"], key), _cell(plain["5 cm"], key), f"{blind[key] / 10:.1f} cm"]
        lines.append(f"| {_label(key)} | {' | '.join(cells)} |")
    return lines


def _program(found: dict[str, Any]) -> list[str]:
    """What the program itself says, with its offers."""
    lines = ["### What the program says (22 measures)", ""]
    for words, arm in found.items():
        clean = arm["clean"]
        lines += [
            f"{words.capitalize()}: clean bodies {_percent(clean['stop'])} stopped,"
            f" {_percent(clean['check'])} looked at again, {_percent(clean['fine'])} fine.",
            "",
            "| slip | planted | stopped | looked at, or stopped | named | offered | true among the offers |",
            "|---|--:|--:|--:|--:|--:|--:|",
        ]
        for kind, one in arm["slips"].items():
            shares = [_percent(one[what]) for what in ("stopped", "seen", "named", "offered", "right")]
            shares[-1] = shares[-1] if one["offered"] else ""
            lines.append(f"| {kind} | {one['count']} | {' | '.join(shares)} |")
        lines.append("")
    return lines[:-1]


def _cell(one: dict[str, Any], key: str) -> str:
    value = one["by_measure"].get(key)
    return "" if value is None else _percent(value)


def _percent(share: float) -> str:
    if share < 0.995 or share == 1.0:
        return f"{100 * share:.0f} %"
    return f"{min(100 * share, 99.99):.2f} %"


def _with_limits(one: dict[str, float]) -> str:
    return f"{100 * one['share']:.1f} % ({100 * one['low']:.1f} to {100 * one['high']:.1f})"


def _shares(values: list[float]) -> str:
    return " / ".join(f"{100 * value:.1f}" for value in values)


def _label(key: str) -> str:
    return measure_entry(key).label.lower()
