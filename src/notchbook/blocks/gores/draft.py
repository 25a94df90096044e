"""One side of a gored skirt: every seam edge takes in the same, so that neighbors are the same line.

Waist, hip line and hem are arcs square to the seams, so that they run on across every seam. The sums of
these arcs are the girths: what the seams lean follows from them. Gores of different width differ in
nothing but the strip along their middle.
"""

from math import degrees

from notchbook.blocks.gores.given import GoresGiven, SharedMiddles
from notchbook.blocks.gores.shapes import GoresSide, HalfGore
from notchbook.blocks.gores.upper_seam import UpperSeam
from notchbook.blocks.skirts.arc import arc_over_chord, level_line
from notchbook.blocks.skirts.lower_seam import LowerSeam
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry import Path, Point, Transform
from notchbook.geometry.solve import solve_rising

MOST_FLARE = 40.0
"""Degrees that a seam edge may flare: beyond it a gore is a sector of a circle skirt. Own judgment."""

MOST_LEAN = 55.0
"""Degrees that the chord of the seam may lean between hip and waist."""

LEAST_HALF = 5.0
"""mm that half a gore must keep at the waist. Own judgment."""

Middles = tuple[SharedMiddles | None, ...]
"""For each gore where its middle is fixed, None where it lies as the arc has it."""


def draft_gores(given: GoresGiven, middles: Middles | None = None) -> GoresSide:
    """Draft one side.

    DraftRefused: ``gored-flare-too-wide``, ``gored-waist-unreachable``, ``gored-gore-too-narrow``.
    """
    fixed = middles or (None,) * len(given.gores)
    lower = _lower(given, fixed)
    upper = _upper(given, lower, fixed)
    halves = tuple(
        _half(gore.half, upper, lower, middle) for gore, middle in zip(given.gores, fixed, strict=True)
    )
    narrow = min(gore.waist.end.x for gore in halves)
    if narrow < LEAST_HALF:
        raise DraftRefused("gored-gore-too-narrow", width=2.0 * narrow, take_in=2.0 * upper.take_in)
    return GoresSide(
        halves,
        tuple(gore.halves for gore in given.gores),
        upper.take_in,
        upper.waist_lean,
        lower.hip_lean,
        lower.hem_lean,
        given.hip_depth,
    )


def _lower(given: GoresGiven, middles: Middles) -> LowerSeam:
    """The seam below the hip at which the hem comes out."""
    straight = max(given.flare_depth - given.hip_depth, 0.0)
    flared = given.length - given.hip_depth - straight
    cone = degrees((given.hem - given.hip) / 2.0 / given.seam_edges / flared)
    hip_lean = 0.0 if straight else _lean_at_hip(given, cone)
    is_cone = hip_lean == cone

    def seam(lean: float) -> LowerSeam:
        return LowerSeam(lean if is_cone else hip_lean, lean, straight, flared)

    def over(lean: float) -> float:
        lower = seam(lean)
        upper = _upper(given, lower, middles) if any(middles) else None
        return _hem_length(given, lower, upper, middles) - given.hem / 2.0

    try:
        return seam(solve_rising(over, cone, 0.05, -MOST_FLARE, MOST_FLARE))
    except GeometryError as error:
        most = 2.0 * over(MOST_FLARE) + given.hem
        raise DraftRefused("gored-flare-too-wide", hem=given.hem, most=most, flared=flared) from error


def _lean_at_hip(given: GoresGiven, cone: float) -> float:
    """How the seam leans at the hip, degrees.

    A skirt that opens like a cone from the hip leans there as it does at the hem, ``cone``. Where that is
    more than the straight way from waist to hip leans, the seam would run hollow over the high hip: it
    is then straight down to the hip and flares from there, or round over the high hip where that asks for
    it. A waist wider than the hip leaves the seam upright there. A hem narrower than the hip tapers from
    there.
    """
    straight = degrees((given.hip - given.waist) / 2.0 / given.seam_edges / given.hip_depth)
    lean = max(0.0, min(cone, straight)) if cone > 0.0 else min(0.0, straight)
    if lean <= 0.0 or _room(given, lean) >= 0.0:
        return lean
    try:
        return solve_rising(lambda at: _room(given, at), lean, 0.5, 0.0, lean)
    except GeometryError:
        return 0.0


