"""A piece taken out of the pattern by name, with all that hangs on it."""

from dataclasses import replace

from notchbook.pattern import Pattern, frozen_map
from notchbook.pattern.elastic_lengths import without_elastics_on
from notchbook.pattern.operation import without_places
from notchbook.pattern.resolve import expand


def without_piece(pattern: Pattern, name: str, reason: str) -> tuple[Pattern, dict[str, str]]:
    """The pattern without the piece, its seams, notches, elastics and cut data, and why each name is gone.

    Groups that held its edges keep their names; what asks for them is told that they are gone.
    """
    piece = pattern.pieces[name]
    own = set(piece.names())
    groups = {group for group in pattern.groups if own & set(expand(pattern, group)[0])}
    touched = own | groups
    seams = tuple(
        seam.name
        for seam in pattern.seams.values()
        if any(use.edge in touched for use in (*seam.first, *seam.second))
    )
    notches = tuple(
        notch.name for notch in pattern.notches.values() if notch.place.edge in touched or notch.seam in seams
    )
    pattern = without_elastics_on(pattern, frozenset(edge.name for edge in piece.outline))
    after = pattern.with_pieces(without=(name,)).with_seams(without=seams).with_notches(without=notches)
    gone = frozenset({*own, *seams})
    after = replace(
        after,
        operations=frozen_map((one.name, one) for one in without_places(after.operations.values(), gone)),
        allowances=frozen_map((edge, one) for edge, one in after.allowances.items() if edge not in touched),
        corners=frozen_map((point, one) for point, one in after.corners.items() if point not in touched),
    )
    return after, dict.fromkeys(sorted({*own, *seams, *notches}), reason)
