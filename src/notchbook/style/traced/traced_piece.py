"""A traced outline as a piece, with names of its own."""

from collections.abc import Sequence
from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.geometry import Path
from notchbook.pattern import CutInstruction, Edge, EdgeKind, Piece, part_name, piece_name, spoken
from notchbook.pattern.piece import CutAs
from notchbook.style.edges.redrawn import require_plain
from notchbook.style.edges.tidied import tidied
from notchbook.style.traced.faced_run import Faced, FacedRun
from notchbook.style.traced.shape import TracedShape
from notchbook.style.traced.traced_names import end_word, own_name


@dataclass(frozen=True, slots=True)
class Traced:
    """A traced piece, the runs that it was traced from as they lay, and its outline.

    ``faced``: each traced edge with its own edge. ``first`` and ``last``: the ends, where the run begins and
    where it ends, counter-clockwise. ``free``: the free edge.
    """

    piece: Piece
    runs: tuple[FacedRun, ...]
    shape: TracedShape
    faced: tuple[tuple[Faced, Edge], ...]
    first: Edge
    last: Edge
    free: Edge

    def end(self, at_end: bool) -> Edge:
        """The last end, or the first."""
        return self.last if at_end else self.first


@dataclass(frozen=True, slots=True)
class Making:
    """How the piece is called and cut: the step's ``slug``, its word (``front``), its title and materials.

    ``keeps_last``: the grain is kept at its last end, else at its first. ``meets``: how far its first and its
    last end reach, mm, where a seam joins them to another; else None.
    """

    slug: str
    word: str
    title: str
    instructions: tuple[CutInstruction, ...]
    meets: tuple[float | None, float | None]
    keeps_last: bool


def traced_piece(runs: Sequence[FacedRun], shape: TracedShape, making: Making) -> Traced:
    """The outline as a piece; StepRefused ``facing-two-folds``, ``edge-crosses-outline``."""
    name = piece_name(making.slug, making.word)
    edges, corners = _names(runs, name)
    kept = runs[-1 if making.keeps_last else 0].panel(at_end=making.keeps_last)
    outline = tuple(
        Edge(edges[index], path, corners[index], corners[(index + 1) % len(corners)], kind)
        for index, (path, kind) in enumerate(zip(_ring(shape), _kinds(runs, making), strict=True))
    )
    piece = Piece(
        name=name,
        title=making.title,
        outline=outline,
        grain=kept.grain,
        cut=_cut_as(runs, kept),
        side=kept.side,
        instructions=making.instructions,
        rule=making.slug,
        stretches=kept.stretches,
    )
    require_plain(piece)
    pairs = zip((faced for run in runs for faced in run.faced), outline, strict=False)
    return Traced(piece, tuple(runs), shape, tuple(pairs), outline[-1], outline[-3], outline[-2])


def _names(runs: Sequence[FacedRun], piece: str) -> tuple[list[str], list[str]]:
    """The names of the edges, and of the points where they begin: traced edges, end, free edge, end."""
    prefixes = [run.word if len(runs) > 1 else "" for run in runs]
    first, last = (
        end_word(runs[0].before.edge.name, prefixes[0]),
        end_word(runs[-1].after.edge.name, prefixes[-1]),
    )
    if first == last:
        first, last = f"{first}_begin", f"{last}_finish"
    pairs = [(faced, prefix) for run, prefix in zip(runs, prefixes, strict=True) for faced in run.faced]
    edges = [own_name(piece, faced.name, prefix) for faced, prefix in pairs]
    corners = [own_name(piece, faced.members[0].start, prefix) for faced, prefix in pairs]
    corners.append(own_name(piece, runs[-1].end, prefixes[-1]))
    corners += [part_name(piece, f"edge_{word}") for word in (last, first)]
    return [*edges, part_name(piece, last), part_name(piece, "edge"), part_name(piece, first)], corners


def _kinds(runs: Sequence[FacedRun], making: Making) -> list[EdgeKind]:
    count = sum(len(run.faced) for run in runs)
    first = _end_kind(runs[0].before.edge, making.meets[0] is not None)
    last = _end_kind(runs[-1].after.edge, making.meets[1] is not None)
    seams: list[EdgeKind] = ["seam"] * count
    return [*seams, last, "plain", first]


def _end_kind(beside: Edge, mated: bool) -> EdgeKind:
    """An end on the fold or at a hem is as the piece is there; else a seam, where it meets another piece."""
    if beside.kind in ("fold", "hem"):
        return beside.kind
    return "seam" if mated else "plain"


def _cut_as(runs: Sequence[FacedRun], owner: Piece) -> CutAs:
    """On the fold where an end lies there; else left and right, or once where the piece is single."""
    folds = [one for one in (runs[0].before.edge, runs[-1].after.edge) if one.kind == "fold"]
    if len(folds) == 2:
        raise StepRefused("facing-two-folds", first=spoken(folds[0].name), second=spoken(folds[1].name))
    if folds:
        return "fold"
    return "single" if owner.cut == "single" else "pair"


_SLIVER = 0.3
"""mm below which a part of a free edge is too short to draw. Own judgment."""


def _ring(shape: TracedShape) -> tuple[Path, ...]:
    """The sides of the outline, each beginning exactly where the one before ends."""
    paths = [*shape.faced, tidied(shape.last), tidied(shape.free, _SLIVER), tidied(shape.first)]
    for index in range(1, len(paths)):
        paths[index] = paths[index].with_start(paths[index - 1].end)
    paths[-1] = paths[-1].with_end(paths[0].start)
    return tuple(paths)
