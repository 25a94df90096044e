"""What a drawn figure consists of: views with their lines and with the ways of the tape."""

from dataclasses import dataclass
from typing import Literal

ViewName = Literal["front", "back", "side", "sitting"]
TapeSide = Literal["left", "right", "both", "center"]


@dataclass(frozen=True, slots=True)
class Anchor:
    """Where the middle of a number stands, mm of the drawing, y down."""

    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Tape:
    """The way of the tape of one measure in one view.

    ``number`` is the measure's place in the order of measuring. ``path`` and ``hidden_path`` (what the body
    covers; may be empty) are path data as in SVG, mm of the drawing, y down. ``side`` is the side of the
    wearer on which the line is drawn.
    """

    key: str
    number: int
    path: str
    hidden_path: str
    anchor: Anchor
    side: TapeSide


@dataclass(frozen=True, slots=True)
class View:
    """The figure from one side. Sizes in mm of the drawing, its origin at the upper left, y down.

    ``outline`` and ``details`` are path data: the edge of the body, and soft lines on it; ``levels`` are the
    tied waist tape and the middle and side seam lines.
    """

    name: ViewName
    width: float
    height: float
    outline: tuple[str, ...]
    details: tuple[str, ...]
    levels: tuple[str, ...]
    tapes: tuple[Tape, ...]


@dataclass(frozen=True, slots=True)
class Figure:
    """A body from the front, the back, the side, and sitting; one mm of the drawing is ``scale`` mm of it."""

    population: Literal["women", "men"]
    scale: float
    views: tuple[View, ...]

    def view(self, name: ViewName) -> View:
        """The view with this name."""
        return next(view for view in self.views if view.name == name)

    @property
    def keys(self) -> frozenset[str]:
        """The measures that the figure shows."""
        return frozenset(tape.key for view in self.views for tape in view.tapes)
