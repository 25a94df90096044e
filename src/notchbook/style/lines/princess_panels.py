"""The two panels of a princess seam: their edges, their pieces, the seam between them and the account."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import (
    CutAs,
    Edge,
    Finding,
    Intake,
    Measured,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    Severity,
    child_name,
    part_name,
    spoken,
    worded,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.splitting import EdgeCut, closed_by
from notchbook.recipe import Change, StepContext
from notchbook.style.lines.bust_curve import EasedPair, Rounded, eased_pair
from notchbook.style.lines.clear import edges_met, lost_across
from notchbook.style.lines.division import FACE
from notchbook.style.lines.eased_panel import (
    Closed,
    closed_panel,
    opened_about_hinge,
    over_bust,
    turn_for_1_mm,
)
from notchbook.style.lines.fullness import lies_on
from notchbook.style.lines.inside import Inside, ended_on, moved_inside, shared_inside
from notchbook.style.lines.princess_given import PrincessGiven
from notchbook.style.lines.seams import FaceUse, balance_notches, line_seam, notch_kind
from notchbook.style.lines.through_seam import panels
from notchbook.style.lines.true_across import Beside, true_across
from notchbook.style.lines.truing import LOST_IF_EVENED, smooth_pair, with_round_corners

UPPER_NOTCH, LOWER_NOTCH = "upper_bust_notch", "lower_bust_notch"

IN_SEAM = "it became part of the seam"
CLOSED_INTO_SEAM = "the dart was closed into the seam"


@dataclass(frozen=True)
class PanelShape:
    """One panel as it comes out: run and face from top to bottom, and how its stretches moved."""

    done: Closed
    face: Path
    opened: tuple[Path, ...]

    @property
    def run(self) -> tuple[Edge, ...]:
        """The outline without the seam."""
        return self.done.panel.run

    def place_at(self, *, at_bottom: bool) -> int:
        """Where in the run the edge stands that meets the seam at its bottom or top."""
        return len(self.run) - 1 if self.done.panel.is_right is at_bottom else 0

    def with_beside(self, beside: Beside) -> "PanelShape":
        """The panel with an edge beside the seam, and the seam's own edge, drawn anew."""
        at = self.place_at(at_bottom=beside.at_bottom)
        run = tuple(beside.neighbor if index == at else edge for index, edge in enumerate(self.run))
        panel = replace(self.done.panel, run=run)
        return replace(self, done=replace(self.done, panel=panel), face=beside.face)


@dataclass(frozen=True)
class PrincessShapes:
    """Both panels, and the eased pair of their edges over the bust (None on a back)."""

    center: PanelShape
    side: PanelShape
    pair: EasedPair | None
    ease: float


def princess_shapes(given: PrincessGiven, ease: float) -> PrincessShapes:
    """The panels with the dart closed, their edges fair; StepRefused ``princess-*``."""
    shapes = _untrued(given, ease)
    center, side = _evened(shapes)
    for at_bottom in (True, False):
        center, side = _trued_at(center, side, at_bottom=at_bottom)
    for shape in (center, side):
        met = edges_met(shape.face, shape.run)
        if met or shape.face.self_crossings():
            raise lost_across(given.piece, given.between, met[0] if met else given.piece.name)
    return replace(shapes, center=center, side=side)


def _evened(shapes: PrincessShapes) -> tuple[PanelShape, PanelShape]:
    """Both panels with their seam equally long, ease apart: the shorter one is led on at its bottom.

    Round corners cost the two edges a little length, the sharper ones more: less than a millimeter.
    """
    center, side = shapes.center, shapes.side
    short = center.face.length + shapes.ease - side.face.length
    if short > 0.0:
        return center, _led_on(side, short)
    return _led_on(center, -short), side


def _led_on(shape: PanelShape, by: float) -> PanelShape:
    """The panel with its seam longer at the bottom, while the edge beside it keeps its length."""
    beside = Beside(shape.face, shape.run[shape.place_at(at_bottom=True)], at_bottom=True)
    face, outward = shape.face, beside.outward
    along, away = face.tangent_at(face.length), outward.tangent_at(0.0)
    corner = face.end + along * by
    for _ in range(_LED_ROUNDS):
        corner -= away * (outward.length - outward.with_start(corner).length)
        corner += along * (face.length + by - face.with_end(corner).length)
    return shape.with_beside(beside.with_outward(outward.with_start(corner)))


_LED_ROUNDS = 4
"""Rounds in which a corner settles: each leaves about a tenth of what was off."""


def _trued_at(center: PanelShape, side: PanelShape, *, at_bottom: bool) -> tuple[PanelShape, PanelShape]:
    """The edges beside one end of the seam drawn smooth across it."""
    beside = [
        Beside(one.face, one.run[one.place_at(at_bottom=at_bottom)], at_bottom) for one in (center, side)
    ]
    first, second = true_across(beside[0], beside[1])
    return center.with_beside(first), side.with_beside(second)


