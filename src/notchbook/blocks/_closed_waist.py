"""The upper part of a skirt or trouser panel, drawn with its darts closed and then opened.

The waistline is drawn once, as one smooth curve from the center to the side seam, in the state in
which it is worn: darts closed. Opening the darts then carries its parts back to where they lie on
flat cloth. So both legs of a dart are equal, its cap is right, and the sewn waistline has no corner:
by construction, not by truing.

Here the center lies at x = 0 and the side at +x, y = 0 is the hip line, mm, y up.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cached_property
from math import asin, atan2, degrees, radians, tan

from notchbook.blocks._together import Together, Vector
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry import Cubic, Path, Point, Transform, curve_between, direction
from notchbook.geometry.roots import unit_roots
from notchbook.geometry.solve import solve_rising

LEAN_FACTOR = 1.75
"""Lean of the side seam at the waist over the lean of its chord. Below 1.5 the curve bends back at
the waist end; 2 is the arc of a circle. Source: set by eye on 1,000 drafts of surveyed bodies."""

HIP_PULL = 1.1
"""Pull of the side curve at the hip: keeps it upright a little longer, so that no bump shows. As above."""

LEG_ROUNDS = 12
"""Most rounds to bring the dart legs to their length; each gains about two digits."""

LEG_EXACTNESS = 1e-8
"""mm by which a leg may still miss its length; both legs of a dart are equal in any case."""


@dataclass(frozen=True, slots=True)
class DartPlan:
    """One dart: where its middle stands on the sewn waist (share of it from the center), the length of
    its legs (mm) and its share of the panel's intake."""

    place: float
    length: float
    share: float


@dataclass(frozen=True, slots=True)
class PanelPlan:
    """One panel from center to side: the side curve, the darts, and ``slack``, the degrees by which
    the waist meets the side short of square."""

    side: Cubic
    darts: tuple[DartPlan, ...]
    slack: float


@dataclass(frozen=True)
class Panel:
    """A drawn panel: the opened parts of the waistline (center first), the dart points, the side curve.

    ``closed`` is the sewn waistline; ``height`` that of the waist at the center over the hip line;
    ``flatness`` is 1 for the arc of a circle, less where the line stays flat at the center; the sewn
    waistline turns by ``turn`` degrees.
    """

    closed: Path
    parts: tuple[Path, ...]
    points: tuple[Point, ...]
    side: Cubic
    height: float
    flatness: float
    turn: float

    @cached_property
    def length(self) -> float:
        """The sewn length of the waist, mm."""
        return self.closed.length

    @property
    def rise(self) -> float:
        """How far the waist rises from the center to the side, on flat cloth, mm."""
        return self.side.end.y - self.height

    def intake(self, index: int) -> float:
        """The mouth of a dart, straight across, mm."""
        return self.parts[index].end.distance_to(self.parts[index + 1].start)


def side_curve(
    width: float, take_in: float, hip_depth: float, hip_lean: float = 0.0, lean_factor: float = LEAN_FACTOR
) -> Cubic:
    """The side seam of a panel from the hip to the waist, its length the hip depth exactly.

    ``width`` of the panel at the hip, ``take_in`` at the waist, mm (negative where it leans out). At the hip
    it is upright, or leans by ``hip_lean`` degrees where it flares below. DraftRefused ``skirt-side-short``
    when the take-in is too much for so short a side.
    """

    def curve(height: float) -> Cubic:
        lean = lean_factor * degrees(atan2(take_in, height)) - (lean_factor - 1.0) * hip_lean
        start, end = Point(width, 0.0), Point(width - take_in, height)
        return curve_between(start, 90.0 + hip_lean, end, 90.0 + lean, HIP_PULL, 1.0)

    try:
        height = solve_rising(
            lambda y: curve(y).length - hip_depth, hip_depth, 2.0, 0.4 * hip_depth, 1.05 * hip_depth
        )
    except GeometryError as error:
        raise DraftRefused("skirt-side-short", take_in=take_in, hip_depth=hip_depth) from error
    return curve(height)


@dataclass(frozen=True, slots=True)
class _Drawing:
    """The closed waistline at a given intake: the line, the darts' motions, points and cuts.

    ``cuts`` are the parameters on the line where the closed darts meet it, from the center outward.
    """

    line: Cubic
    points: tuple[Point, ...]
    motions: tuple[Transform, ...]
    cuts: tuple[float, ...]
    legs: tuple[float, ...]
    turn: float
    side: Point


