"""One panel as runs of edges with darts open in them: shapes and words, no names yet.

Runs go counter-clockwise with the center at x = 0 and the side toward +x, starting at the waist center:
waist, side seam, armhole, shoulder, neck, center. A panel to the hip has the hem in place of the waist.
"""

from dataclasses import dataclass

from notchbook.geometry import Path, Point

LEG_ROLES: dict[str, tuple[str, str]] = {
    "waist": ("center", "side"),
    "side_seam": ("lower", "upper"),
    "armhole": ("lower", "upper"),
    "shoulder": ("side", "center"),
    "neck": ("side", "center"),
    "center": ("upper", "lower"),
}
"""What the first and the second leg of a dart are called, by the edge that it opens in."""

_UPWARD = ("below", "above")
_INWARD = ("side", "center")

PART_ROLES: dict[str, dict[int, tuple[str, ...]]] = {
    "waist": {1: ("center", "side"), 2: ("center", "middle", "side")},
    "side_seam": {1: _UPWARD},
    "armhole": {1: _UPWARD},
    "shoulder": {1: _INWARD},
    "neck": {1: _INWARD},
    "center": {1: ("above", "below")},
}
"""What the parts of an edge are called, by the number of darts in it, in the direction of the run."""


@dataclass(frozen=True, slots=True)
class Opening:
    """A dart open in an edge: ``first`` and ``second`` are the ends of its mouth as the run meets them.

    ``dart`` is its word. Both legs are equally long.
    """

    dart: str
    first: Point
    point: Point
    second: Point

    @property
    def leg(self) -> float:
        """The length of each leg, mm."""
        return self.point.distance_to(self.first)

    @property
    def width(self) -> float:
        """The intake at the mouth, straight across, mm."""
        return self.first.distance_to(self.second)


@dataclass(frozen=True)
class Run:
    """One edge of a panel, in parts where darts open in it: ``openings`` lie between the parts."""

    edge: str
    parts: tuple[Path, ...]
    openings: tuple[Opening, ...] = ()

    @property
    def length(self) -> float:
        """The length as sewn, mm."""
        return sum(part.length for part in self.parts)


@dataclass(frozen=True)
class Level:
    """A level line drawn on a panel, in parts where a dart turns the cloth between them."""

    word: str
    parts: tuple[Path, ...]


@dataclass(frozen=True)
class InnerOpening:
    """A dart with two points inside a panel, widest at the waist; both legs are mirror images.

    ``first`` is the end of its mouth toward the center.
    """

    dart: str
    upper: Point
    first: Point
    lower: Point
    second: Point


@dataclass(frozen=True)
class PanelShape:
    """A panel ready for names: its runs counter-clockwise from the waist or hem center, its levels.

    ``marks`` are points inside by their words, such as the bust point of a front.
    """

    which: str
    runs: tuple[Run, ...]
    levels: tuple[Level, ...] = ()
    marks: tuple[tuple[str, Point], ...] = ()
    inner_darts: tuple[InnerOpening, ...] = ()

    def run(self, edge: str) -> Run:
        """The run of an edge; KeyError when the panel has none."""
        return {run.edge: run for run in self.runs}[edge]
