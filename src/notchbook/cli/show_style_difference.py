"""How one style differs from another, on the screen."""

from notchbook.app.comparing.difference_words import difference_words
from notchbook.app.comparing.styles import StyleDifference
from notchbook.body import PopulationName
from notchbook.cli.screen import Screen
from notchbook.pattern import spoken
from notchbook.units import Unit, format_length


def show_style_difference(
    screen: Screen, found: StyleDifference, unit: Unit, population: PopulationName | None
) -> None:
    """The differing steps, fields and measures line by line; then the millimeters per edge."""
    if found.is_none:
        screen.line("They are the same.")
        return
    for line in difference_words(found, unit, population):
        screen.line(line)
    screen.line()
    moved = {one.name: one.moved for one in found.moved}
    changes = {one.name: one for one in (*found.girths, *found.lengths)}
    rows = []
    for name in dict.fromkeys((*changes, *moved)):
        change = changes.get(name)
        lengths = ("", "", "") if change is None else _lengths(change.before, change.after, unit)
        said = spoken(name) if change is None else change.said
        rows.append((said, *lengths, _fine(moved[name], unit) if name in moved else ""))
    if rows:
        columns = ("what", "before", "after", "longer by", "moved by up to")
        screen.table(columns, rows, numbers=columns[1:])
    for word, names in (("gone", found.gone), ("new", found.new)):
        if names:
            screen.line(f"{word}: {', '.join(map(spoken, names))}")


def _lengths(before: float, after: float, unit: Unit) -> tuple[str, str, str]:
    return _fine(before, unit), _fine(after, unit), _fine(after - before, unit)


def _fine(mm: float, unit: Unit) -> str:
    """To a tenth of a millimeter."""
    return format_length(mm, unit, {"mm": 1, "cm": 2, "in": 3}[unit])
