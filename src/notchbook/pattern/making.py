"""How a garment of leather or coated cloth is made, as far as its pieces are cut otherwise than of cloth."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class LeatherMaking:
    """The way of making that a whole pattern has; lengths in mm.

    ``material`` is the pattern's material that is meant (``self``), ``cloth`` what it is called on paper.
    Pieces of it are slit ``notch`` deep at most and never drilled; seams get ``seam`` at most, hems ``hem``.
    ``panel_length`` and ``panel_width`` are the largest piece that a hide gives, along the backbone and
    across it (0: the material comes by the roll, and is cut as cloth). Seam edges are skived over
    ``skived_seam``, hems over ``skived_hem``. A sleeve cap may be ``cap_ease`` longer than its armhole.
    """

    material: str
    cloth: str
    panel_length: float
    panel_width: float
    seam: float
    hem: float
    notch: float
    skived_seam: float
    skived_hem: float
    cap_ease: float

    @property
    def is_hide(self) -> bool:
        """Whether it is cut from hides, each panel singly and face up."""
        return self.panel_length > 0.0