def _untrued(given: PrincessGiven, ease: float) -> PrincessShapes:
    center, side = panels(given.piece, given.line)
    names = {edge.name for edge in (*center.run, *side.run)}
    if given.closes is not None and given.closes.first_leg not in names:
        raise StepRefused("princess-dart-twice", intake=spoken(given.closes.name))
    center_done = closed_panel(center, given.closes, None)
    side_done = closed_panel(side, given.closes, given.hinge)
    if given.over is None:
        faces = smooth_pair(center_done.panel.ways, side_done.panel.ways)
        return PrincessShapes(
            PanelShape(center_done, faces[0], center.ways),
            PanelShape(side_done, faces[1], side.ways),
            None,
            0.0,
        )
    pair = eased_pair(
        over_bust(center_done.panel),
        lambda turn: over_bust(opened_about_hinge(side_done, turn).panel),
        given.over,
        ease,
        turn_for_1_mm(side_done, given.over),
    )
    side_done = opened_about_hinge(side_done, pair.turned)
    rests = [
        with_round_corners((bust.below, *one.panel.ways[2:]), LOST_IF_EVENED)
        for bust, one in ((pair.center, center_done), (pair.side, side_done))
    ]
    return PrincessShapes(
        PanelShape(center_done, _over(pair.center, rests[0]), center.ways),
        PanelShape(side_done, _over(pair.side, rests[1]), side.ways),
        pair,
        ease,
    )


def _over(bust: Rounded, rest: Path) -> Path:
    """The whole edge: over the bust, then on to the bottom."""
    return bust.above.joined(bust.within).joined(rest)


def princess_change(
    pattern: Pattern, context: StepContext, given: PrincessGiven, shapes: PrincessShapes
) -> Change:
    """The pattern with the two panels in place of the piece, and the account of its names."""
    center, side, line_splits = _pieces(pattern, given, shapes)
    after = pattern.with_pieces(center, side, without=(given.piece.name,))
    seam, notches = _seam(context, given, shapes)
    return Change(
        after.with_seams(seam).with_notches(*notches),
        splits={given.piece.name: given.names, **_edge_splits(given), **line_splits},
        merges={
            **shapes.center.done.merges,
            **shapes.side.done.merges,
            **_legs_in_seam(given, is_center_right=shapes.center.done.panel.is_right),
        },
        removals=_removals(given),
        notes=_notes(given, shapes),
    )


def _pieces(
    pattern: Pattern, given: PrincessGiven, shapes: PrincessShapes
) -> tuple[Piece, Piece, Mapping[str, tuple[str, ...]]]:
    piece = given.piece
    gone = _gone_inside(given)
    piece = replace(
        piece,
        lines=tuple(line for line in piece.lines if line.name not in gone),
        marks=tuple(mark for mark in piece.marks if mark.name not in gone),
        inner_darts=tuple(dart for dart in piece.inner_darts if dart is not given.line.inner),
    )
    own, others, divided = shared_inside(piece, *_regions(shapes.center))
    splits = {
        name: tuple(child_name(name, given.roles[0 if mine else 1]) for mine in owners)
        for name, owners in divided.items()
    }
    made = []
    for index, (shape, inside) in enumerate(((shapes.center, own), (shapes.side, others))):
        renamed = {name: child_name(name, given.roles[index]) for name in splits}
        panel = _piece(piece, shape, inside, given.names[index], given.roles[index], renamed)
        made.append(replace(panel, intakes=_intakes_on(pattern, panel, renamed)))
    return made[0], made[1], splits


def _regions(shape: PanelShape) -> tuple[tuple[tuple[Edge, ...], ...], tuple[Path, ...]]:
    """The stretches of a panel as they lay, and the seam beside each in the direction of the run."""
    stretches, ways = shape.done.closed.stretches, shape.opened
    parts = [_joined(ways)] if len(stretches) == 1 else [ways[0], _joined(ways[1:])]
    if not shape.done.panel.is_right:
        parts = [part.reversed() for part in reversed(parts)]
    return stretches, tuple(parts)


def _joined(ways: Sequence[Path]) -> Path:
    whole = ways[0]
    for way in ways[1:]:
        whole = whole.joined(way)
    return whole


def _piece(
    piece: Piece, shape: PanelShape, inside: Inside, name: str, role: str, renamed: Mapping[str, str]
) -> Piece:
    panel = shape.done.panel
    run = panel.run
    path = shape.face.reversed() if panel.is_right else shape.face
    path = path.with_start(run[-1].path.end).with_end(run[0].path.start)
    outline = closed_by(run, part_name(name, FACE), path)
    moved = ended_on(moved_inside(inside, shape.done.closed, _regions(shape)[1]), outline, path)
    return replace(
        piece,
        name=name,
        title=panel_title(piece.title, role),
        outline=outline,
        lines=tuple(replace(line, name=renamed.get(line.name, line.name)) for line in moved.lines),
        marks=moved.marks,
        inner_darts=moved.inner_darts,
        cut=_cut_as(piece, outline),
    )


