"""Is there a hide large enough for every piece?"""

from collections.abc import Iterator

import numpy as np

from notchbook.checks.check import Reading, Spot, check
from notchbook.checks.measured import dense
from notchbook.checks.subject import Subject
from notchbook.finish import CutPiece
from notchbook.pattern import Finding, Severity
from notchbook.pattern.making import LeatherMaking


@check(
    id="leather-panels",
    title="Each panel fits a hide",
    rationale=(
        "A hide has no length to unroll. What is left between flanks, neck and flaws is a panel of so much "
        "along the backbone and so much across, and a piece that is larger cannot be cut at all. It shows "
        "when the skins are bought. A seam across the piece, at the knee, the hip or a yoke, is drawn "
        "before. The sizes of hides are what such skins usually give; measure those that are bought."
    ),
    severity=Severity.LOOK,
    reads=("cut",),
    messages={
        "leather-panel-long": "{piece} is longer than the panel that {cloth} gives.",
        "leather-panel-wide": "{piece} is wider than the panel that {cloth} gives.",
    },
    suggestion="Cut the piece across with a style line, or take a larger hide.",
)
def leather_panels(subject: Subject) -> Iterator[Finding]:
    """Pieces of leather that are longer along the grain or wider across it than the panel of a hide, mm."""
    making = subject.pattern.making
    if making is None or not making.is_hide:
        return
    for piece in subject.cut_pieces:
        if any(one.material == making.material for one in piece.quantities):
            yield from _too_large(piece, making)


def _too_large(piece: CutPiece, making: LeatherMaking) -> Iterator[Finding]:
    length, width = _along_grain(piece)
    spot = Spot(piece.name, None, piece.grain.start)
    for code, size, most in (
        ("leather-panel-long", length, making.panel_length),
        ("leather-panel-wide", width, making.panel_width),
    ):
        if size > most:
            yield leather_panels.finding(
                code, spot, Reading(size, most), None, piece=piece.title, cloth=making.cloth
            )


def _along_grain(piece: CutPiece) -> tuple[float, float]:
    """How long the cut piece is along its grain, and how wide across it, mm."""
    turned = np.radians(piece.grain.degrees)
    points = dense(piece.cut_line).points
    along = points @ np.array([np.cos(turned), np.sin(turned)])
    across = points @ np.array([-np.sin(turned), np.cos(turned)])
    return float(np.ptp(along)), float(np.ptp(across))
