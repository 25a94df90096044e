"""Laying the wearer's two sides together, where they differ.

Both sides were run from one recipe under the same names. Here the left is reflected, names get
their side, a piece drawn to its fold becomes one whole piece, a pair becomes a left and a right. A piece
that is alike on both sides stays as it is.
"""

from collections.abc import Callable, Collection, Mapping
from dataclasses import replace
from typing import TypeVar

from notchbook.pattern.cut import Notch
from notchbook.pattern.elastic import Elastic
from notchbook.pattern.names import Side, with_side
from notchbook.pattern.operation import Operation, run_together
from notchbook.pattern.pattern import Group, Pattern, frozen_map
from notchbook.pattern.piece import Piece
from notchbook.pattern.place import Place
from notchbook.pattern.seam import EdgeUse, Seam
from notchbook.recipe.alike_pieces import kept_together, names_of_both, serving_both
from notchbook.recipe.sided_pieces import both_sides, center_notches, namer, names_on_folds

_Value = TypeVar("_Value")


def assemble(right: Pattern, left: Pattern) -> Pattern:
    """One pattern of both sides, the left drafted as a right one.

    StepRefused ``fold-sides-differ`` where the halves of a piece do not meet at its fold.
    """
    return _laid_together(right, left, serving_both(right, left))


def unfolded(pattern: Pattern, names: Collection[str]) -> Pattern:
    """The pattern with these pieces, and those that share a group with them, whole or left and right.

    Their names get their side as where the two sides differ; every other piece stays as it is.
    """
    return _laid_together(pattern, pattern, kept_together(pattern, set(pattern.pieces) - set(names)))


def _laid_together(right: Pattern, left: Pattern, alike: frozenset[str]) -> Pattern:
    """Both sides as one pattern; the ``alike`` pieces serve both as they are."""
    on_folds = names_on_folds(right)
    of_both = names_of_both(right, alike)
    between = frozenset(seam.name for seam in right.seams.values() if _between_sides(seam))
    plain = on_folds | of_both | between
    pieces: list[Piece] = []
    for name in dict.fromkeys((*right.pieces, *left.pieces)):
        if name in alike:
            pieces.append(right.pieces[name])
        else:
            pieces.extend(both_sides(right.pieces.get(name), left.pieces.get(name), on_folds))
    sides = (_sided_data(right, "right", plain, of_both), _sided_data(left, "left", plain, of_both))
    halves = (
        piece
        for name, piece in right.pieces.items()
        if piece.cut == "fold" and name in left.pieces and name not in alike
    )
    centers = [notch for half in halves for notch in center_notches(half)]
    notches = _together(*(data.notches for data in sides))
    return Pattern(
        pieces=frozen_map((piece.name, piece) for piece in pieces),
        seams=_together(*(data.seams for data in sides)),
        notches=frozen_map({**notches, **{notch.name: notch for notch in centers}}),
        groups=_together(*(data.groups for data in sides)),
        fates=_together(*(data.fates for data in sides)),
        allowances=_together(*(data.allowances for data in sides)),
        corners=_together(*(data.corners for data in sides)),
        materials=frozen_map({**left.materials, **right.materials}),
        elastics=_sided_elastics(right, left, plain, of_both),
        operations=_operations_of_both(right, left, plain),
        making=right.making or left.making,
    )


def _together(right: Mapping[str, _Value], left: Mapping[str, _Value]) -> Mapping[str, _Value]:
    """The data of both sides; what is plain is told by the right."""
    return frozen_map({**right, **{name: value for name, value in left.items() if name not in right}})


