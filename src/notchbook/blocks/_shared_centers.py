"""Where the two sides of a skirt share their waist at the centers, when the wearer's sides differ.

The centers belong to both sides. Where one hip lies lower than the other, its hip line lies lower on the
cloth too: waist and hem stay level, and no waistline is forced to meet a hip that is elsewhere.
"""

from dataclasses import dataclass

from notchbook.blocks.skirts.halves import Half
from notchbook.body import Side


@dataclass(frozen=True, slots=True)
class SharedCenters:
    """The waist over this side's own hip line at both centers, and the height of the other side's hip line
    over this one's (negative: it lies lower), mm."""

    front_height: float
    back_height: float
    hip_step: float

    def lift(self, side: Side) -> float:
        """How far this side is moved up in its pieces, mm: y = 0 is the hip line of the wearer's right."""
        return 0.0 if side == "right" else -self.hip_step


def shared_centers(own: Half, other: Half, hip_step: float | None = None) -> SharedCenters:
    """Both sides drafted alone, brought together: at each center the mean of what they would have.

    ``hip_step`` is the height of the other hip over this one where it was measured (None: the waist lies
    level, so that the hips lie where their depths put them), mm.
    """
    fronts, backs = own.front.height - other.front.height, own.back.height - other.back.height
    step = (fronts + backs) / 2.0 if hip_step is None else hip_step
    return SharedCenters(
        own.front.height + (step - fronts) / 2.0, own.back.height + (step - backs) / 2.0, step
    )
