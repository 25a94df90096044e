"""Why an edge is as it is: the steps that made it, and what moves it."""

from notchbook.app.why.explaining_names import Doing, WhySo
from notchbook.app.why.what_moves import Mover
from notchbook.app.why.why_words import deed_words, mover_words, order_words, read_words
from notchbook.recipe import Replay
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.reader import Reader


class WhyStep(Answer):
    """What one step did to it, its order, and the measures that it read."""

    step: str
    title: str
    did: str
    order: str
    reads: tuple[str, ...]


class WhyAnswer(Answer):
    """The history of one thing, the first step first."""

    name: str
    said: str
    length_text: str
    steps: tuple[WhyStep, ...]


class MoverLine(Answer):
    """A number or measure, by how much it was made larger, and how far that moves what is explained."""

    said: str
    larger: str
    moves: str


class MoversAnswer(Answer):
    """What moves it, what moves it most first."""

    name: str
    movers: tuple[MoverLine, ...]


def why_answer(run: Replay, why: WhySo, reader: Reader) -> WhyAnswer:
    """The history in the reader's unit."""
    lengths = [run.pattern.edges[name].length for name in why.lines if name in run.pattern.edges]
    is_run = why.kind in ("edge", "group")
    return WhyAnswer(
        name=why.name,
        said=why.said,
        length_text=reader.text(sum(lengths)) if is_run else "",
        steps=tuple(_step(doing, run, reader) for doing in why.doings),
    )


def movers_answer(why: WhySo, moving: tuple[Mover, ...], reader: Reader) -> MoversAnswer:
    """What moves it, in the reader's unit."""
    words = (mover_words(one, reader.style) for one in moving)
    lines = tuple(MoverLine(said=said, larger=larger, moves=moves) for said, larger, moves in words)
    return MoversAnswer(name=why.name, movers=lines)


def _step(doing: Doing, run: Replay, reader: Reader) -> WhyStep:
    return WhyStep(
        step=doing.record.id,
        title=doing.record.title,
        did=deed_words(doing, reader.style),
        order=order_words(doing, reader.style),
        reads=read_words(doing.reads, reader.style, run.measures.population),
    )
