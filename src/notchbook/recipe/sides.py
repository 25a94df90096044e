"""Laying the wearer's two sides together, where they differ.

Both sides were run from one recipe under the same names. Here the left is reflected, names get
their side, a piece drawn to its fold becomes one whole piece, a pair becomes a left and a right.
"""

from collections.abc import Callable, Container, Iterable
from dataclasses import replace

from notchbook.errors import StepRefused
from notchbook.geometry import Point, Transform
from notchbook.pattern.cut import Allowance, CornerStyle, Notch
from notchbook.pattern.expectation import Expectation
from notchbook.pattern.finding import Finding
from notchbook.pattern.folding import edges_off_fold, fold_line, fold_points, folds
from notchbook.pattern.names import Side, split_side, spoken, with_side
from notchbook.pattern.pattern import Fate, Group, Pattern, frozen_map
from notchbook.pattern.piece import Edge, InternalLine, Piece
from notchbook.pattern.place import Place
from notchbook.pattern.resolve import expand
from notchbook.pattern.seam import EdgeUse, Seam
from notchbook.units import TOLERANCES

_UPRIGHT = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))
"""The left side is drafted as a right side; across the grain it becomes a left."""


def assemble(right: Pattern, left: Pattern) -> Pattern:
    """One pattern of both sides; pieces that are single and alike on both stay one."""
    shared = _shared_points(right)
    pieces: list[Piece] = []
    for name in dict.fromkeys((*right.pieces, *left.pieces)):
        pieces.extend(_both(right.pieces.get(name), left.pieces.get(name), shared))
    plain = shared | _names_of_alike(right, pieces)
    plain |= {seam.name for seam in right.seams.values() if _between_sides(seam)}
    sides: tuple[tuple[Side, Pattern], ...] = (("right", right), ("left", left))
    seams: dict[str, Seam] = {}
    notches: dict[str, Notch] = {}
    groups: dict[str, Group] = {}
    fates: dict[str, Fate] = {}
    allowances: dict[str, Allowance] = {}
    corners: dict[str, CornerStyle] = {}
    for side, pattern in sides:
        name_of = _namer(side, plain)
        seams.update(_sided_seams(pattern, side, name_of))
        notches.update((name_of(n.name), _sided_notch(n, name_of)) for n in pattern.notches.values())
        groups.update((name_of(n), _sided_group(n, g, side, name_of)) for n, g in pattern.groups.items())
        fates.update(
            (name_of(n), replace(f, into=tuple(map(name_of, f.into)))) for n, f in pattern.fates.items()
        )
        allowances.update((name_of(n), a) for n, a in pattern.allowances.items())
        corners.update((name_of(n), c) for n, c in pattern.corners.items())
    for name, piece in right.pieces.items():
        if piece.cut == "fold" and name in left.pieces:
            notches.update((notch.name, notch) for notch in _center_notches(piece))
    return Pattern(
        pieces=frozen_map((piece.name, piece) for piece in pieces),
        seams=frozen_map(seams),
        notches=frozen_map(notches),
        groups=frozen_map(groups),
        fates=frozen_map(fates),
        allowances=frozen_map(allowances),
        corners=frozen_map(corners),
        materials=right.materials,
    )


def assemble_expectations(
    right: Iterable[Expectation], left: Iterable[Expectation], known: Container[str]
) -> tuple[Expectation, ...]:
    """The closures of both sides: a length taken twice becomes right plus left.

    ``known`` are the names of the whole pattern. What belongs to both sides, such as a center on the
    fold, keeps its name there, and a length that is measured on nothing else is promised once.
    """
    others = {promise.name: promise for promise in left}
    found: list[Expectation] = []
    for promise in right:
        sided = _sided_promise(promise, "right", known)
        other = _sided_promise(others.get(promise.name, promise), "left", known)
        if sided.parts == promise.parts:
            found.append(promise)
        elif promise.times % 2 == 0:
            found.append(
                replace(
                    promise,
                    names=(*sided.names, *other.names),
                    chains=(*sided.chains, *other.chains),
                    times=promise.times // 2,
                    body=(promise.body + other.body) / 2,
                    ease=(promise.ease + other.ease) / 2,
                )
            )
        else:
            found.extend((sided, other))
    return tuple(found)


def sided_note(note: Finding, side: Side, known: Container[str]) -> Finding:
    """What a step said of one side, under the names (``known``) of the whole pattern.

    A position on the left is left out: there the drawing is reflected.
    """

    def named(name: str | None) -> str | None:
        sided = None if name is None or split_side(name)[1] != "both" else with_side(name, side)
        return sided if sided in known else name

    return replace(
        note,
        message=f"{note.message} (The wearer's {side}.)",
        piece=named(note.piece),
        where=named(note.where),
        position=note.position if side == "right" else None,
        names=tuple(named(name) or name for name in note.names),
    )


def _sided_promise(promise: Expectation, side: Side, known: Container[str]) -> Expectation:
    def named(name: str) -> str:
        return name if name in known else with_side(name, side)

    return replace(
        promise,
        name=with_side(promise.name, side),
        names=tuple(map(named, promise.names)),
        chains=tuple(tuple(map(named, chain)) for chain in promise.chains),
    )


def _both(right: Piece | None, left: Piece | None, shared: frozenset[str]) -> list[Piece]:
    if right is None or left is None:
        only = right or left
        side: Side = "right" if right is not None else "left"
        return [_sided(only, side, shared)] if only is not None else []
    if right.cut == "fold":
        return [_whole(right, left, shared)]
    if right.cut == "single" and right == left:
        return [right]
    return [_sided(right, "right", shared), _sided(left, "left", shared)]


