"""Hems as tasks: those that seams join end to end are turned up in one."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from notchbook.finish.sewing.joints import Joints
from notchbook.finish.sewing.stages import is_lining
from notchbook.finish.sewing.task import Task, key_of
from notchbook.pattern import Edge, Operation, Pattern, Piece
from notchbook.pattern.hems import given_hems
from notchbook.pattern.names import last_word
from notchbook.pattern.operation import laid_layers, listed
from notchbook.pattern.resolve import expand
from notchbook.pattern.seam import TURNED_SEAM

_HEMMED = "_hemmed"
"""How the operation of a step is called that turns up a hem: ``pocket_hemmed``."""

_SLEEVE = "sleeve"

_BEFORE = frozenset({"hung", "miter"})
"""How the operations of steps are called that come before the hem: cloth on the bias hangs out, and the
miters of its corners are sewn."""


@dataclass(frozen=True, slots=True)
class _Hem:
    """What is hemmed of one piece."""

    piece: Piece
    edges: tuple[Edge, ...]

    @property
    def ends(self) -> frozenset[str]:
        return frozenset(point for edge in self.edges for point in (edge.start, edge.end))


def hem_tasks(pattern: Pattern, joints: Joints) -> Iterator[Task]:
    """The hems that meet at seams, after the seams that end at them.

    An edge that is sewn to another is no hem, and one that a step hems by an operation of its own is told by
    that. Made pieces such as facings are hemmed apart from what they lie on, and so is another material.
    """
    for run in _runs(list(_hems(pattern)), joints):
        ends = frozenset(point for hem in run for point in hem.ends)
        after = frozenset(key_of(seam) for point in ends for seam in joints.at(point))
        after |= {one.name for one in pattern.operations.values() if _comes_before(pattern, one, run)}
        titles = tuple(dict.fromkeys(hem.piece.title.lower() for hem in run))
        edges = tuple(edge.name for hem in run for edge in hem.edges)
        key = f"{key_of(run[0].piece.name)}/hem_line"
        text = _text(pattern, run[0].piece, titles) + _felled(pattern, run, joints)
        yield Task(key, "hems", text, edges, after)


def _comes_before(pattern: Pattern, operation: Operation, run: Sequence[_Hem]) -> bool:
    """Whether the line works on a piece of the run, or on an edge of it, before its hem is turned up."""
    if last_word(operation.name) not in _BEFORE:
        return False
    at = {pattern.carriers.get(name, name) for name in operation.at}
    return any(hem.piece.name in at for hem in run)


def _text(pattern: Pattern, piece: Piece, titles: Sequence[str]) -> str:
    """Cloth is turned up; leather is glued up."""
    making = pattern.making
    if making is not None and making.material in _materials(piece):
        return f"Turn the hem of the {listed(titles)} up once and glue it; air the room while the glue dries"
    return f"Turn up the hem of the {listed(titles)}"


def _felled(pattern: Pattern, run: Sequence[_Hem], joints: Joints) -> str:
    """To what the hem is felled: that of a facing to the garment, that of a lining with sleeves to what it
    lines, so that it cannot hang out; a lining without sleeves hangs free (common practice, no source)."""
    piece = run[0].piece
    if is_lining(piece.name):
        sleeved = [name for name in pattern.pieces if is_lining(name) and _SLEEVE in last_word(name)]
        what = "sleeve" if piece.name in sleeved else "garment"
        return f" and fell it to the hem of the {what}, with a little length to spare" if sleeved else ""
    met = {name for hem in run for end in hem.ends for name in joints.at(end) if name in pattern.seams}
    is_faced = any(pattern.seams[name].seam_class == TURNED_SEAM for name in met)
    return " and fell it to the hem of the garment" if is_faced and piece.rule is not None else ""


def _hems(pattern: Pattern) -> Iterator[_Hem]:
    sewn = {
        edge
        for seam in pattern.seams.values()
        for use in (*seam.first, *seam.second)
        for edge in expand(pattern, use.edge)[0]
    }
    told = {at for one in pattern.operations.values() if one.name.endswith(_HEMMED) for at in one.at}
    given = given_hems(pattern)
    layers = laid_layers(pattern.operations.values())
    for piece in (piece for name, piece in pattern.pieces.items() if name not in layers):
        edges = tuple(
            edge
            for edge in piece.outline
            if (edge.kind == "hem" or edge.name in given) and edge.name not in sewn | told
        )
        if edges:
            yield _Hem(piece, edges)


def _runs(hems: list[_Hem], joints: Joints) -> Iterator[list[_Hem]]:
    """The hems, those together that seams lead to from each other."""
    while hems:
        run, waiting = [], [hems.pop(0)]
        while waiting:
            one = waiting.pop(0)
            run.append(one)
            met = {point for end in one.ends for point in joints.meets(end)}
            found = [hem for hem in hems if hem.ends & met and _alike(hem.piece, one.piece)]
            hems = [hem for hem in hems if hem not in found]
            waiting.extend(found)
        yield run


def _alike(first: Piece, second: Piece) -> bool:
    return first.rule == second.rule and _materials(first) == _materials(second)


def _materials(piece: Piece) -> frozenset[str]:
    return frozenset(told.material for told in piece.instructions if told.material != "fusible")
