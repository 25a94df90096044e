"""The lines of half a collar stand: its neck edge, what is added for a button, its end, its upper edge."""

from dataclasses import dataclass
from typing import Literal

from notchbook.errors import GeometryError, StepRefused
from notchbook.geometry import Path, curve_between, offset
from notchbook.style.collars.curves import bent_edge
from notchbook.style.collars.pieces import Side
from notchbook.units import TOLERANCES

StandFront = Literal["round", "square"]

_ROUNDED = 0.8
"""Share of the height over which a stand without an overlap is rounded. Own judgment."""

STRAIGHT = 0.6
"""Share of the back neck along which a collar stays straight. Own judgment."""


@dataclass(frozen=True, slots=True)
class StandGiven:
    """What a stand is drawn from, mm: the ``neck`` that it is sewn to, of which ``straight`` mm stay so; its
    ``height``, the ``bend`` toward its front end in degrees, how far it goes on ``beyond`` the sewn neck and
    how far in all beyond the center front (``overlap``).
    """

    neck: float
    straight: float
    height: float
    bend: float
    front: StandFront
    beyond: float
    overlap: float


@dataclass(frozen=True, slots=True)
class StandLines:
    """Half a stand, counter-clockwise; ``beyond`` and ``upper_overlap`` may be missing. ``top`` mm of the
    upper edge lie between the two centers, ``overlap`` mm of the stand before the center at its end."""

    neck: Path
    beyond: Path | None
    end: Path
    upper_overlap: Path | None
    upper: Path
    center: Path
    top: float
    overlap: float

    @property
    def is_buttoned(self) -> bool:
        """Whether it laps at its end, so that a button closes it."""
        return self.overlap > TOLERANCES.closure


def stand_lines(given: StandGiven) -> StandLines:
    """The lines; StepRefused ``collar-crosses`` where the stand is too high for its curve or its end."""
    try:
        return _drawn(given)
    except GeometryError as error:
        raise StepRefused("collar-crosses", width=given.height) from error


def _drawn(given: StandGiven) -> StandLines:
    whole = bent_edge(given.neck, given.straight, given.bend)
    if given.beyond > TOLERANCES.closure:
        ahead = whole.tangent_at(whole.length)
        whole = whole.joined(Path.line(whole.end, whole.end + ahead * given.beyond))
    top = offset(whole, given.height)
    neck, beyond = whole, None
    if given.beyond > TOLERANCES.closure:
        neck, beyond = whole.split_at(given.neck)
    center_top = top.nearest(whole.point_at(whole.length - given.overlap)).distance_along
    ends = center_top, given.overlap
    if given.front == "round":
        stop = center_top if given.overlap > TOLERANCES.closure else top.length - _ROUNDED * given.height
        upper = top.between(0.0, stop)
        square = whole.tangent_at(whole.length).perpendicular().direction()
        back = (-upper.tangent_at(upper.length)).direction()
        end = Path.of(curve_between(whole.end, square, upper.end, back))
        return _lines((neck, beyond, end, None, upper), ends)
    end = Path.line(whole.end, top.end)
    if given.overlap > TOLERANCES.closure:
        upper, rest = top.split_at(center_top)
        return _lines((neck, beyond, end, rest.reversed(), upper), ends)
    return _lines((neck, beyond, end, None, top), ends)


_Drawn = tuple[Path, Path | None, Path, Path | None, Path]


def _lines(drawn: _Drawn, ends: tuple[float, float]) -> StandLines:
    """The lines with the center; the upper edge is given from the center on. ``ends``: how much of it lies
    between the centers, and the overlap, mm."""
    neck, beyond, end, rest, upper = drawn
    center = Path.line(upper.start, neck.start)
    return StandLines(neck, beyond, end, rest, upper.reversed(), center, *ends)


def stand_sides(lines: StandLines, center: str = "center_back") -> tuple[Side, ...]:
    """The sides of the piece, from the center on the fold."""
    sides = [Side("neck_edge", lines.neck, "seam", "nape" if center == "center_back" else "neck_pit")]
    if lines.beyond is not None:
        sides.append(Side("overlap", lines.beyond, "seam", "neck_end"))
    sides.append(Side("end", lines.end, "seam", "neck_end" if lines.beyond is None else "overlap_end"))
    if lines.upper_overlap is not None:
        sides.append(Side("upper_overlap", lines.upper_overlap, "seam", "upper_end"))
    sides.append(
        Side("upper", lines.upper, "seam", "upper_end" if lines.upper_overlap is None else "upper_front")
    )
    sides.append(Side(center, lines.center, "fold", "upper_center"))
    return tuple(sides)


def turned_run(lines: StandLines) -> list[tuple[str, str]]:
    """The edges round the end in which the two layers are sewn to each other, each with the corner where it
    is come to from the neck."""
    run = [] if lines.beyond is None else [("overlap", "neck_end")]
    run.append(("end", "neck_end" if lines.beyond is None else "overlap_end"))
    if lines.upper_overlap is not None:
        run.append(("upper_overlap", "upper_end"))
    return run


def upper_corner(lines: StandLines) -> str:
    """The corner where the upper edge begins, from the front."""
    return "upper_end" if lines.upper_overlap is None else "upper_front"