def _room(given: GoresGiven, hip_lean: float) -> float:
    """How much wider the skirt is than asked for at its tightest level above the hip, mm."""
    if not given.levels:
        return 0.0
    lower = LowerSeam(hip_lean, hip_lean, 0.0, 1.0)
    upper = _upper(given, lower, (None,) * len(given.gores))
    curve = upper.curve()
    rooms = []
    for level in given.levels:
        at = max(curve.length - level.depth, 0.0)
        out, lean = curve.point_at(at).x, curve.tangent_at(at).direction() - 90.0
        half = sum(gore.halves * (_hip_chord(gore.half, lower) + out) for gore in given.gores)
        rooms.append(2.0 * half * arc_over_chord(lean) - level.girth)
    return min(rooms)


def _hem_length(given: GoresGiven, lower: LowerSeam, upper: UpperSeam | None, middles: Middles) -> float:
    """The hem of this side, mm."""
    total = 0.0
    for gore, middle in zip(given.gores, middles, strict=True):
        out = _hip_chord(gore.half, lower) + lower.excursion
        if middle is None or upper is None:
            total += gore.halves * out * arc_over_chord(lower.hem_lean)
        else:
            end = Point(out, lower.path.start.y - upper.curve().end.y)
            total += gore.halves * level_line(end, lower.hem_lean, middle.hem).length
    return total


def _upper(given: GoresGiven, lower: LowerSeam, middles: Middles) -> UpperSeam:
    """The seam above the hip at which the waist comes out."""

    def seam(lean: float) -> UpperSeam:
        return UpperSeam(lower.hip_lean, lean, given.hip_depth)

    def over(lean: float) -> float:
        return _waist_length(given, lower, seam(lean), middles) - given.waist / 2.0

    take_in = (given.hip - given.waist) / 2.0 / given.seam_edges
    start = degrees(take_in / given.hip_depth)
    try:
        return seam(solve_rising(over, start, 0.2, -MOST_LEAN, MOST_LEAN))
    except GeometryError as error:
        raise DraftRefused(
            "gored-waist-unreachable", waist=given.waist, hip=given.hip, hip_depth=given.hip_depth
        ) from error


def _waist_length(given: GoresGiven, lower: LowerSeam, upper: UpperSeam, middles: Middles) -> float:
    """The waist of this side, mm."""
    take_in, lean = upper.take_in, upper.waist_lean
    total = 0.0
    for gore, middle in zip(given.gores, middles, strict=True):
        end = _hip_chord(gore.half, lower) - take_in
        if middle is None or end <= LEAST_HALF:
            total += gore.halves * end * arc_over_chord(lean)
        else:
            total += gore.halves * level_line(Point(end, 0.0), lean, middle.waist).length
    return total


def _hip_chord(half: float, lower: LowerSeam) -> float:
    """The level way from the middle of a gore to its seam at the hip, mm."""
    return half / arc_over_chord(lower.hip_lean)


def _half(half: float, upper: UpperSeam, lower: LowerSeam, middle: SharedMiddles | None) -> HalfGore:
    curve = upper.curve()
    shift = Transform.translation(_hip_chord(half, lower), -curve.end.y)
    seam = Path((*lower.path.segments, curve)).transformed(shift)
    hip = seam.segments[-1].start
    waist_middle, hem_middle = (None, None) if middle is None else (middle.waist, middle.hem)
    return HalfGore(
        seam,
        level_line(seam.end, upper.waist_lean, waist_middle),
        level_line(hip, lower.hip_lean),
        level_line(seam.start, lower.hem_lean, hem_middle),
    )


def girth_at(side: GoresSide, depth: float) -> float:
    """The whole girth so far below the waist along the seams, both sides taken like this one, mm."""
    total = 0.0
    for gore, halves in zip(side.gores, side.halves, strict=True):
        at = max(gore.seam.length - depth, 0.0)
        lean = gore.seam.tangent_at(at).direction() - 90.0
        total += halves * gore.seam.point_at(at).x * arc_over_chord(lean)
    return 2.0 * total
