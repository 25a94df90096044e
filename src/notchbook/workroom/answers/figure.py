"""The drawn figure beside the sheet, with the way of the tape for each measure."""

from notchbook.body import PopulationName, measure_table
from notchbook.body.figure import Figure, Tape, View
from notchbook.workroom.answers.form import Answer


class FigureTape(Answer):
    """The way of one tape: path data in mm of the drawing, y down; the hidden half may be empty.

    The middle of its number stands at ``x``, ``y``.
    """

    key: str
    number: int
    title: str
    path: str
    hidden_path: str
    x: float
    y: float


class FigureView(Answer):
    """The figure from one side, origin at the upper left."""

    name: str
    width: float
    height: float
    outline: tuple[str, ...]
    details: tuple[str, ...]
    levels: tuple[str, ...]
    tapes: tuple[FigureTape, ...]


class FigureAnswer(Answer):
    """A woman's or a man's figure; its proportions are those of a survey, not of the body in the room."""

    population: PopulationName
    views: tuple[FigureView, ...]


def figure_answer(figure: Figure) -> FigureAnswer:
    """The figure as the page draws it."""
    return FigureAnswer(population=figure.population, views=tuple(_view(view) for view in figure.views))


def _view(view: View) -> FigureView:
    return FigureView(
        name=view.name,
        width=view.width,
        height=view.height,
        outline=view.outline,
        details=view.details,
        levels=view.levels,
        tapes=tuple(_tape(tape) for tape in view.tapes),
    )


def _tape(tape: Tape) -> FigureTape:
    return FigureTape(
        key=tape.key,
        number=tape.number,
        title=measure_table()[tape.key].label,
        path=tape.path,
        hidden_path=tape.hidden_path,
        x=tape.anchor.x,
        y=tape.anchor.y,
    )
