"""What is said of a lapel: its collar behind, and a button that lies on what is turned back."""

import math
from collections.abc import Iterator

from notchbook.pattern import Cure, Finding, Measured, Severity, worded
from notchbook.style.collars.figures import OUTER_EDGE_SHORT, UPPER_COLLAR_TURN
from notchbook.style.collars.laid_neck import LaidNeck
from notchbook.style.collars.lapel_given import LapelFront
from notchbook.style.collars.lapel_lines import LapelSize
from notchbook.style.collars.notes import cover_notes, unusual_notes
from notchbook.style.collars.swing import behind_there
from notchbook.units import TOLERANCES

_CHECK = "lapel"


def lapel_notes(
    made: tuple[str, str], front: LapelFront, size: LapelSize, laid: LaidNeck | None, turn: float
) -> tuple[Finding, ...]:
    """Whether the fall covers the neck seam, whether the collar lies on the back, where the buttons are,
    whether the ``turn`` of the cloth is usual. ``made``: the slug of the step and the upper collar."""
    slug, piece = made
    return (
        *cover_notes(slug, piece, size.stand, size.fall),
        *_swing_notes(slug, piece, size, laid),
        *_button_notes(front),
        *unusual_notes(piece, {"turn": (turn, UPPER_COLLAR_TURN)}),
    )


def _swing_notes(slug: str, piece: str, size: LapelSize, laid: LaidNeck | None) -> Iterator[Finding]:
    """A collar that is swung too little: its outer edge is shorter than the back where it lies."""
    lies = size.fall - size.stand
    if laid is None or lies <= 0.0:
        return
    outer = size.back + math.radians(size.swing) * size.width
    wanted = behind_there(laid, lies)
    if outer >= wanted - OUTER_EDGE_SHORT.value / 2.0 - TOLERANCES.closure:
        return
    yield worded(
        _CHECK,
        "collar-outer-short",
        Severity.LOOK,
        Measured(outer, wanted),
        piece=piece,
        length=outer,
        wanted=wanted,
        lies=lies,
        cures=(Cure(slug, "swing", None, "swing the collar as far as its outer edge asks"),),
    )


def _button_notes(front: LapelFront) -> Iterator[Finding]:
    """Buttons of the front above the break point: they would be sewn to the lapel."""
    above = [
        mark.name
        for mark in front.piece.marks
        if mark.kind == "button" and front.edge.path.nearest(mark.position).distance_along > front.break_at
    ]
    if above:
        yield worded(
            _CHECK,
            "lapel-over-button",
            Severity.LOOK,
            None,
            piece=front.piece.name,
            names=tuple(above),
            count=len(above),
        )