class PanelDrafter:
    """Draws one panel at any sum of dart intakes (mm).

    ``height`` gives the waist's height at the center from the closed side point and the angle (deg)
    by which the closed waistline turns; ``reach`` is the sewn length on which the darts are placed.
    Where the dart points lay last is where the next search for them begins: a solver asks for
    intakes that lie near each other.
    """

    def __init__(self, plan: PanelPlan, height: Callable[[Point, float], float], reach: float) -> None:
        self._plan = plan
        self._height = height
        self._reach = reach
        self._depths = [plan.side.end.y - dart.length for dart in plan.darts]

    def sewn(self, intake: float) -> float:
        """The sewn length of the waist, mm."""
        return self._settled(intake).line.length

    def closed_to(self, waist: float, search: Together, start: Vector) -> tuple[Panel, Vector] | None:
        """The panel whose sewn waist is ``waist``, and its intake and the levels of its dart points, all mm.

        They are sought together from ``start`` (see ``start_of``).

        None where that would need an intake below 0 or does not settle.
        """
        drawings: list[_Drawing] = []

        def errors(amounts: Vector) -> Vector:
            drawings[:] = [
                _draw(self._plan, amounts[0], self._height, self._reach, list(amounts[1:])),
            ]
            legs = zip(drawings[0].legs, self._plan.darts, strict=True)
            return (drawings[0].line.length - waist, *(leg - dart.length for leg, dart in legs))

        found = search.settle(errors, start)
        if found is None or found[0] < 0.0:
            return None
        return self._opened(drawings[0]), found

    def start_of(self, intake: float) -> Vector:
        """Where to begin a search for the panel that is closed: the intake, the levels of the dart points."""
        return (intake, *self._depths)

    def stops(self, intake: float) -> tuple[float, ...]:
        """How far along the sewn waist each dart stands, from the center, mm; last the whole waist."""
        return self._stops(self._settled(intake))

    def with_places(self, places: tuple[float, ...]) -> "PanelDrafter":
        """The same with its darts at other shares of the sewn waist."""
        darts = (replace(dart, place=at) for dart, at in zip(self._plan.darts, places, strict=True))
        moved = PanelDrafter(replace(self._plan, darts=tuple(darts)), self._height, self._reach)
        moved._depths = list(self._depths)
        return moved

    @staticmethod
    def _stops(drawing: _Drawing) -> tuple[float, ...]:
        return (*(drawing.line.distance_at(cut) for cut in drawing.cuts), drawing.line.length)

    def panel(self, intake: float) -> Panel:
        """The panel, its darts opened."""
        return self._opened(self._settled(intake))

    def _opened(self, drawing: _Drawing) -> Panel:
        closed = Path.of(drawing.line)
        stops = [0.0, *self._stops(drawing)]
        parts = tuple(
            closed.between(stops[index], stops[index + 1]).transformed(motion.inverse())
            for index, motion in enumerate(drawing.motions)
        )
        level = drawing.line.start.y
        flat = drawing.side.x * tan(radians(drawing.turn / 2.0))
        flatness = (drawing.side.y - level) / flat if flat else 1.0
        return Panel(closed, parts, drawing.points, self._plan.side, level, flatness, drawing.turn)

    def _settled(self, intake: float) -> _Drawing:
        """The drawing whose dart legs have their lengths: the points are moved up or down until they do."""
        for _ in range(LEG_ROUNDS):
            drawing = _draw(self._plan, intake, self._height, self._reach, self._depths)
            errors = [leg - dart.length for leg, dart in zip(drawing.legs, self._plan.darts, strict=True)]
            if max(map(abs, errors), default=0.0) < LEG_EXACTNESS:
                break
            self._depths = [depth + error for depth, error in zip(self._depths, errors, strict=True)]
        return drawing


def _draw(
    plan: PanelPlan,
    intake: float,
    height: Callable[[Point, float], float],
    reach: float,
    depths: list[float],
) -> _Drawing:
    points, angles, motions = _darts(plan, intake, reach, depths)
    side = motions[-1].apply(plan.side.end)
    turn = plan.side.tangent_at(plan.side.length).direction() - 90.0 + sum(angles)
    end_direction = turn - plan.slack if turn > plan.slack else turn
    line = curve_between(Point(0.0, height(side, turn)), 0.0, side, end_direction)
    cuts: list[float] = []
    legs: list[float] = []
    turned = 0.0
    for point, angle, motion in zip(points, angles, motions, strict=False):
        tip, up = motion.apply(point), direction(90.0 + turned + angle / 2.0)
        cut = _meeting(line, tip, up)
        cuts.append(cut)
        legs.append(up.dot(line.at(cut) - tip))
        turned += angle
    return _Drawing(line, points, motions, tuple(cuts), tuple(legs), turn, side)


def _meeting(line: Cubic, tip: Point, up: Point) -> float:
    """The parameter at which a straight line up from a dart point first meets the waistline.

    GeometryError ``dart-misses-waist`` when it passes beside: the darts are too wide for the panel.
    """
    (x1, x2, x3), (y1, y2, y3) = line.powers
    beside = (
        up.cross(line.start - tip),
        up.x * y1 - up.y * x1,
        up.x * y2 - up.y * x2,
        up.x * y3 - up.y * x3,
    )
    for parameter in unit_roots(beside):
        if up.dot(line.at(parameter) - tip) > 0.0:
            return parameter
    raise GeometryError("dart-misses-waist")


def _darts(
    plan: PanelPlan, intake: float, reach: float, depths: list[float]
) -> tuple[tuple[Point, ...], tuple[float, ...], tuple[Transform, ...]]:
    """The dart points, their angles (deg), and the motion that closes all darts before each panel part."""
    points: list[Point] = []
    angles: list[float] = []
    motions = [Transform.identity()]
    taken = 0.0
    for dart, depth in zip(plan.darts, depths, strict=True):
        own = intake * dart.share
        point = Point(dart.place * reach + taken + own / 2.0, depth)
        angle = 2.0 * degrees(asin(max(-1.0, min(own / 2.0 / dart.length, 1.0))))
        points.append(point)
        angles.append(angle)
        motions.append(Transform.rotation(angle, point).then(motions[-1]))
        taken += own
    return tuple(points), tuple(angles), tuple(motions)
