"""The lines at biceps and elbow on the two pieces of a sleeve."""

from dataclasses import replace

from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import InternalLine, Piece, child_name, part_name
from notchbook.style.sleeves.found import FoundSleeve
from notchbook.style.sleeves.two_piece.folds import Folds
from notchbook.style.sleeves.two_piece.seam_lines import level_between

TURNED_OVER = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))
"""The under sleeve lies face down below the top one; face up it is its mirror image."""


def with_levels(
    sleeve: FoundSleeve, folds: Folds, top: Piece, under: Piece, laid: tuple[Transform, Transform]
) -> tuple[Piece, Piece, float]:
    """Both pieces with their levels, and by how much the elbow is wider than it was, mm.

    ``laid`` are the motions of what is laid under in front and behind.
    """
    biceps, elbow = sleeve.name("biceps_line"), sleeve.name("elbow_line")
    seams = {piece.name: _seams(piece) for piece in (top, under)}
    whole = sleeve.piece.line(biceps).path
    cuts = [whole.intersections(seam)[0].at_self for seam in seams[top.name]]
    parts = (
        ("under_back", whole.between(0.0, cuts[0]).transformed(laid[1])),
        ("top", whole.between(*cuts)),
        ("under_front", whole.between(cuts[1], whole.length).transformed(laid[0])),
    )
    found = {role: InternalLine(child_name(biceps, role), path) for role, path in parts}
    way = ((folds.hem - folds.elbow).unit() + Point(0.0, -1.0)).unit().perpendicular()
    across: dict[str, InternalLine] = {}
    for piece, role, motion in ((top, "top", Transform.identity()), (under, "under", TURNED_OVER)):
        at = motion.apply(folds.elbow - way), motion.apply(folds.elbow + way)
        path = level_between(*seams[piece.name], at)
        across[role] = InternalLine(child_name(elbow, role), path)
    now = sum(line.path.length for line in across.values())
    return (
        replace(top, lines=(found["top"], across["top"])),
        replace(under, lines=(found["under_back"], found["under_front"], across["under"])),
        now - sleeve.piece.line(elbow).path.length,
    )


def _seams(piece: Piece) -> tuple[Path, Path]:
    """The seams of a piece at the hind arm and at the forearm."""
    names = (part_name(piece.name, "hind_arm_seam"), part_name(piece.name, "forearm_seam"))
    return piece.edge(names[0]).path, piece.edge(names[1]).path
