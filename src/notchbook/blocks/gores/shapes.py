"""What the numbers of a gored skirt draw.

In the frame of a gore its middle lies at x = 0, along the grain, and the waist ends of its seams at y = 0;
one half is drawn, toward +x. mm, y up.
"""

from dataclasses import dataclass

from notchbook.geometry import Path


@dataclass(frozen=True, slots=True)
class HalfGore:
    """Half a gore: its seam from the hem up to the waist; waist, hip line and hem from the middle out."""

    seam: Path
    waist: Path
    hip: Path
    hem: Path


@dataclass(frozen=True, slots=True)
class GoresSide:
    """One side of the skirt: half of each gore, from front to back.

    ``take_in`` is how much each seam edge takes in from hip to waist (negative: it leans out), mm;
    ``waist_lean`` and ``hip_lean`` how it leans there, ``hem_lean`` how it flares at the hem, degrees.
    """

    gores: tuple[HalfGore, ...]
    halves: tuple[int, ...]
    take_in: float
    waist_lean: float
    hip_lean: float
    hem_lean: float
    hip_depth: float

    @property
    def length(self) -> float:
        """The seams from waist to hem, mm."""
        return self.gores[0].seam.length
