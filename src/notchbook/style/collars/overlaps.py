"""How a stand goes on beyond the center front: sewn to the button stand of the garment, or free."""

from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.recipe import StepContext


@dataclass(frozen=True, slots=True)
class Overlaps:
    """mm: the ``whole`` overlap of the stand beyond the center, how much of it is ``sewn`` to the garment and
    how much goes ``beyond`` its edge; how much of the neck is ``left_free``, where the garment goes on."""

    whole: float
    sewn: float
    beyond: float
    left_free: float

    @property
    def is_on_garment(self) -> bool:
        """Whether the garment has a button stand of its own."""
        return self.sewn > 0.0 or self.left_free > 0.0


def overlaps_of(context: StepContext, extension: float, asked: str) -> Overlaps:
    """The overlap as asked, on a garment whose neck has so much extension, mm.

    StepRefused ``collar-below-nothing``.
    """
    overlap = context.mm(asked)
    if overlap < 0.0:
        raise StepRefused("collar-below-nothing", field="overlap", amount=overlap)
    return Overlaps(
        overlap, min(overlap, extension), max(0.0, overlap - extension), max(0.0, extension - overlap)
    )
