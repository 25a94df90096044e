"""How much sewing thread a garment takes: for all its seams and hems, sewn once."""

import math
from collections.abc import Iterator
from typing import Final

from notchbook.errors import NotchbookError
from notchbook.output.paper_info import PaperTrim
from notchbook.pattern import Pattern, Piece
from notchbook.pattern.operation import laid_layers
from notchbook.pattern.sewn import run_of, sewn_edge_length
from notchbook.recipe.style_figure import StyleFigure
from notchbook.units import LengthStyle

LOCKSTITCH: Final = StyleFigure(
    2.8, "thread of a lockstitch over its seam", "2.5 to 3 m of thread for a meter of seam", "memory"
)
OVERLOCK: Final = StyleFigure(
    15.0, "thread of a four-thread overlock over its seam", "14 to 17 m for a meter of seam", "memory"
)
ENDS: Final = StyleFigure(
    1.25, "thread over what lies in the seams: ends, seams sewn twice", "a quarter more", "own judgment"
)

_CONES: Final = "on four cones, for an overlock"
_SEWN_ONCE: Final = "for seams and hems; topstitching, buttonholes and neatening come on top"

_STEP_METRIC: Final = 5000.0
_STEP_YARD: Final = 914.4 * 5.0
"""To how much the length is rounded up, mm: 5 m, 5 yards; more would say more than is known."""


def thread(pattern: Pattern, style: LengthStyle) -> Iterator[PaperTrim]:
    """One line: how much thread, and for what; nothing where nothing is sewn."""
    stretches = any(piece.stretches for piece in pattern.pieces.values())
    ratio = OVERLOCK if stretches else LOCKSTITCH
    length = sum((*_seams(pattern), *_hems(pattern))) * ratio.value * ENDS.value
    if length > 0.0:
        yield PaperTrim(
            f"sewing thread, about {_rounded(length, style)}", _CONES if stretches else _SEWN_ONCE
        )


def _rounded(length: float, style: LengthStyle) -> str:
    if style.unit == "in":
        return f"{5 * math.ceil(length / _STEP_YARD)} yd"
    return f"{5 * math.ceil(length / _STEP_METRIC)} m"


def _seams(pattern: Pattern) -> Iterator[float]:
    """The length of each seam, mm: on both of the wearer's sides, unless it says on which it is or lies on a
    piece that is drawn whole."""
    for seam in pattern.seams.values():
        try:
            run = run_of(pattern, seam.first)
        except NotchbookError:
            continue  # a name of it is gone, which the checks tell
        is_once = any(use.side != "both" for use in seam.first)
        for step in run:
            drawn = _drawn(pattern.piece_of(step.edge.name))
            yield sewn_edge_length(pattern, step.edge) * (1.0 if is_once else drawn)


def _hems(pattern: Pattern) -> Iterator[float]:
    """The length of the hems of each piece, mm; layers laid behind another piece are not hemmed."""
    layers = laid_layers(pattern.operations.values())
    for piece in (piece for name, piece in pattern.pieces.items() if name not in layers):
        yield sum(edge.length for edge in piece.outline if edge.kind == "hem") * _drawn(piece)


def _drawn(piece: Piece) -> float:
    return 1.0 if piece.cut == "single" else 2.0
