"""From the sew line to the cut piece."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from itertools import chain

from notchbook.finish.allowance import Allowances, Given
from notchbook.finish.cloth import Cloth
from notchbook.finish.cut_outline import CornerRules, CutOutline, cut_outline
from notchbook.finish.cut_piece import CutEdge, CutNotch, CutPiece, FoldLine
from notchbook.finish.drills import dart_lines, drill_holes
from notchbook.finish.findings import HemRules, findings_of
from notchbook.finish.folds import fold_lines
from notchbook.finish.house_table import HouseTable
from notchbook.finish.inner_darts import drawn_lines, drawn_marks
from notchbook.finish.leather import given_in_leather, making_of, slit_marks
from notchbook.finish.marking import mark_piece
from notchbook.finish.notches import (
    NotchPlace,
    SewnPlace,
    center_places,
    cut_notches,
    dart_places,
    drawn_in_places,
    fold_places,
    hem_places,
    notches_of,
    own_places,
    width_places,
)
from notchbook.finish.quantity import quantities_of
from notchbook.finish.whole import Whole, whole_of
from notchbook.pattern import Edge, Pattern, Piece, require, title_of
from notchbook.pattern.folding import fold_line, folds
from notchbook.pattern.operation import laid_layers


@dataclass(frozen=True, slots=True)
class _Job:
    """What is asked for every piece of one pattern."""

    pattern: Pattern
    house: HouseTable
    cloth: Cloth
    allowances: Allowances
    rules: CornerRules


def finish(pattern: Pattern, house: HouseTable, cloth: Cloth | None = None) -> tuple[CutPiece, ...]:
    """The cut pieces of a pattern, numbered in its order.

    A pure function: the same pattern, house table and cloth give the same pieces. Refused with
    StepRefused ``allowance-impossible``, ``allowance-swallows``, ``fold-missing``, ``fold-not-straight``,
    InputError ``allowance-class-unknown`` and NameLost for cut data whose edge is gone.
    """
    rules = CornerRules(pattern.corners, house.mark("corner_limit"), _sewing_order(pattern))
    job = _Job(pattern, house, cloth or Cloth(), Allowances(pattern, house), rules)
    total = len(pattern.pieces)
    return tuple(
        _cut_piece(job, piece, number, total) for number, piece in enumerate(pattern.pieces.values(), start=1)
    )


def _sewing_order(pattern: Pattern) -> dict[str, int]:
    """How early each edge is sewn: seams stand in the pattern in the order in which they were made."""
    order: dict[str, int] = {}
    for index, seam in enumerate(pattern.seams.values()):
        for use in (*seam.first, *seam.second):
            for edge in require(pattern, use.edge):
                order.setdefault(edge, index)
    return order


def _cut_piece(job: _Job, half: Piece, number: int, total: int) -> CutPiece:
    making = making_of(job.pattern, job.house, half)
    if making is not None:
        job = replace(job, house=slit_marks(job.house, making))
    whole = whole_of(half) if half.cut == "fold" and job.house.supply == "whole" else None
    piece = whole.piece if whole else half
    sources = whole.sources if whole else {}
    outline = cut_outline(piece, _given(job, half, sources), _sided_rules(job.rules, sources))
    notches = _notches(job, half, piece, outline, whole)
    darts = dart_lines(piece)
    drills = drill_holes(piece, job.house, job.cloth) if making is None else ()
    one_way = piece.grain.one_way or job.cloth.one_way
    lines = drawn_lines(piece)
    inner = [line.path for line in lines]
    fold = _fold_line(half, whole)
    if fold is not None:
        inner.append(fold.path)
    grain, label = mark_piece(piece.sew_line, piece.grain, darts, drills, inner, one_way)
    return CutPiece(
        name=half.name,
        title=title_of(half),
        number=number,
        of=total,
        side=half.side,
        cut_as=half.cut,
        supplied="whole" if whole else ("on fold" if half.cut == "fold" else "as drawn"),
        edges=_cut_edges(outline, sources),
        cut_line=outline.path,
        notches=notches,
        drills=drills,
        darts=darts,
        folds=fold_lines(piece),
        grain=grain,
        fold=fold,
        lines=lines,
        marks=drawn_marks(piece, drilled=making is None),
        label=label,
        quantities=quantities_of(half, job.house.supply, [notch.sew_position for notch in notches], making),
        findings=findings_of(half, outline, notches, HemRules(job.house, job.cloth, sources)),
    )


def _given(job: _Job, half: Piece, sources: dict[str, str]) -> Callable[[Edge], Given]:
    """The allowance of an edge of the piece as supplied, asked for under the edge's name on the half."""

    making = making_of(job.pattern, job.house, half)

    def given(edge: Edge) -> Given:
        of_half = half.edge(sources.get(edge.name, edge.name))
        found = job.allowances.of(of_half)
        return found if making is None else given_in_leather(found, making, of_half.kind)

    return given


def _sided_rules(rules: CornerRules, sources: dict[str, str]) -> CornerRules:
    """The rules under the names of a whole piece's two halves."""
    if not sources:
        return rules
    styles = {new: rules.styles[old] for new, old in sources.items() if old in rules.styles}
    order = {new: rules.sewing_order[old] for new, old in sources.items() if old in rules.sewing_order}
    return replace(rules, styles=styles, sewing_order=order)


def _fold_line(half: Piece, whole: Whole | None) -> FoldLine | None:
    if half.cut != "fold":
        return None
    return FoldLine(folds(half)[0].name, fold_line(half), on_fold=whole is None)


def _notches(
    job: _Job, half: Piece, piece: Piece, outline: CutOutline, whole: Whole | None
) -> tuple[CutNotch, ...]:
    asked: tuple[SewnPlace, ...] = notches_of(job.pattern, half)
    strips = outline.strips
    ends: tuple[str, ...] = ()
    if whole is not None:
        run = folds(half)
        ends = (run[0].start, run[-1].end)
    places: chain[NotchPlace] = chain(
        own_places(strips, asked, whole.sources if whole else {}),
        () if _is_bare_layer(job.pattern, half, outline) else dart_places(piece, strips),
        drawn_in_places(job.pattern, strips, whole.sources if whole else {}),
        hem_places(strips),
        fold_places(strips, piece.lines),
        width_places(strips),
        center_places(strips, ends),
    )
    return cut_notches(places, outline, job.house)


def _is_bare_layer(pattern: Pattern, half: Piece, outline: CutOutline) -> bool:
    """Whether a piece is fused or laid behind another without allowances: its darts are cut out of it, and
    there is nothing to notch."""
    is_layer = half.name in laid_layers(pattern.operations.values())
    return is_layer and all(strip.width == 0.0 for strip in outline.strips)


def _cut_edges(outline: CutOutline, sources: dict[str, str]) -> tuple[CutEdge, ...]:
    return tuple(
        CutEdge(
            name=strip.edge.name,
            source=sources.get(strip.edge.name, strip.edge.name),
            kind=strip.edge.kind,
            allowance_class=strip.given.allowance_class,
            width=strip.width,
            sew=strip.edge.path,
            cut=part,
        )
        for strip, part in zip(outline.strips, outline.parts, strict=True)
    )
