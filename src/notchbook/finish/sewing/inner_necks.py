"""The inner layer of a collar at the neck: sewn to a lining where there is one, else stitched down over the
seam of the outer layer (common practice, no source)."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace

from notchbook.finish.sewing.facings import free_edges
from notchbook.finish.sewing.stages import is_lining
from notchbook.finish.sewing.task import Task, after_renamed, key_of
from notchbook.pattern import EdgeUse, Operation, Pattern, Seam
from notchbook.pattern.names import instance_of
from notchbook.pattern.operation import listed
from notchbook.pattern.resolve import expand
from notchbook.pattern.seam import TURNED_SEAM

_TO_LINING = "Sew the {inner} to the {lining}: {word}"
_LAID = "Lay the neck seam of the {lining} on that of the {garment} and sew their allowances together"

_TRIMMED = (
    "Trim the allowances of the neck in steps, clip them to the stitches and press them into the {collar}"
)

_AFTER_SEAM = 2
"""A rank above that of the seams at the neck, below that of what steps tell of it."""

_AFTER_TURNING = 6
"""After what steps tell of the neck: their lines have rank 5."""


@dataclass(frozen=True, slots=True)
class InnerNeck:
    """An inner layer: its seam, that of the outer layer at the same edges, and what closes it: the seam of a
    lining at these edges, or the line of a step."""

    outer: Seam
    inner: Seam
    closed_by: Seam | Operation


def inner_necks(pattern: Pattern) -> Iterator[InnerNeck]:
    """The inner layers of the pattern's collars that are closed by a lining or a facing, or else by a line of
    their step."""
    at_edges: dict[frozenset[str], list[Seam]] = {}
    for seam in pattern.seams.values():
        if seam.seam_class == TURNED_SEAM and seam.allowance_class == "neckline":
            at_edges.setdefault(frozenset(_edges(pattern, seam.second)), []).append(seam)
    for seams in at_edges.values():
        steps_there = Counter(instance_of(seam.name) for seam in seams)
        alone = [seam for seam in seams if steps_there[instance_of(seam.name)] == 1]
        faces = [seam for seam in alone if _lines(pattern, seam)]
        layers = [seam for seam in seams if seam not in faces]
        if len(layers) == 2:
            outer, inner = layers
            closed_by = next(iter(faces), None) or _stitched_down(pattern, outer, inner)
            if closed_by is not None:
                yield InnerNeck(outer, inner, closed_by)


def closed_with_necks(pattern: Pattern, tasks: list[Task]) -> list[Task]:
    """The tasks, as inner layers at the neck ask: what a step stitches down is no seam of its own."""
    by_key = {task.key: task for task in tasks}
    renamed: dict[str, str] = {}
    changed: dict[str, Task] = {}
    for neck in inner_necks(pattern):
        inner, closing = key_of(neck.inner.name), key_of(neck.closed_by.name)
        if isinstance(neck.closed_by, Operation):
            renamed[inner] = closing
        elif inner in by_key and closing in by_key:
            changed |= _lined(pattern, neck, by_key[inner], by_key[closing])
            instead = _stitched_down(pattern, neck.outer, neck.inner)
            if instead is not None:
                renamed[key_of(instead.name)] = closing
    kept = (changed.get(task.key, task) for task in tasks if task.key not in renamed)
    return [after_renamed(task, renamed) for task in (*kept, *_trimmed(pattern))]


def _trimmed(pattern: Pattern) -> Iterator[Task]:
    """The allowances of a neck seam that a collar encloses, before its inner layer is stitched down."""
    for neck in inner_necks(pattern):
        if isinstance(neck.closed_by, Operation):
            key = key_of(neck.outer.name)
            text = _TRIMMED.format(collar=_titles(pattern, neck.outer.first))
            at = tuple(use.edge for use in neck.outer.first)
            yield Task(f"{key}/trimmed", "neck", text, at, frozenset({key}), _AFTER_SEAM)


def _lined(pattern: Pattern, neck: InnerNeck, inner: Task, lining: Task) -> dict[str, Task]:
    """The inner layer sewn to the lining, and then both to the neck of the garment, by their allowances."""
    lining_seam = neck.closed_by
    if not isinstance(lining_seam, Seam):
        return {}
    titles = {
        "inner": _titles(pattern, neck.inner.first),
        "lining": _titles(pattern, lining_seam.first),
        "garment": _titles(pattern, lining_seam.second),
    }
    word = inner.text.rpartition(": ")[2]
    to_lining = replace(
        inner,
        text=_TO_LINING.format(word=word, **titles),
        at=tuple(use.edge for use in (*neck.inner.first, *lining_seam.first)),
        after=lining.after,
    )
    laid = replace(
        lining,
        text=_LAID.format(**titles),
        after=lining.after | {inner.key, key_of(neck.outer.name)},
        rank=_AFTER_TURNING,
    )
    return {inner.key: to_lining, lining.key: laid}


def _stitched_down(pattern: Pattern, outer: Seam, inner: Seam) -> Operation | None:
    """The line of a step that closes the inner layer over the seam of the outer one."""
    pieces = {pattern.carriers[edge] for edge in _edges(pattern, inner.first)}
    return next(
        (
            one
            for one in pattern.operations.values()
            if one.stage == "neck" and outer.name in one.after and pieces <= set(one.at)
        ),
        None,
    )


def _lines(pattern: Pattern, seam: Seam) -> bool:
    """Whether the seam sews a lining or a facing on."""
    pieces = [pattern.pieces[pattern.carriers[edge]] for edge in _edges(pattern, seam.first)]
    return all(is_lining(piece.name) or bool(free_edges(piece)) for piece in pieces)


def _edges(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> tuple[str, ...]:
    named = (edge for use in uses for edge in expand(pattern, use.edge)[0])
    return tuple(name for name in named if name in pattern.carriers)


def _titles(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> str:
    pieces = (pattern.pieces[pattern.carriers[name]] for name in _edges(pattern, uses))
    return listed(tuple(dict.fromkeys(piece.title.lower() for piece in pieces)))
