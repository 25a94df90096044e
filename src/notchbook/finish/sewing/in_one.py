"""What is sewn in one go: seams that meet end to end become one line, and so do the pleats of an edge."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from notchbook.finish.sewing.facings import FacedEdge
from notchbook.finish.sewing.joints import steps
from notchbook.finish.sewing.seam_texts import seam_text
from notchbook.finish.sewing.seam_words import titled
from notchbook.finish.sewing.task import Task, after_renamed, key_of
from notchbook.pattern import Intake, Pattern, Seam
from notchbook.pattern.names import instance_of
from notchbook.pattern.seam import TURNED_SEAM

_LAYERS = 2
"""Of a stand, and of a fall."""

_BAND = "LSa"
"""The class of the seam of a waistband, whose halves are one run (ASTM D6193)."""

_SANDWICHED = (
    "Lay the {between} between the {layers}, right sides together, and sew their upper edges and ends in one"
)

_FACED_BAND = (
    "Sew the facing of the waistband to it, right sides together, along its upper edge and its free ends"
)

_PLEATS = "Lay the {count} pleats {of} the {piece}{stitched} and baste them"
_STITCHED = ", stitch them down as far as marked"


@dataclass(frozen=True, slots=True)
class _Run:
    """The keys of what is done in one go, and its line."""

    keys: tuple[str, ...]
    text: str


def sewn_in_one(pattern: Pattern, faced: Sequence[FacedEdge], tasks: Sequence[Task]) -> list[Task]:
    """The tasks, each run in one: a faced edge, a waistband, the bag of a pocket, the pleats of an edge."""
    by_key = {task.key: task for task in tasks}
    renamed: dict[str, str] = {}
    for run in _runs(pattern, faced):
        keys = [key for key in run.keys if key in by_key]
        first, *more = keys or [""]
        if more:
            by_key[first] = _merged([by_key[key] for key in keys], run.text)
            renamed |= dict.fromkeys(more, first)
    return [after_renamed(by_key[task.key], renamed) for task in tasks if task.key not in renamed]


def _runs(pattern: Pattern, faced: Sequence[FacedEdge]) -> Iterator[_Run]:
    yield from _pleats(pattern)
    yield from _sandwiches(pattern)
    yield from _faced_bands(pattern)
    for seams in (*(one.seams for one in faced), *_bands(pattern), *_bags(pattern)):
        keys = tuple(dict.fromkeys(key_of(seam.name) for seam in seams))
        if len(keys) > 1:
            yield _Run(keys, seam_text(pattern, seams))


def _merged(tasks: Sequence[Task], text: str) -> Task:
    return replace(
        tasks[0],
        text=text,
        at=tuple(dict.fromkeys(name for task in tasks for name in task.at)),
        after=frozenset(key for task in tasks for key in task.after),
        amount=sum(task.amount for task in tasks),
        how=next((task.how for task in tasks if task.how), ""),
    )


def _pleats(pattern: Pattern) -> Iterator[_Run]:
    """The pleats of each edge."""
    for piece in pattern.pieces.values():
        at_edge: dict[str, list[Intake]] = {}
        for intake in piece.intakes:
            if intake.kind == "pleat":
                at_edge.setdefault(key_of(intake.mouth), []).append(intake)
        of = "on each side of" if piece.cut == "fold" else "of"
        for pleats in at_edge.values():
            stitched = _STITCHED if any(pleat.stitched for pleat in pleats) else ""
            words = {"count": len(pleats), "of": of, "piece": piece.title.lower(), "stitched": stitched}
            yield _Run(tuple(key_of(pleat.name) for pleat in pleats), _PLEATS.format(**words))


def _sandwiches(pattern: Pattern) -> Iterator[_Run]:
    """A fall between the two layers of its stand, which go on to the neck: its layers are sewn to each other
    before."""
    necks = {
        piece
        for seam in pattern.seams.values()
        if seam.allowance_class == "neckline"
        for piece in _pieces(pattern, seam)
    }
    turned = [seam for seam in pattern.seams.values() if seam.allowance_class == "collar_edge"]
    for ends in turned:
        stands = _pieces(pattern, ends)
        edges = [seam for seam in turned if len(_pieces(pattern, seam) & stands) == 1]
        falls = frozenset(piece for seam in edges for piece in _pieces(pattern, seam) - stands)
        is_one = any(_pieces(pattern, seam) == falls for seam in turned)
        if len(edges) == len(falls) == len(stands & necks) == _LAYERS and is_one:
            between = titled([pattern.pieces[name].title.lower() for name in sorted(falls)])
            layers = titled([pattern.pieces[name].title.lower() for name in sorted(stands)])
            keys = tuple(dict.fromkeys(key_of(seam.name) for seam in (*edges, ends)))
            yield _Run(keys, _SANDWICHED.format(between=between, layers=layers))


def _pieces(pattern: Pattern, seam: Seam) -> frozenset[str]:
    run = (*steps(pattern, seam.first), *steps(pattern, seam.second))
    return frozenset(pattern.carriers[step.edge.name] for step in run)


def _bands(pattern: Pattern) -> Iterator[tuple[Seam, ...]]:
    """The seams of each waistband to the waist."""
    alike: dict[str, list[Seam]] = {}
    for seam in pattern.seams.values():
        if seam.allowance_class == "waist" and seam.seam_class == _BAND:
            alike.setdefault(instance_of(seam.name), []).append(seam)
    return map(tuple, alike.values())


def _faced_bands(pattern: Pattern) -> Iterator[_Run]:
    """The facing of each contoured waistband, sewn to it along its upper edge and round its free ends."""
    for bands in _bands(pattern):
        slug = instance_of(bands[0].name)
        turned = [
            seam
            for seam in pattern.seams.values()
            if seam.seam_class == TURNED_SEAM and instance_of(seam.name) == slug
        ]
        keys = tuple(dict.fromkeys(key_of(seam.name) for seam in turned))
        yield _Run(keys, _FACED_BAND)


def _bags(pattern: Pattern) -> Iterator[tuple[Seam, ...]]:
    """The seams round each bag, between the same pieces."""
    alike: dict[frozenset[str], list[Seam]] = {}
    for seam in pattern.seams.values():
        if seam.allowance_class == "pocket_bag":
            alike.setdefault(_pieces(pattern, seam), []).append(seam)
    return map(tuple, alike.values())
