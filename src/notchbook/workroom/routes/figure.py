"""The drawn figures."""

from fastapi import APIRouter

from notchbook.body import PopulationName
from notchbook.body.figure import figure
from notchbook.workroom.answers.figure import FigureAnswer, figure_answer

router = APIRouter(prefix="/api/figures")


@router.get("/{population}")
def read_figure(population: PopulationName) -> FigureAnswer:
    """A woman's or a man's figure from the front, the back and the side."""
    return figure_answer(figure(population))
