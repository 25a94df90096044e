"""The lines of a leg below the hip: the side seam down to the hem, the inseam, the hem."""

from dataclasses import dataclass
from math import atan2, degrees

from notchbook.blocks.legs.knee_bend import BendPlan, knee_bend
from notchbook.blocks.legs.proportions import proportion
from notchbook.geometry import Line, Point, Segment, curve_between


@dataclass(frozen=True, slots=True)
class Leg:
    """Where a panel's knee and hem lie: half widths at either side of the crease and levels, mm, and how the
    inseam bends at the knee.

    ``knee_y`` is None where the leg runs to the hem in one line, ``falls`` where it falls straight: the half
    widths then count for nothing. ``hollow`` is the share of the usual hollow that the inseam keeps.
    """

    knee_half: float
    knee_y: float | None
    hem_half: float
    hem_y: float
    bend: BendPlan
    falls: bool = False
    hollow: float = 1.0

    @property
    def first(self) -> tuple[float, float]:
        """Half width and level of the first place below the crotch: the knee, else the hem."""
        return (self.hem_half, self.hem_y) if self.knee_y is None else (self.knee_half, self.knee_y)


@dataclass(frozen=True, slots=True)
class Inseam:
    """The inseam from the crotch point down, by how much it leans toward the crease there (degrees), its
    length (mm), and where the knee lies on it (None without one)."""

    segments: tuple[Segment, ...]
    lean: float
    length: float
    knee: Point | None = None


def side_below_hip(hip: Point, hip_lean: float, leg: Leg) -> tuple[Segment, ...]:
    """The side seam from the hip down to the hem; it leaves the hip leaning in by ``hip_lean`` degrees."""
    if leg.falls:
        return (Line(hip, Point(hip.x, leg.hem_y)),)
    half, level = leg.first
    end = Point(half, level)
    lean = _lean_at(leg, hip.x - half, hip.y - level)
    curve = curve_between(hip, 270.0 - hip_lean, end, 270.0 - lean, keep_convex=False)
    return (curve,) if leg.knee_y is None else (curve, Line(end, Point(leg.hem_half, leg.hem_y)))


def inseam(fork: Point, leg: Leg) -> Inseam:
    """The inseam: bent through the knee; without one it leans more at the crotch than its chord does."""
    if leg.falls:
        return Inseam((Line(fork, Point(fork.x, leg.hem_y)),), 0.0, fork.y - leg.hem_y)
    if leg.knee_y is not None:
        knee = Point(-leg.knee_half, leg.knee_y)
        bend = knee_bend(fork, knee, Point(-leg.hem_half, leg.hem_y), leg.bend)
        return Inseam(bend.segments, degrees(bend.lean), bend.length, knee)
    return _inseam_to_hem(fork, leg)


def _inseam_to_hem(fork: Point, leg: Leg) -> Inseam:
    end = Point(-leg.hem_half, leg.hem_y)
    inward, down = end.x - fork.x, fork.y - end.y
    chord = degrees(atan2(inward, down))
    below = _lean_at(leg, inward, down)
    least, most = proportion("inseam.least_hollow"), proportion("inseam.most_hollow")
    turn = max(0.0, chord - below)
    hollow = min(most, max(min(least, turn), proportion("inseam.hollow_share") * turn))
    lean = chord + leg.hollow * hollow
    curve = curve_between(fork, 270.0 + lean, end, 270.0 + below, keep_convex=turn > 0.0)
    return Inseam((curve,), lean, curve.length)


def _lean_at(leg: Leg, inward: float, down: float) -> float:
    """By how much the seams lean toward the crease at the knee (at a hem without knee), degrees."""
    if leg.knee_y is not None:
        return degrees(atan2(leg.knee_half - leg.hem_half, leg.knee_y - leg.hem_y))
    chord = degrees(atan2(inward, down))
    return chord if chord < 0.0 else proportion("hem.end_lean") * chord


def length_of(segments: tuple[Segment, ...]) -> float:
    """The length of a chain, mm."""
    return sum(segment.length for segment in segments)
