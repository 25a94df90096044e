"""The history of an edge on the screen."""

from collections.abc import Sequence
from textwrap import fill

from notchbook.app.why.explaining_names import WhySo
from notchbook.app.why.what_moves import Mover
from notchbook.app.why.why_words import deed_words, mover_words, order_words, read_words
from notchbook.cli.screen import Screen
from notchbook.recipe import Replay
from notchbook.units import LengthStyle, Unit


def show_why_so(screen: Screen, run: Replay, why: WhySo, moving: Sequence[Mover], unit: Unit) -> None:
    """Step by step what made it, with the measures that were read; then what moves it now."""
    style = LengthStyle(unit)
    lines = [run.pattern.edges[name] for name in why.lines if name in run.pattern.edges]
    length = f", {style.text(sum(edge.length for edge in lines))}" if why.kind in ("edge", "group") else ""
    screen.line(f"{why.said}{length}  ({why.name})")
    screen.line()
    for number, doing in enumerate(why.doings, start=1):
        screen.line(f"{number}. {doing.record.title}: {deed_words(doing, style)}  [{doing.record.id}]")
        screen.line(f"   {order_words(doing, style)}")
        for read in read_words(doing.reads, style, run.measures.population):
            screen.line(
                fill(read, 100, initial_indent="   ", subsequent_indent="     ", break_long_words=False)
            )
    screen.line()
    if not moving:
        screen.line("No number and no measure of these steps moves it.")
        return
    columns = ("what moves it", "larger by", "moves it by up to")
    screen.table(columns, [mover_words(one, style) for one in moving], numbers=columns[1:])