def panel_title(title: str, role: str) -> str:
    """What a panel is called: ``Side front``, ``Bodice side front``; the role stands before front or back."""
    word = role.replace("_", " ")
    garment, _, face = title.rpartition(" ")
    if garment and face in ("front", "back"):
        return f"{garment} {word} {face}"
    return f"{word.capitalize()} {title[:1].lower()}{title[1:]}"


def _intakes_on(pattern: Pattern, panel: Piece, renamed: Mapping[str, str]) -> tuple[Intake, ...]:
    """Those of the intakes of the piece that go on with the panel, on the lines as they are called there."""
    edges = {edge.name for edge in panel.outline}
    return tuple(one.relined(renamed) for one in panel.intakes if lies_on(pattern, one, edges))


def _cut_as(piece: Piece, outline: tuple[Edge, ...]) -> CutAs:
    if piece.cut == "fold" and not any(edge.kind == "fold" for edge in outline):
        return "pair"
    return piece.cut


def _edge_splits(given: PrincessGiven) -> dict[str, tuple[str, ...]]:
    return {
        end.located.edge.name: (end.names.before, end.names.after)
        for end in (given.line.start, given.line.end)
        if isinstance(end, EdgeCut)
    }


def _legs_in_seam(given: PrincessGiven, *, is_center_right: bool) -> dict[str, tuple[str, ...]]:
    """The legs that became edges of the seam: name -> the edge of the panel on whose side it lay."""
    center, side = (part_name(name, FACE) for name in given.names)
    right, left = (center, side) if is_center_right else (side, center)
    merges: dict[str, tuple[str, ...]] = {}
    start, end, inner = given.line.start, given.line.end, given.line.inner
    if isinstance(start, Intake):
        merges |= {start.second_leg: (right,), start.first_leg: (left,)}
    if isinstance(end, Intake):
        merges |= {end.first_leg: (right,), end.second_leg: (left,)}
    if inner is not None:
        merges |= {inner.center_leg: (center,), inner.side_leg: (side,)}
    return merges


def _gone_inside(given: PrincessGiven) -> frozenset[str]:
    """Names of lines and marks that become part of the seam."""
    inner = given.line.inner
    if inner is None:
        return frozenset()
    return frozenset((inner.center_leg, inner.side_leg, inner.upper_point, inner.lower_point))


def _removals(given: PrincessGiven) -> dict[str, str]:
    taken = [end for end in (given.line.start, given.line.end) if isinstance(end, Intake)]
    gone = {name: IN_SEAM for dart in taken for name in (dart.name, dart.point)}
    inner, closes = given.line.inner, given.closes
    if inner is not None:
        gone |= dict.fromkeys((inner.name, inner.upper_point, inner.lower_point), IN_SEAM)
    if closes is not None:
        names = (closes.name, closes.first_leg, closes.second_leg, closes.point)
        gone |= dict.fromkeys(names, CLOSED_INTO_SEAM)
    return gone


def _seam(
    context: StepContext, given: PrincessGiven, shapes: PrincessShapes
) -> tuple[Seam, tuple[Notch, ...]]:
    """The seam walked from its top, the center panel first, and its notches."""
    faces = tuple(
        FaceUse(name, part_name(name, FACE), _top_corner(shape))
        for name, shape in zip(given.names, (shapes.center, shapes.side), strict=True)
    )
    name = part_name(context.slug, f"{last_word(given.piece.name)}_style_line")
    seam = line_seam(name, (faces[0], faces[1]))
    kind = notch_kind(given.piece.name)
    if shapes.pair is None:
        return seam, balance_notches((faces[0], faces[1]), name, kind)
    seam = replace(seam, ease=shapes.ease, ease_between=(UPPER_NOTCH, LOWER_NOTCH))
    notches = []
    for face, over in zip(faces, (shapes.pair.center, shapes.pair.side), strict=True):
        places = {UPPER_NOTCH: over.above.length, LOWER_NOTCH: over.above.length + over.within.length}
        for label, place in places.items():
            at = Place(face.edge, face.starts_at, place)
            notches.append(Notch(part_name(face.part, label), at, kind, name, "ease"))
    return seam, tuple(notches)


def _top_corner(shape: PanelShape) -> str:
    run = shape.done.panel.run
    return run[0].start if shape.done.panel.is_right else run[-1].end


def _notes(given: PrincessGiven, shapes: PrincessShapes) -> tuple[Finding, ...]:
    if shapes.pair is None:
        return ()
    inside = shapes.pair.side.inside
    return (
        worded(
            "princess_seam",
            "princess-bust-point",
            Severity.NOTE,
            Measured(inside),
            piece=given.names[1],
            names=(part_name(given.names[1], FACE),),
            inside=inside,
            side=spoken(given.names[1]),
        ),
    )
