"""What the parameters of a princess seam mean on a pattern."""

from dataclasses import dataclass

from notchbook.errors import NameLost, StepRefused
from notchbook.geometry import Path, Point, curve_between
from notchbook.pattern import (
    InnerDart,
    Intake,
    Located,
    Pattern,
    Piece,
    child_name,
    locate,
    mouth_of,
    part_name,
    piece_name,
    require,
    require_one,
    spoken,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.splitting import CutEnd, EdgeCut, EdgeNames
from notchbook.recipe import PlaceParameters, StepContext
from notchbook.style.lines.fullness import require_no_fullness
from notchbook.style.lines.princess_parameters import PrincessParameters
from notchbook.style.lines.through_seam import ThroughLine, led_to


@dataclass(frozen=True)
class PrincessGiven:
    """The piece with its darts led to the bust point (``over``; None on a back), where the seam runs, the
    dart that is closed into it, and the names of center and side panel with their roles."""

    piece: Piece
    line: ThroughLine
    over: Point | None
    closes: Intake | None
    hinge: str | None
    names: tuple[str, str]
    roles: tuple[str, str]

    @property
    def between(self) -> tuple[str, str]:
        """The edges or darts between which the seam runs."""
        first, last = (
            end.name if isinstance(end, Intake) else end.located.edge.name
            for end in (self.line.start, self.line.end)
        )
        return first, last


def given_princess(pattern: Pattern, context: StepContext, parameters: PrincessParameters) -> PrincessGiven:
    """The parameters resolved; NameLost where a name is gone, StepRefused ``princess-*`` where they
    contradict."""
    _require_ends(parameters)
    center = _center_edge(pattern, parameters.center)
    piece = pattern.piece_of(center)
    roles = (parameters.center_role, parameters.side_role)
    word = last_word(piece.name)
    center_name, side_name = (piece_name(context.slug, f"{word}_{role}") for role in roles)
    gates = [_gate(pattern, context, piece, place, dart) for place, dart in _ends(parameters)]
    is_right = _lies_between(piece, _edge_of(gates[0]), _edge_of(gates[1]), center)
    panels = ((roles[0], center_name), (roles[1], side_name))
    right, left = panels if is_right else panels[::-1]
    start = _cut_end(gates[0], before=left, after=right)
    end = _cut_end(gates[1], before=right, after=left)
    over = _point(pattern, piece, parameters.bust_point)
    closes = _dart(pattern, piece, parameters.closed_dart)
    inner = _inner_dart(piece, parameters.inner_dart)
    if over is not None:
        led = [dart for dart in (start, end, closes) if isinstance(dart, Intake)]
        piece = led_to(piece, tuple(led), over)
    top = _top(piece, (start, end), inner, (over, parameters.start_angle), is_right=is_right)
    line = ThroughLine(start, end, inner, top, center)
    hinge = None if parameters.hinge is None else require_one(pattern, parameters.hinge, "point")
    return PrincessGiven(piece, line, over, closes, hinge, (center_name, side_name), roles)


def _center_edge(pattern: Pattern, name: str) -> str:
    """An edge of the center panel: of the parts of a divided one any will do, on one piece."""
    members = require(pattern, name)
    if len({pattern.carriers[member] for member in members}) > 1:
        return require_one(pattern, name)
    return members[0]


def _require_ends(parameters: PrincessParameters) -> None:
    for places, dart, which in (
        (parameters.start, parameters.upper_dart, "begins"),
        (parameters.end, parameters.waist_dart, "ends"),
    ):
        if bool(places) == (dart is not None):
            raise StepRefused("princess-one-end", which=which)


def _ends(
    parameters: PrincessParameters,
) -> tuple[tuple[tuple[PlaceParameters, ...], str | None], ...]:
    return ((parameters.start, parameters.upper_dart), (parameters.end, parameters.waist_dart))


def _gate(
    pattern: Pattern,
    context: StepContext,
    piece: Piece,
    places: tuple[PlaceParameters, ...],
    dart: str | None,
) -> Located | Intake:
    """The place or the dart where the seam meets the outline of the piece."""
    if not places:
        return _required_dart(pattern, piece, dart or "")
    found = locate(pattern, context.place(pattern, places[0]))
    wanted = require_one(pattern, places[0].part or places[0].edge)
    if found.edge.name != wanted:
        raise NameLost(
            "style-line-elsewhere",
            name=wanted,
            edge=spoken(places[0].edge),
            found=spoken(found.edge.name),
            wanted=spoken(wanted),
            candidates=(found.edge.name,),
            by="",
        )
    if found.piece != piece.name:
        raise StepRefused("line-between-pieces", first=spoken(found.edge.name), second=spoken(piece.name))
    require_no_fullness(pattern, piece, found.edge.name)
    return found


def _required_dart(pattern: Pattern, piece: Piece, name: str) -> Intake:
    dart = pattern.intakes[require_one(pattern, name, "intake")]
    if pattern.carriers[dart.name] != piece.name:
        raise StepRefused("dart-on-other-piece", intake=spoken(dart.name), piece=spoken(piece.name))
    if dart.kind != "dart":
        raise StepRefused("line-needs-dart", intake=spoken(dart.name))
    return dart


def _dart(pattern: Pattern, piece: Piece, name: str | None) -> Intake | None:
    return None if name is None else _required_dart(pattern, piece, name)


def _inner_dart(piece: Piece, name: str | None) -> InnerDart | None:
    if name is None:
        return None
    found = next((dart for dart in piece.inner_darts if dart.name == name), None)
    if found is None:
        raise NameLost(
            "name-lost",
            name=name,
            candidates=tuple(dart.name for dart in piece.inner_darts),
            by="no step",
            reason="the piece has no double-ended dart of this name",
            wanted="inner dart",
        )
    return found


def _point(pattern: Pattern, piece: Piece, name: str | None) -> Point | None:
    if name is None:
        return None
    found = require_one(pattern, name, "point")
    if found not in piece.points:
        raise StepRefused("princess-point-elsewhere", point=spoken(found), piece=spoken(piece.name))
    return piece.points[found]


def _edge_of(gate: Located | Intake) -> str:
    return gate.first_leg if isinstance(gate, Intake) else gate.edge.name


def _lies_between(piece: Piece, start: str, end: str, edge: str) -> bool:
    """Whether the edge comes after the start and before the end, counter-clockwise: right of the seam."""
    count = len(piece.outline)
    begin = piece.edge_index(start)
    return 0 < (piece.edge_index(edge) - begin) % count < (piece.edge_index(end) - begin) % count


def _cut_end(gate: Located | Intake, before: tuple[str, str], after: tuple[str, str]) -> CutEnd:
    if isinstance(gate, Intake):
        return gate
    word = f"{last_word(gate.edge.name)}_end"
    names = EdgeNames(
        child_name(gate.edge.name, before[0]),
        child_name(gate.edge.name, after[0]),
        part_name(before[1], word),
        part_name(after[1], word),
    )
    return EdgeCut(gate, names)


def _top(
    piece: Piece,
    ends: tuple[CutEnd, CutEnd],
    inner: InnerDart | None,
    aim: tuple[Point | None, float | None],
    *,
    is_right: bool,
) -> Path | None:
    """The way from the place where the seam begins to the first point that it meets.

    It arrives there as the edge of the center panel (right of the seam or left) goes on, or along the middle
    of a double-ended dart.
    """
    start, end = ends
    if isinstance(start, Intake):
        return None
    over, angle = aim
    met, onward = _onward(piece, end, inner, over, is_right=is_right)
    straight, ahead = met - start.located.position, onward - met
    chord = straight.direction()
    # The side panel is round: a way that bends the other way above would make an S of its edge.
    bends_against = (straight.cross(ahead) > 0.0) is not is_right
    arriving = chord if bends_against else ahead.direction()
    leaving = 2.0 * chord - arriving
    if angle is not None:
        along = start.located.edge.path.tangent_at(start.located.distance)
        leaving = along.direction() + 90.0 + angle
    return Path.of(curve_between(start.located.position, leaving, met, arriving))


def _onward(
    piece: Piece, end: CutEnd, inner: InnerDart | None, over: Point | None, *, is_right: bool
) -> tuple[Point, Point]:
    """The first point that the seam meets, and the point toward which it goes on from there."""
    if inner is not None:
        leg = piece.line(inner.center_leg).path
        return (leg.start, leg.end) if over is None else (over, mouth_of(leg)[1])
    if not isinstance(end, Intake):
        raise StepRefused("princess-no-dart", piece=spoken(piece.name))
    first, second = piece.edge(end.first_leg).path, piece.edge(end.second_leg).path
    return first.end if over is None else over, first.start if is_right else second.end
