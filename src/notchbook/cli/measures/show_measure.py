"""One measure whole, on the screen."""

from notchbook.body import MeasureEntry, landmark_table, level_table
from notchbook.body.figure import tape_ways
from notchbook.body.quantity_words import quantity_text
from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle, Unit


def show_measure(screen: Screen, entry: MeasureEntry, unit: Unit) -> None:
    """Everything that the table says of the measure, lengths in this unit."""
    screen.line(f"{entry.number}. {entry.label} ({entry.key})")
    screen.line(entry.definition)
    screen.line()
    screen.line(entry.how)
    screen.line()
    for name, words in _facts(entry, LengthStyle(unit)):
        screen.line(f"{name:<10} {words}")
    for name in entry.landmarks:
        screen.line(f"{name}: {landmark_table()[name].definition}")


def _facts(entry: MeasureEntry, style: LengthStyle) -> list[tuple[str, str]]:
    def said(value: float) -> str:
        return quantity_text(entry, value, style)

    facts = [
        ("level", f"{entry.level}: {level_table()[entry.level]}"),
        ("repeat", f"two readings lie within {said(entry.repeat)} (common practice, no source)"),
        ("usual", f"{said(entry.usual[0])} to {said(entry.usual[1])} ({entry.usual_from})"),
        ("possible", f"{said(entry.possible[0])} to {said(entry.possible[1])}"),
    ]
    if entry.twice:
        facts.insert(1, ("read", "twice, the tape off between"))
    if entry.sided:
        facts.append(("sides", f"{entry.key}@left and {entry.key}@right where they differ"))
    if entry.label_men:
        facts.insert(0, ("of men", f"{entry.label_men} (common practice, no source)"))
    if not entry.asked_of_men:
        facts.insert(0, ("of men", "not asked for (common practice, no source)"))
    if not entry.on_form:
        facts.append(("form", "a dress form has none: not asked for, not estimated there"))
    if entry.waist_shift:
        facts.append(
            ("waist", f"changes by {entry.waist_shift:+d} mm for each mm that the waist is tied lower")
        )
    if entry.iso:
        doubt = ", doubtful" if entry.iso_doubtful else ""
        facts.append(("ISO", f"8559-1:2017, {entry.iso} (second-hand{doubt})"))
    views = [way.view for way in tape_ways() if way.key == entry.key]
    facts.append(("figure", ", ".join(views) if views else "not drawn"))
    return facts
