"""What lies at the neck of a garment: its neck edges, the collars and hoods sewn to them, what is near."""

from collections.abc import Sequence

from notchbook.pattern import EdgeUse, Pattern, run_of, split_side
from notchbook.pattern.names import instance_of, last_word
from notchbook.pattern.resolve import expand
from notchbook.pattern.sewn import Located
from notchbook.style.closures.figures import NEAR_NECK


def lies_at_neck(pattern: Pattern, found: Located) -> bool:
    """Whether the place lies at the neck: on a neck edge or near one, or on a piece that is sewn to a neck.

    A neck edge is one that is called so or is sewn in a neck seam. Of a hood, a collar or a stand every edge
    counts, and the pieces that were made with it.
    """
    necks = _called_neck(pattern)
    at_neck = necks | _sewn_at_neck(pattern, necks)
    if found.edge.name in at_neck:
        return True
    piece = pattern.pieces[found.piece]
    if _is_hood(piece.name) or _is_collar(pattern, piece.name, necks, at_neck):
        return True
    near = [edge for edge in piece.outline if edge.name in at_neck]
    return any(edge.path.nearest(found.position).gap < NEAR_NECK.value for edge in near)


def _called_neck(pattern: Pattern) -> frozenset[str]:
    """The living edges that are called neck, or are a part of what is."""
    called = [name for name in (*pattern.edges, *pattern.groups) if "neck" in _words(name)]
    return frozenset(
        member for name in called for member in expand(pattern, name)[0] if member in pattern.edges
    )


def _words(name: str) -> list[str]:
    return split_side(name)[0].split("/")[1:]


def _sewn_at_neck(pattern: Pattern, necks: frozenset[str]) -> frozenset[str]:
    """The edges of all seams of which one side is a neck for the most part: a front edge that is faced
    together with its neck is none."""
    found: set[str] = set()
    for seam in pattern.seams.values():
        if any(_is_neck_run(pattern, run, necks) for run in (seam.first, seam.second)):
            found |= {step.edge.name for run in (seam.first, seam.second) for step in run_of(pattern, run)}
    return frozenset(found)


def _is_neck_run(pattern: Pattern, run: Sequence[EdgeUse], necks: frozenset[str]) -> bool:
    edges = [step.edge for step in run_of(pattern, tuple(run))]
    neck = sum(edge.length for edge in edges if edge.name in necks)
    return neck > sum(edge.length for edge in edges) / 2.0


def _is_hood(piece: str) -> bool:
    return "hood" in last_word(split_side(piece)[0]).split("_")


def _is_collar(pattern: Pattern, piece: str, necks: frozenset[str], at_neck: frozenset[str]) -> bool:
    """Whether the piece, or one that its step made with it, is sewn to a neck and has none itself."""
    if any(edge.name in necks for edge in pattern.pieces[piece].outline):
        return False
    made_with = [one for one in pattern.pieces.values() if instance_of(one.name) == instance_of(piece)]
    return any(
        any(edge.name in at_neck for edge in one.outline)
        and not any(edge.name in necks for edge in one.outline)
        for one in made_with
    )
