"""A facing of neck and armhole in one, over the whole shoulder, as garments without sleeves have it.

It is derived: it is made anew after the last shaping step, so that it can never go stale. Darts in the neck,
the shoulder or the armhole are closed in it; the panels of a princess seam are laid together.
"""

from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, curve_between
from notchbook.pattern import CutInstruction, Pattern, require, spoken
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.traced.beside import Beside
from notchbook.style.traced.faced_run import FacedRun
from notchbook.style.traced.faced_runs import faced_runs
from notchbook.style.traced.figures import Weight, turn_of_cloth
from notchbook.style.traced.laid import at_home
from notchbook.style.traced.mates import End, closed_ends, keeps_last, mated_ends, meeting
from notchbook.style.traced.panel_run import Asked
from notchbook.style.traced.panels_open import panels_open
from notchbook.style.traced.strap import strap_drawn_in
from notchbook.style.traced.traced_piece import Making, Traced
from notchbook.style.traced.tracing import seams_between, shoulder_seams, traced, with_traced

_NARROWEST = 15.0
"""mm that the facing must reach from the neck and the armhole at least. Own judgment."""

_BEYOND = 10.0
"""mm that the free edge is carried on beyond the center, to be cut there."""


class FacedPart(StepParameters):
    """The neck, shoulder and armhole of front or back, on one piece or on its panels, and the end of the neck
    at the center."""

    neck: EdgeName
    """The neck of the piece."""
    center: PointName
    """The end of the neck at the center, where the grain is kept."""
    shoulder: EdgeName
    """The shoulder of the piece."""
    armhole: EdgeName
    """The armhole of the piece."""


class AllInOneFacingParameters(StepParameters):
    """The ``parts`` that are faced, front and back, and how deep the facing reaches."""

    parts: Annotated[tuple[FacedPart, ...], Field(min_length=1, max_length=2)]
    """Front and back."""
    center_depth: AmountText = "6 cm"
    """How deep it reaches along the center."""
    side_depth: AmountText = "5 cm"
    """How deep it reaches along the side seam."""
    cloth: Weight = "medium"
    """How heavy the cloth is, for its turn: light 1 mm, medium 1/16 in, heavy 1/8 in."""
    turn: AmountText | None = None
    """The turn of the cloth at shoulder and side seam; empty takes it from the table."""
    interfaced: bool = True
    """Whether the facing is cut in fusible too."""


def run(pattern: Pattern, context: StepContext, parameters: AllInOneFacingParameters) -> Change:
    """Trace a facing of each part and sew it to neck and armhole."""
    depths = (
        context.positive(parameters.center_depth, "center_depth"),
        context.positive(parameters.side_depth, "side_depth"),
    )
    turn = turn_of_cloth(context, parameters.cloth, parameters.turn, min(depths))
    materials = (CutInstruction("self"), *([CutInstruction("fusible")] if parameters.interfaced else []))
    drafts = tuple(_draft(pattern, part, depths) for part in parameters.parts)
    runs = tuple(draft.run for draft in drafts)
    mates = mated_ends(pattern, runs)
    ends: dict[End, tuple[Traced, bool]] = {}
    for index, one in enumerate(runs):
        first, last = End(index, False), End(index, True)
        meets = meeting(runs, mates, first), meeting(runs, mates, last)
        at_last = keeps_last(pattern, (one,))
        laid = strap_drawn_in(at_home((one,), keeps_last=at_last)[0], turn)
        title = f"{one.title} all-in-one facing"
        making = Making(context.slug, one.word, title, materials, meets, at_last)
        piece = traced((laid,), making, turn, _free_edge(laid, depths))
        _require_wide(piece)
        ends |= {first: (piece, False), last: (piece, True)}
    made = tuple(dict.fromkeys(piece for piece, _ in ends.values()))
    after = with_traced(pattern, context.slug, made, "neatened_edge")
    after = after.with_seams(*seams_between(context.slug, ends, closed_ends(pattern, runs, mates)))
    after = after.with_seams(*shoulder_seams(pattern, context.slug, made))
    notes = tuple(note for one in drafts for note in panels_open(context.step, (one.run,), one.reach))
    return Change(
        after.with_materials({"fusible": "fusible"}) if parameters.interfaced else after, notes=notes
    )