def _sided(piece: Piece, side: Side, shared: frozenset[str]) -> Piece:
    name_of = _namer(side, shared)
    placed = piece.transformed(_UPRIGHT) if side == "left" else piece
    return replace(placed.renamed(name_of), cut="single", side=side)


def _whole(right: Piece, left: Piece, shared: frozenset[str]) -> Piece:
    """The whole piece of two halves drawn to a fold; their folds must be the same line."""
    fold_right, fold_left = fold_line(right), fold_line(left)
    gap = max(fold_right.start.distance_to(fold_left.start), fold_right.end.distance_to(fold_left.end))
    if gap > TOLERANCES.closure:
        raise StepRefused(
            "fold-sides-differ",
            piece=spoken(right.name),
            right=fold_right.length,
            left=fold_left.length,
            gap=gap,
        )
    mirror = Transform.reflection(fold_right.start, fold_right.end)
    half = right.renamed(_namer("right", shared))
    other = left.transformed(mirror).renamed(_namer("left", shared))
    centers = tuple(InternalLine(fold.name, fold.path, "match") for fold in folds(right))
    return replace(
        half,
        name=right.name,
        outline=_snapped(list(edges_off_fold(half)), list(edges_off_fold(other))),
        intakes=(*half.intakes, *other.intakes),
        lines=(*half.lines, *other.lines, *centers),
        marks=(*half.marks, *other.marks),
        inner_darts=(*half.inner_darts, *other.inner_darts),
        cut="single",
    )


def _center_notches(half: Piece) -> tuple[Notch, Notch]:
    """Notches at both ends of what was the fold: a whole piece needs its center marked."""
    run, around = folds(half), edges_off_fold(half)
    first, second = (
        Notch(f"{point}_notch", Place(with_side(edge.name, "right"), point, 0.0), purpose="center")
        for edge, point in ((around[-1], run[0].start), (around[0], run[-1].end))
    )
    return first, second


def _snapped(first: list[Edge], second: list[Edge]) -> tuple[Edge, ...]:
    """Two runs of edges laid end to end, the second snapped to the ends of the first."""
    head = replace(second[0], path=second[0].path.with_start(first[-1].path.end), start=first[-1].end)
    second = [head, *second[1:]]
    tail = replace(second[-1], path=second[-1].path.with_end(first[0].path.start), end=first[0].start)
    return (*first, *second[:-1], tail)


def _is_whole(piece: Piece) -> bool:
    return any(edge.name.endswith(("@left", "@right")) for edge in piece.outline)


def _shared_points(pattern: Pattern) -> frozenset[str]:
    """Names that both halves of a piece on the fold share: its own and the ends of its fold."""
    found: set[str] = set()
    for piece in pattern.pieces.values():
        if piece.cut == "fold":
            found.add(piece.name)
            found |= fold_points(piece) | {fold.name for fold in folds(piece)}
    return frozenset(found)


def _namer(side: Side, plain: Iterable[str]) -> Callable[[str], str]:
    kept = frozenset(plain)
    return lambda name: name if name in kept else with_side(name, side)


def _sided_seams(pattern: Pattern, side: Side, name_of: Callable[[str], str]) -> dict[str, Seam]:
    """A seam between the two sides stays one; every other seam is there once for each side."""
    found: dict[str, Seam] = {}
    for seam in pattern.seams.values():
        name = seam.name if _between_sides(seam) else with_side(seam.name, side)
        found[name] = replace(
            seam,
            name=name,
            first=tuple(_sided_use(use, name_of) for use in seam.first),
            second=tuple(_sided_use(use, name_of) for use in seam.second),
        )
    return found


def _between_sides(seam: Seam) -> bool:
    return any(use.side != "both" for use in (*seam.first, *seam.second))


def _sided_use(use: EdgeUse, name_of: Callable[[str], str]) -> EdgeUse:
    if use.side == "both":
        return EdgeUse(name_of(use.edge), name_of(use.starts_at))
    point = use.starts_at if name_of(use.starts_at) == use.starts_at else with_side(use.starts_at, use.side)
    return EdgeUse(with_side(use.edge, use.side), point)


def _sided_notch(notch: Notch, name_of: Callable[[str], str]) -> Notch:
    place = notch.place
    moved = Place(
        name_of(place.edge),
        name_of(place.from_point),
        place.amount,
        place.measure,
        None if place.notch is None else name_of(place.notch),
    )
    seam = None if notch.seam is None else name_of(notch.seam)
    return replace(notch, name=name_of(notch.name), place=moved, seam=seam)


def _sided_group(name: str, group: Group, side: Side, name_of: Callable[[str], str]) -> Group:
    """The group of one side; on the left the outline runs the other way, where it was reflected."""
    members = tuple(name_of(member) for member in group.members)
    reflected = side == "left" and name_of(name) != name
    return replace(group, members=members[::-1] if reflected else members)


def _names_of_alike(right: Pattern, pieces: Iterable[Piece]) -> frozenset[str]:
    """The names on pieces that are one for both sides, with the groups and notches on them."""
    alike = [piece.name for piece in pieces if piece.side == "both" and not _is_whole(piece)]
    plain = {part for name in alike for part in right.pieces[name].names()}
    for name, group in right.groups.items():
        if set(expand(right, name)[0]) <= plain and group.members:
            plain.add(name)
    plain |= {notch.name for notch in right.notches.values() if notch.place.edge in plain}
    return frozenset(plain)
