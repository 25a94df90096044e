"""What one side of a gored skirt is drafted from."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class GoreWidth:
    """One gore as it counts for one side of the wearer: its half width at the hip along the hip line, mm,
    and how many of its halves lie on this side (1 for a gore on the fold, else 2)."""

    half: float
    halves: int


@dataclass(frozen=True, slots=True)
class HighLevel:
    """A girth, body with ease, that the skirt must have so far below the waist, above the hip, mm."""

    depth: float
    girth: float


@dataclass(frozen=True, slots=True)
class GoresGiven:
    """One side of the skirt, mm; waist, hip and hem are whole girths with their ease.

    ``length`` runs along the seams from waist to hem, ``hip_depth`` from the waist down them. ``flare_depth``
    is where the flare begins, at the hip or below it. ``gores`` lie from front to back. ``levels`` are
    those between waist and hip that were measured. The girths of the body are its own, without ease.
    """

    waist: float
    hip: float
    hip_depth: float
    length: float
    hem: float
    flare_depth: float
    gores: tuple[GoreWidth, ...]
    levels: tuple[HighLevel, ...] = ()
    body_waist: float = 0.0
    body_hip: float = 0.0

    @property
    def seam_edges(self) -> int:
        """How many seam edges, or halves of gores, this side has."""
        return sum(gore.halves for gore in self.gores)


@dataclass(frozen=True, slots=True)
class SharedMiddles:
    """Where the middle of a gore lies at the waist and at the hem, y in mm, waist ends of the seams at 0:
    fixed for a gore on the fold where the wearer's two sides differ."""

    waist: float
    hem: float