def _sided_data(pattern: Pattern, side: Side, plain: Collection[str], of_both: Collection[str]) -> Pattern:
    """The seams and cut data of one side under their names in the whole; no pieces."""
    name_of = namer(side, plain)
    return Pattern(
        seams=_sided_seams(pattern, name_of, of_both),
        notches=frozen_map(
            (name_of(name), _sided_notch(notch, name_of, of_both)) for name, notch in pattern.notches.items()
        ),
        groups=frozen_map(
            (name_of(name), _sided_group(name, group, side, name_of))
            for name, group in pattern.groups.items()
        ),
        fates=frozen_map(
            (name_of(name), replace(fate, into=tuple(map(name_of, fate.into))))
            for name, fate in pattern.fates.items()
        ),
        allowances=frozen_map((name_of(name), amount) for name, amount in pattern.allowances.items()),
        corners=frozen_map((name_of(name), style) for name, style in pattern.corners.items()),
    )


def _sided_elastics(
    right: Pattern, left: Pattern, plain: Collection[str], of_both: Collection[str]
) -> Mapping[str, Elastic]:
    """An elastic round a limb is there once for each side, but on pieces that serve both; one round the body
    goes over the edges of both sides."""
    found: dict[str, Elastic] = {}
    sides: tuple[tuple[Side, Pattern], ...] = (("right", right), ("left", left))
    for side, pattern in sides:
        name_of = namer(side, plain)
        for elastic in pattern.elastics.values():
            own = replace(elastic, edges=tuple(map(name_of, elastic.edges)))
            if elastic.goes_round == "body":
                own = _run_on(found.get(elastic.name), own)
            elif elastic.name not in of_both:
                own = replace(own, name=with_side(elastic.name, side))
            found[own.name] = own
    return frozen_map(found)


def _operations_of_both(right: Pattern, left: Pattern, plain: Collection[str]) -> Mapping[str, Operation]:
    """Each line of the sewing order once, at the names of both sides."""
    found: dict[str, Operation] = {}
    told = {*right.operations, *left.operations}
    sides: tuple[tuple[Side, Pattern], ...] = (("right", right), ("left", left))
    for side, pattern in sides:
        name_of = namer(side, plain)
        for one in pattern.operations.values():
            at = tuple(map(name_of, one.at))
            after = tuple(name if name in told else name_of(name) for name in one.after)
            found[one.name] = run_together(found.get(one.name), replace(one, at=at, after=after))
    return frozen_map(found)


def _run_on(first: Elastic | None, second: Elastic) -> Elastic:
    """One elastic round the body, over the edges of one side and then of the other."""
    if first is None:
        return second
    edges = tuple(dict.fromkeys((*first.edges, *second.edges)))
    if first.girth is None or second.girth is None:
        return replace(first, edges=edges)
    return replace(first, edges=edges, girth=(first.girth + second.girth) / 2.0)


def _sided_seams(
    pattern: Pattern, name_of: Callable[[str], str], of_both: Collection[str]
) -> Mapping[str, Seam]:
    """A seam between the two sides stays one; every other seam is there once for each side, but on pieces
    that serve both."""
    found: dict[str, Seam] = {}
    for seam in pattern.seams.values():
        name = name_of(seam.name)
        found[name] = replace(
            seam,
            name=name,
            first=tuple(_sided_use(use, name_of, of_both) for use in seam.first),
            second=tuple(_sided_use(use, name_of, of_both) for use in seam.second),
        )
    return frozen_map(found)


def _between_sides(seam: Seam) -> bool:
    return any(use.side != "both" for use in (*seam.first, *seam.second))


def _sided_use(use: EdgeUse, name_of: Callable[[str], str], of_both: Collection[str]) -> EdgeUse:
    if use.edge in of_both:
        return use
    if use.side == "both":
        return EdgeUse(name_of(use.edge), name_of(use.starts_at))
    point = use.starts_at if name_of(use.starts_at) == use.starts_at else with_side(use.starts_at, use.side)
    return EdgeUse(with_side(use.edge, use.side), point)


def _sided_notch(notch: Notch, name_of: Callable[[str], str], of_both: Collection[str]) -> Notch:
    """The notch of one side; on a piece that serves both it serves the seams of both."""
    if notch.name in of_both:
        return notch
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
