"""Laying the pieces of one view together: each beside the one that it is sewn to."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from notchbook.errors import NotchbookError
from notchbook.geometry import Path, Point, Transform
from notchbook.output.flat.laid import laid_places, laying
from notchbook.pattern import EdgeUse, Pattern, Piece, run_of
from notchbook.pattern.names import last_word, split_side
from notchbook.pattern.sewn import Directed

Placing = Callable[[Point], Point]
"""Where a place of a piece lies in the view."""

_ALIKE = 0.03
"""Seam runs that differ by a larger share are gathered: the piece widens from the seam on."""

_FADES = 260.0
"""mm over which a gathered piece comes back to its own width."""

_CENTERS = frozenset({"center_front", "center_back"})

_STEP = 0.5

_UNDERARM = 0.4
"""Share of the seam of a raglan, from the side, over which cap and armhole part under the arm. Own judgment.
"""

_PLACES = 40
"""Parts of a seam between which a bent piece is moved evenly."""


@dataclass(frozen=True, slots=True)
class SewnSide:
    """The part of a seam's run that lies on one piece, as a chain of places in the piece's frame with its
    folds laid, and whether the run has other pieces too."""

    run: Path
    is_part: bool

    @property
    def start(self) -> Point:
        """Where the run begins."""
        return self.run.start

    @property
    def end(self) -> Point:
        """Where it ends."""
        return self.run.end


@dataclass(frozen=True, slots=True)
class _Joint:
    """Two pieces along one seam: the side that lies, and the side of the piece that joins it; the x of the
    center of the body on that piece, where it reaches it: the center stays upright."""

    lying: SewnSide
    joining: SewnSide
    is_waist: bool
    center: float | None
    is_raglan: bool = False
    lying_uses: tuple[EdgeUse, ...] = ()

    @property
    def differs(self) -> bool:
        """Whether one side is gathered into the other."""
        lengths = self.lying.run.length, self.joining.run.length
        return abs(lengths[0] - lengths[1]) > _ALIKE * max(lengths)

    @property
    def looseness(self) -> int:
        """How little the seam says of the place: 0 for one of like lengths from end to end."""
        return self.is_waist + 2 * self.differs + 4 * (self.lying.is_part or self.joining.is_part)

    def placing(self, lying: Placing) -> Placing:
        """Turned to the piece that lies along the seam; bent to it where the center stays upright; hung from
        the end nearer the center where one of them is only a part of the run."""
        start, end = lying(self.lying.start), lying(self.lying.end)
        near, there = min(
            ((start, self.joining.start), (end, self.joining.end)), key=lambda pair: abs(pair[0].x)
        )
        aside = near.x - there.x if self.center is None else -self.center
        hung = Transform.translation(aside, near.y - there.y)
        if self.lying.is_part or self.joining.is_part:
            return hung.apply
        if self.is_raglan and self.center is None:
            return self._along_raglan(lying).apply
        if self.center is not None or self.is_waist or self.differs:
            return _bent(self, hung, lying)
        turned = Transform.carrying(self.joining.start, self.joining.end, start, end)
        return _bent(self, turned, lying)

    def _along_raglan(self, lying: Placing) -> Transform:
        """Half a raglan laid to the line from armhole to neck; under the arm cap and armhole part."""
        own, mate = self.joining.run, self.lying.run
        ends = [lying(place) for place in (mate.point_at(_UNDERARM * mate.length), mate.end)]
        return Transform.carrying(own.point_at(_UNDERARM * own.length), own.end, *ends)


def _bent(joint: _Joint, base: Transform, lying: Placing) -> Placing:
    """Each place moved as the place of the seam beside it is, so that the seam lies on its mate. What hangs
    from a waist or is gathered comes back to its own shape away from the seam."""
    shares = [index / _PLACES for index in range(_PLACES + 1)]
    own = [base.apply(joint.joining.run.point_at(share * joint.joining.run.length)) for share in shares]
    mate = [lying(joint.lying.run.point_at(share * joint.lying.run.length)) for share in shares]
    span = own[-1] - own[0]
    lies = abs(span.x) >= abs(span.y)
    moves = [
        (here.x if lies else here.y, here.y if lies else here.x, there - here)
        for here, there in zip(own, mate, strict=True)
    ]
    moves.sort(key=lambda one: one[0])
    fades = joint.differs or joint.is_waist

    def placed_at(place: Point) -> Point:
        there = base.apply(place)
        along, across = (there.x, there.y) if lies else (there.y, there.x)
        level, move = _between(moves, along)
        share = max(0.0, 1.0 - abs(across - level) / _FADES) if fades else 1.0
        return there + move * share

    return placed_at


def _between(moves: Sequence[tuple[float, float, Point]], along: float) -> tuple[float, Point]:
    """The level of the seam and its move here, between the two nearest places of it."""
    before = moves[0]
    for one in moves:
        if one[0] >= along:
            span = one[0] - before[0]
            share = min(max((along - before[0]) / span if span > 0.0 else 0.0, 0.0), 1.0)
            return before[1] + share * (one[1] - before[1]), before[2].lerp(one[2], share)
        before = one
    return before[1], before[2]


def placed(
    pattern: Pattern, pieces: Sequence[Piece], loose: frozenset[str] = frozenset()
) -> Mapping[str, Placing]:
    """For each piece its placing in the view, whose center line is x = 0; pieces that no seam leads to are
    left out. The center of ``loose`` pieces lies on the other side of the body: they hang by their seams."""
    if not pieces:
        return {}
    names = {piece.name for piece in pieces}
    root = max((piece for piece in pieces if piece.name not in loose), key=_root_rank, default=pieces[0])
    found: dict[str, Placing] = {root.name: Transform.translation(-center_x(root), 0.0).apply}
    joints = list(_joints(pattern, names, loose))
    while following := _next(joints, found):
        name, here, joint = following
        whole = _with_whole_run(pattern, joint, found)
        found[name] = joint.placing(found[here]) if whole is None else whole.placing(lambda place: place)
    return found


def _with_whole_run(pattern: Pattern, joint: _Joint, found: Mapping[str, Placing]) -> _Joint | None:
    """The joint to all pieces along the run that the piece is sewn to, as they lie in the view; None where it
    is sewn to one, or some of them do not lie yet."""
    names = pieces_of(pattern, joint.lying_uses)
    if joint.joining.is_part or len(names) < 2 or not set(names) <= set(found):
        return None
    sides = [(found[name], sewn_side(pattern, joint.lying_uses, name)) for name in names]
    places = [
        placing(place)
        for placing, side in sides
        if side is not None
        for place in (side.start, *(one.end for one in side.run.segments))
    ]
    kept = [places[0], *(place for before, place in pairwise(places) if before.distance_to(place) > _STEP)]
    return replace(joint, lying=SewnSide(Path.polyline(kept), False)) if len(kept) > 1 else None


def has_center(piece: Piece) -> bool:
    """Whether the piece has a center line, as a fold or a seam."""
    return any(_is_center(edge.name, edge.kind) for edge in piece.outline)


def _center_of(piece: Piece) -> float | None:
    return center_x(piece) if has_center(piece) else None


def center_x(piece: Piece) -> float:
    """Where the center of the body lies in the frame of the piece: the upper end of its center line or of its
    crotch seam, else 0."""
    ends = [
        place
        for edge in piece.outline
        if _is_center(edge.name, edge.kind) or "crotch" in edge.name
        for place in (edge.path.start, edge.path.end)
    ]
    return max(ends, key=lambda place: place.y).x if ends else 0.0


def _is_center(edge: str, kind: str) -> bool:
    return kind == "fold" or bool(set(split_side(edge)[0].split("/")) & _CENTERS)


def _root_rank(piece: Piece) -> tuple[bool, bool, float]:
    """A piece with a center and a neck comes before others, then the highest."""
    words = {split_side(last_word(edge.name))[0] for edge in piece.outline}
    return has_center(piece), "neck" in words, piece.bounds.height


def _next(
    joints: Sequence[tuple[str, str, _Joint]], found: Mapping[str, Placing]
) -> tuple[str, str, _Joint] | None:
    """A piece that is sewn to one that lies already, that one, and how they meet: the truest joint first."""
    open_joints = [one for one in joints if one[1] in found and one[0] not in found]
    return min(open_joints, key=lambda one: one[2].looseness, default=None)


def _joints(pattern: Pattern, names: set[str], loose: frozenset[str]) -> Iterator[tuple[str, str, _Joint]]:
    """For each seam each piece of the view that could be laid against another, which, and how they meet."""
    centers = {name: None if name in loose else _center_of(pattern.pieces[name]) for name in names}
    for under, over, own_side, other_side in laid_on(pattern):
        if {under, over} <= names:
            yield under, over, _Joint(other_side, own_side, False, None)
    for seam in pattern.seams.values():
        if any(use.side != "both" for use in (*seam.first, *seam.second)):
            continue  # it joins the wearer's sides, or a band that goes round
        for own, other in ((seam.first, seam.second), (seam.second, seam.first)):
            for piece in names & set(pieces_of(pattern, other)):
                for here in names & set(pieces_of(pattern, own)) - {piece}:
                    lying, joining = sewn_side(pattern, own, here), sewn_side(pattern, other, piece)
                    if lying is not None and joining is not None:
                        is_waist = seam.allowance_class == "waist"
                        is_raglan = seam.allowance_class == "armhole"
                        yield piece, here, _Joint(lying, joining, is_waist, centers[piece], is_raglan, own)


def laid_on(pattern: Pattern) -> Iterator[tuple[str, str, SewnSide, SewnSide]]:
    """The piece that an operation lays under another, and that one, with the line on each between the points
    that are laid on each other: the side piece of a slanted pocket."""
    for one in pattern.operations.values():
        points = [name for name in one.at if pattern.index.get(name) == "point"]
        for at in range(0, len(points) - 3, 4):
            under, over = points[at : at + 4 : 2], points[at + 1 : at + 4 : 2]
            carriers = [{pattern.carriers[name] for name in names} for names in (under, over)]
            if all(len(pieces) == 1 for pieces in carriers):
                joining, lying = (_between_points(pattern, names) for names in (under, over))
                yield carriers[0].pop(), carriers[1].pop(), joining, lying


def _between_points(pattern: Pattern, names: Sequence[str]) -> SewnSide:
    piece = pattern.piece_of(names[0])
    laid = laying(piece, center_x(piece))
    start, end = (laid(piece.points[name]) for name in names)
    return SewnSide(Path.line(start, end), False)


def pieces_of(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> tuple[str, ...]:
    """The pieces that a run passes over."""
    return tuple(dict.fromkeys(pattern.carriers[step.edge.name] for step in _steps(pattern, uses)))


def sewn_side(pattern: Pattern, uses: tuple[EdgeUse, ...], piece: str) -> SewnSide | None:
    """The part of the run that lies on the piece."""
    steps = _steps(pattern, uses)
    own = [step for step in steps if pattern.carriers[step.edge.name] == piece]
    if not own:
        return None
    of_piece = pattern.pieces[piece]
    laid = laying(of_piece, center_x(of_piece))
    places = [place for step in own for place in laid_places(step.path, laid, _STEP)]
    kept = [places[0]]
    for place in places[1:]:
        if place.distance_to(kept[-1]) > _STEP:
            kept.append(place)
    if len(kept) == 1:
        return None
    return SewnSide(Path.polyline(kept), len(own) < len(steps))


def _steps(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> tuple[Directed, ...]:
    try:
        return run_of(pattern, uses)
    except NotchbookError:
        return ()
