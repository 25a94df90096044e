"""Garments that lie on the body all round are refused in cloth that hardly stretches."""

from notchbook.blocks.stretch_fabric.cloth import Cloth
from notchbook.blocks.stretch_fabric.reductions import OVER_THE_BODY, Use
from notchbook.errors import DraftRefused

LEAST_STRETCH = OVER_THE_BODY - 1.0
"""Below it a garment would have to be larger than the body (follows from what the cloth must go over)."""


def require_stretch(cloth: Cloth, use: Use) -> None:
    """DraftRefused ``cloth-hardly-stretches`` where the cloth goes over the body with no reduction at all."""
    if cloth.across < LEAST_STRETCH:
        raise DraftRefused(
            "cloth-hardly-stretches",
            use=use.replace("_", "-"),
            stretch=100.0 * cloth.across,
            least=100.0 * LEAST_STRETCH,
        )
