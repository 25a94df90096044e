"""The lower part of a seam swung about a place on it."""

from math import asin, degrees

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Transform, direction, run_on
from notchbook.pattern import Piece
from notchbook.style.edges.figures import SWING_BLEND
from notchbook.units import TOLERANCES


def swung(piece: Piece, seam: Path, distance: float, amount: float, *, along_outline: bool) -> Path:
    """The seam (running down to the hem) with what lies below the place swung aside.

    ``along_outline``: it runs in the direction of the outline, so that the piece lies left of it.

    Its end moves outward by ``amount`` square to the grain, mm, inward where negative. What lies above the
    place stays as it is: the seam turns 50 mm below it, or at a third of what there is, and the corner is
    rounded over as much to both sides. From the end of the seam on it turns as a whole. StepRefused
    ``taper-too-much`` when no turn reaches so far.
    """
    blend = 0.0 if distance <= TOLERANCES.closure else min(SWING_BLEND.value, (seam.length - distance) / 3.0)
    above, below = seam.split_at(distance + blend)
    outward = _outward(piece, seam, along_outline)
    up = direction(piece.grain.degrees)
    reach = below.end - below.start
    sideways, radius = reach.dot(outward), reach.norm()
    if max(abs(sideways + amount), abs(sideways)) >= radius:
        raise StepRefused("taper-too-much", amount=abs(amount), length=radius)
    angle = degrees(asin((sideways + amount) / radius) - asin(sideways / radius))
    turn = Transform.rotation(angle if up.cross(outward) < 0.0 else -angle, below.start)
    turned = below.transformed(turn)
    if above.length <= TOLERANCES.closure:
        return turned
    return _rounded(above, turned, blend)


def _outward(piece: Piece, seam: Path, along_outline: bool) -> Point:
    """The way out of the piece at the middle of the seam, square to the grain."""
    across = direction(piece.grain.degrees - 90.0)
    left = seam.tangent_at(seam.length / 2.0).perpendicular()
    is_outward = (left.dot(across) > 0.0) is not along_outline
    return across if is_outward else -across


def _rounded(above: Path, below: Path, reach: float) -> Path:
    """The two parts with the corner between them replaced by a smooth curve."""
    kept, _ = above.split_at(above.length - reach)
    _, rest = below.split_at(reach)
    bend = run_on(kept, kept.length, rest, 0.0)
    return kept.joined(Path.of(bend)).joined(rest)
