"""The pen: what every drawing needs, so that PDF and SVG are drawn by the same code."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal, Protocol

from notchbook.geometry import Cubic, Path, Point, Transform

MM_PER_POINT = 25.4 / 72.0
"""A point is 1/72 in (PDF, ISO 32000-1)."""

Align = Literal["left", "center", "right"]


@dataclass(frozen=True, slots=True)
class LineStyle:
    """How a line is drawn: ``weight`` in points, ``dash`` in mm (empty: solid), ``gray`` 0 black to 1
    white. Lines are told apart by weight and dash alone, never by color."""

    weight: float
    dash: tuple[float, ...] = ()
    gray: float = 0.0


@dataclass(frozen=True, slots=True)
class Text:
    """Words at a place: ``position`` is the start (middle, end by ``align``) of the base line, mm;
    ``size`` in points; turned by ``degrees``. ``halo`` clears the paper behind the words."""

    words: str
    position: Point
    size: float
    bold: bool = False
    degrees: float = 0.0
    align: Align = "left"
    gray: float = 0.0
    halo: bool = False


class Pen(Protocol):
    """Draws on a sheet in mm, y up."""

    def stroke(self, path: Path, style: LineStyle, name: str = "") -> None:
        """Draw along a path; ``name`` identifies the line where the format can keep it."""

    def fill(self, path: Path, gray: float) -> None:
        """Fill a closed path."""

    def write(self, text: Text) -> None:
        """Write words."""

    def begin_group(self, name: str, motion: Transform) -> None:
        """Begin a group whose content is moved by a rigid motion."""

    def end_group(self) -> None:
        """End the group begun last."""


@contextmanager
def group(pen: Pen, name: str, motion: Transform | None = None) -> Iterator[None]:
    """Everything drawn inside belongs to the group and is moved by the motion."""
    pen.begin_group(name, motion or Transform.identity())
    yield
    pen.end_group()


def rectangle(low: Point, high: Point) -> Path:
    """The closed rectangle between two corners."""
    return Path.polyline((low, Point(high.x, low.y), high, Point(low.x, high.y)), closed=True)


def circle(center: Point, radius: float) -> Path:
    """A circle of four cubics; handles of 0.5523 radii keep it round to 0.03 % (well-known figure)."""
    handle = 0.5522847498 * radius
    east, north = Point(1.0, 0.0), Point(0.0, 1.0)
    arms = (east, north, -east, -north, east)
    return Path(
        tuple(
            Cubic(
                center + a * radius,
                center + a * radius + b * handle,
                center + b * radius + a * handle,
                center + b * radius,
            )
            for a, b in pairwise(arms)
        )
    )