@dataclass(frozen=True, slots=True)
class _Draft:
    """Neck, shoulder and armhole of a part, panels laid together; how far down these are edge to edge, mm."""

    run: FacedRun
    reach: float


def _draft(pattern: Pattern, part: FacedPart, depths: tuple[float, float]) -> _Draft:
    """The edges of a part, its panels laid edge to edge from the traced edges down to the free edge."""
    reach = max(depths)
    run = _run(pattern, part, depths, reach)
    if not run.seams:
        return _Draft(run, reach)
    home = at_home((run,), keeps_last=keeps_last(pattern, (run,)))[0]
    free = _free_edge(home, depths)
    crossings = [found.at_self for seam in home.seams for found in seam.first.intersections(free)]
    reach = max(crossings, default=reach)
    return _Draft(_run(pattern, part, depths, reach), reach)


def _run(pattern: Pattern, part: FacedPart, depths: tuple[float, float], reach: float) -> FacedRun:
    """Neck, shoulder and armhole as one run; StepRefused ``all-in-one-apart`` where they do not follow."""
    asked: list[Asked] = []
    point = part.center
    for edge, faces in ((part.neck, True), (part.shoulder, False), (part.armhole, True)):
        ends = _ends(pattern, edge)
        if not asked and point not in ends:
            raise StepRefused("facing-end-elsewhere", edge=spoken(edge), point=spoken(point))
        if point not in ends:
            raise StepRefused("all-in-one-apart", neck=spoken(part.neck), armhole=spoken(part.armhole))
        asked.append(Asked(edge, point, depths[0] if edge == part.neck else depths[1], faces))
        point = ends[1] if point == ends[0] else ends[0]
    runs = faced_runs(pattern, asked, reach)
    if len(runs) != 1:
        raise StepRefused("all-in-one-apart", neck=spoken(part.neck), armhole=spoken(part.armhole))
    return runs[0]


def _ends(pattern: Pattern, edge: str) -> tuple[str, str]:
    members = require(pattern, edge)
    return pattern.edges[members[0]].start, pattern.edges[members[-1]].end


def _free_edge(run: FacedRun, depths: tuple[float, float]) -> Path:
    """A smooth line from the center to the side, square to both, counter-clockwise as the run."""
    center, side = (run.before, run.after) if run.forward else (run.after, run.before)
    start, leaving = _at(center, depths[0])
    end, arriving = _at(side, depths[1])
    across = end - start
    leaving = leaving if leaving.dot(across) > 0.0 else -leaving
    arriving = arriving if arriving.dot(across) > 0.0 else -arriving
    curve = Path.of(curve_between(start, leaving.direction(), end, arriving.direction()))
    line = Path.line(start - leaving * _BEYOND, start).joined(curve)
    return line if run.forward else line.reversed()


def _at(beside: Beside, depth: float) -> tuple[Point, Point]:
    """The place so far along an edge beside the run, and the direction square to it there."""
    if depth >= beside.path.length - 1.0:
        raise StepRefused(
            "facing-too-deep", depth=depth, length=beside.path.length, edge=spoken(beside.edge.name)
        )
    return beside.path.point_at(depth), beside.path.tangent_at(depth).perpendicular()


def _require_wide(made: Traced) -> None:
    """The facing must hold: its free edge keeps away from neck and armhole."""
    points = made.free.path.flattened(1.0)
    for faced, edge in made.faced:
        if not faced.faces:
            continue
        near = (point for point in points if edge.path.bounds().gap_to(point) < _NARROWEST)
        gap = min((edge.path.nearest(point).gap for point in near), default=_NARROWEST)
        if gap < _NARROWEST:
            raise StepRefused("all-in-one-narrow", edge=spoken(faced.name), gap=gap)


STEP = StepDefinition(
    operation="all_in_one_facing",
    version=1,
    kind="style",
    phase="derived",
    title="All-in-one facing",
    sentence="{parts:{neck} and {armhole}}: {center_depth} deep at the center, {side_depth} at the side",
    parameters=AllInOneFacingParameters,
    run=run,
)
