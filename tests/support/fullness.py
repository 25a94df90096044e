"""Steps of fullness for the tests, and a plain rectangle to lay in pleats."""

from typing import Any

from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, EdgeKind, Pattern, Piece
from support.yoke_skirt import FRONT

Step = tuple[str, str, dict[str, Any]]

HEM_UP = {
    "edge": f"{FRONT}/hem",
    "from_point": f"{FRONT}/hem_center",
    "across": f"{FRONT}/waist",
    "across_point": f"{FRONT}/waist_center",
}
WAIST_DOWN = {
    "edge": f"{FRONT}/waist",
    "from_point": f"{FRONT}/waist_center",
    "across": f"{FRONT}/hem",
    "across_point": f"{FRONT}/hem_center",
}
CAP_DOWN = {
    "edge": "sleeve.sleeve/cap_front",
    "from_point": "sleeve.sleeve/underarm_front",
    "across": "sleeve.sleeve/hem",
    "across_point": "sleeve.sleeve/hem_front",
}


def spread_step(**changes: Any) -> Step:
    """The front of the skirt slashed from the hem to the waist."""
    return ("slash_and_spread", "spread", {**HEM_UP, **changes})


def gather_step(**changes: Any) -> Step:
    """The waist of the front gathered, opened at the hem as much."""
    return ("gather_edge", "gathers", {**WAIST_DOWN, **changes})


def pleats_step(**changes: Any) -> Step:
    """Pleats in the waist of the front, down to the hem."""
    return ("pleats", "pleats", {**WAIST_DOWN, **changes})


def rectangle(width: float, height: float) -> Piece:
    """A rectangle ``cloth.panel`` with the edges hem, right, waist and left, its corner at 0, 0."""
    name = "cloth.panel"
    corners = [Point(0.0, 0.0), Point(width, 0.0), Point(width, height), Point(0.0, height)]
    words = ("hem", "right", "waist", "left")
    kinds: tuple[EdgeKind, ...] = ("hem", "seam", "seam", "seam")
    outline = tuple(
        Edge(
            f"{name}/{word}",
            Path.line(corners[index], corners[(index + 1) % 4]),
            f"{name}/before_{word}",
            f"{name}/before_{words[(index + 1) % 4]}",
            kind,
        )
        for index, (word, kind) in enumerate(zip(words, kinds, strict=True))
    )
    return Piece(name, "Panel", outline)


def cloth(width: float, height: float) -> Pattern:
    """A pattern of the rectangle alone."""
    return Pattern().with_pieces(rectangle(width, height))
