"""The facing behind a lapel: up the front edge and over the lapel to the shoulder, and down inside."""

from collections.abc import Sequence
from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Path, curve_between
from notchbook.pattern import spoken
from notchbook.style.collars.lapel_given import LapelFront
from notchbook.style.collars.pieces import Side


@dataclass(frozen=True, slots=True)
class FacingSize:
    """mm: how wide the facing is at the hem and how wide at the shoulder."""

    hem: float
    shoulder: float


def facing_sides(front: LapelFront, below: Path, upper: Sequence[Side], size: FacingSize) -> tuple[Side, ...]:
    """The sides of the facing: ``below`` is the front edge up to the break point, ``upper`` what follows to
    the side-neck point.

    StepRefused ``lapel-facing-wide`` where shoulder or hem are shorter than the facing is wide.
    """
    shoulder = front.shoulder
    if size.shoulder >= shoulder.length:
        raise StepRefused(
            "lapel-facing-wide", width=size.shoulder, edge=spoken(shoulder.name), length=shoulder.length
        )
    top = shoulder.path.between(0.0, size.shoulder)
    foot = _foot(front, size.hem)
    is_hem = front.piece.edge_before(front.edge.name).kind == "hem"
    inner = _inner(front, top, foot, size)
    return (
        Side("center", below, "seam", "hem_center"),
        *upper,
        Side("shoulder", top, "plain", "side_neck_point"),
        Side("edge", inner, "plain", "shoulder_end"),
        Side("hem", foot, "hem" if is_hem else "plain", "hem_end"),
    )


def _foot(front: LapelFront, width: float) -> Path:
    """The lower edge of the front for so many mm from the front edge, as far as no dart opens in it."""
    edge = front.piece.edge_before(front.edge.name)
    path = edge.path
    while path.length <= width:
        edge = front.piece.edge_before(edge.name)
        if edge.kind == "leg" or edge.name == front.shoulder.name:
            raise StepRefused(
                "lapel-facing-wide", width=width, edge=spoken(front.edge.name), length=path.length
            )
        path = edge.path.joined(path)
    return path.between(path.length - width, path.length)


def _inner(front: LapelFront, top: Path, foot: Path, size: FacingSize) -> Path:
    """The free edge: square to the shoulder, then beside the front edge down to the hem."""
    along = front.edge.path.tangent_at(front.break_at, "before")
    middle = front.break_point + along.perpendicular() * size.hem
    down = (-along).direction()
    leaving = -top.tangent_at(top.length).perpendicular()
    if leaving.dot(middle - top.end) < 0.0:
        leaving = -leaving
    bend = Path.of(curve_between(top.end, leaving.direction(), middle, down))
    return bend.joined(Path.line(middle, foot.start))
