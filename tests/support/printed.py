"""Reads lines back from a PDF by its content streams, knowing nothing of how they were written.

Follows ISO 32000-1: graphics state (q, Q, cm), path construction (m, l, c, h, re), painting (S, s, f, n),
clipping (W), dashes (d), line width (w) and form XObjects (Do). Lengths come out in mm on the page.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from decimal import Decimal
from itertools import pairwise

import pikepdf

MM = 25.4 / 72.0
Pair = tuple[float, float]
Matrix = tuple[float, float, float, float, float, float]
IDENTITY: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


@dataclass
class Stroke:
    """A stroked path: pieces of two (line) or four (cubic) points, dash and width in mm."""

    pieces: list[tuple[Pair, ...]]
    dash: tuple[float, ...]
    width: float
    clip: tuple[float, float, float, float] | None

    def samples(self, step: float = 1.0) -> Iterator[Pair]:
        """Points along the path about ``step`` mm apart, clipped ones left out."""
        for piece in self.pieces:
            (x0, y0), (x1, y1) = piece[0], piece[-1]
            reach = sum(((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5 for (ax, ay), (bx, by) in pairwise(piece))
            count = max(2, int(reach / step) + 1)
            for index in range(count + 1):
                t = index / count
                straight = (x0 + (x1 - x0) * t, y0 + (y1 - y0) * t)
                place = straight if len(piece) == 2 else _bezier(piece, t)
                if self.clip is None or _inside(place, self.clip):
                    yield place

    @property
    def bounds(self) -> tuple[float, float, float, float]:
        """min x, min y, max x, max y of its points, mm."""
        points = [point for piece in self.pieces for point in piece]
        return (
            min(x for x, _ in points),
            min(y for _, y in points),
            max(x for x, _ in points),
            max(y for _, y in points),
        )


@dataclass
class _State:
    matrix: Matrix = IDENTITY
    dash: tuple[float, ...] = ()
    width: float = 1.0
    clip: tuple[float, float, float, float] | None = None


@dataclass
class _Reader:
    strokes: list[Stroke] = field(default_factory=list)
    state: _State = field(default_factory=_State)
    stack: list[_State] = field(default_factory=list)
    path: list[tuple[Pair, ...]] = field(default_factory=list)
    start: Pair = (0.0, 0.0)
    place: Pair = (0.0, 0.0)
    wants_clip: bool = False


def strokes_of(page: pikepdf.Page) -> list[Stroke]:
    """Every stroked path of a page, forms included, in mm from the lower left corner of the page."""
    reader = _Reader()
    _read(reader, page.obj, page.obj.Resources)
    return reader.strokes


def page_size(page: pikepdf.Page, box: str = "/MediaBox") -> tuple[float, float, float, float]:
    """A box of the page in mm."""
    values = [float(value) * MM for value in page.obj[box]]
    return values[0], values[1], values[2], values[3]


def _read(reader: _Reader, source: pikepdf.Object, resources: pikepdf.Object) -> None:
    for step in pikepdf.parse_content_stream(source):
        if isinstance(step, pikepdf.ContentStreamInstruction):
            _act(reader, str(step.operator), list(step.operands), resources)


def _act(reader: _Reader, name: str, operands: list[pikepdf.Object], resources: pikepdf.Object) -> None:
    state = reader.state
    if name == "q":
        reader.stack.append(_State(state.matrix, state.dash, state.width, state.clip))
    elif name == "Q":
        reader.state = reader.stack.pop()
    elif name == "cm":
        state.matrix = _times(_matrix(operands), state.matrix)
    elif name == "w":
        state.width = float(operands[0]) * _scale(state.matrix) * MM
    elif name == "d":
        state.dash = tuple(float(part) * _scale(state.matrix) * MM for part in operands[0])
    elif name == "Do":
        _form(reader, resources.XObject[str(operands[0])], resources)
    elif name in ("W", "W*"):
        reader.wants_clip = True
    elif name in ("S", "s", "f", "n", "b", "B", "f*", "B*"):
        _paint(reader, name)
    else:
        _build(reader, name, [float(part) for part in operands if _is_number(part)])


def _build(reader: _Reader, name: str, numbers: list[float]) -> None:
    def at(index: int) -> Pair:
        return _apply(reader.state.matrix, (numbers[index], numbers[index + 1]))

    if name == "m":
        reader.start = reader.place = at(0)
    elif name == "l":
        reader.path.append((reader.place, at(0)))
        reader.place = at(0)
    elif name == "c":
        reader.path.append((reader.place, at(0), at(2), at(4)))
        reader.place = at(4)
    elif name == "h":
        reader.path.append((reader.place, reader.start))
        reader.place = reader.start
    elif name == "re":
        x, y, width, height = numbers
        corners = [(x, y), (x + width, y), (x + width, y + height), (x, y + height), (x, y)]
        placed = [_apply(reader.state.matrix, corner) for corner in corners]
        reader.path.extend(pairwise(placed))


def _paint(reader: _Reader, name: str) -> None:
    path, reader.path = reader.path, []
    state = reader.state
    if reader.wants_clip:
        reader.wants_clip = False
        state.clip = Stroke(path, (), 0.0, None).bounds
    if name in ("S", "s", "b", "B", "B*") and path:
        reader.strokes.append(Stroke(path, state.dash, state.width, state.clip))


def _form(reader: _Reader, form: pikepdf.Object, resources: pikepdf.Object) -> None:
    if str(form.get("/Subtype")) != "/Form":
        return
    reader.stack.append(_State(**vars(reader.state)))
    if "/Matrix" in form:
        reader.state.matrix = _times(_matrix(list(form.Matrix)), reader.state.matrix)
    _read(reader, form, form.get("/Resources", resources))
    reader.state = reader.stack.pop()


def _is_number(value: object) -> bool:
    return isinstance(value, int | float | Decimal)


def _matrix(operands: list[pikepdf.Object]) -> Matrix:
    a, b, c, d, e, f = (float(part) for part in operands)
    return a, b, c, d, e, f


def _times(first: Matrix, second: Matrix) -> Matrix:
    a, b, c, d, e, f = first
    m, n, o, p, q, r = second
    return a * m + b * o, a * n + b * p, c * m + d * o, c * n + d * p, e * m + f * o + q, e * n + f * p + r


def _apply(matrix: Matrix, point: Pair) -> Pair:
    a, b, c, d, e, f = matrix
    x, y = point
    return (a * x + c * y + e) * MM, (b * x + d * y + f) * MM


def _scale(matrix: Matrix) -> float:
    return float(abs(matrix[0] * matrix[3] - matrix[1] * matrix[2]) ** 0.5)


def _bezier(points: tuple[Pair, ...], t: float) -> Pair:
    s = 1.0 - t
    weights = (s**3, 3 * s * s * t, 3 * s * t * t, t**3)
    return (
        sum(weight * point[0] for weight, point in zip(weights, points, strict=True)),
        sum(weight * point[1] for weight, point in zip(weights, points, strict=True)),
    )


def _inside(place: Pair, box: tuple[float, float, float, float]) -> bool:
    return box[0] <= place[0] <= box[2] and box[1] <= place[1] <= box[3]
