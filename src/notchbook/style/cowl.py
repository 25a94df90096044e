"""A cowl: a neckline that falls in folds from a straight line, square to the center, with its facing cut on.

The front is spread between its neck and the edge across, as a rule the waist, so that the shoulder moves away
from the center. The center stays one straight line on the fold; the new neckline runs from it, square, to the
shoulder. Darts that open in the neck go: their fullness falls in the folds. The facing is the front itself,
reflected at the neckline.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import (
    Allowance,
    Edge,
    Finding,
    Grain,
    InternalLine,
    Measured,
    Pattern,
    Piece,
    Severity,
    part_name,
    piece_name,
    require,
    require_one,
    sewn_length,
    spoken,
    worded,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.pattern import frozen_map
from notchbook.pattern.resolve import expand
from notchbook.pattern.sewn import run_of
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style.fullness.notch_places import notches_carried
from notchbook.style.fullness.opening import even_shares
from notchbook.style.fullness.slash_lines import Ends, slashes_by_share
from notchbook.style.fullness.spread import SlashLine, spread_keeping_hinges

_BIAS = 45.0
_LEAST_RISE = 0.1
"""Share of the facing's depth that its end must rise: a flatter shoulder gives no facing. Own judgment."""


class CowlParameters(StepParameters):
    """The ``center`` on the fold, the ``neck`` beside it, and how far the neck is spread."""

    center: EdgeName
    """The center of the front, on the fold."""
    neck: EdgeName
    """The edge of the neck, with the darts that open in it."""
    neck_center: PointName
    """The end of the neck at the center."""
    spread: AmountText = "6 cm"
    """How far the neck is spread in all; nothing where darts in the neck give the fullness."""
    across: EdgeName | None = None
    """The edge across to which the front is slashed, such as the waist; it keeps its length."""
    across_center: PointName | None = None
    """The end of the edge across at the center."""
    number: Annotated[int, Field(ge=1, le=12)] = 3
    """At how many slashes the neck is spread."""
    facing: AmountText = "8 cm"
    """How deep the facing reaches that is cut on; nothing for none."""
    bias: bool = True
    """Whether the front is cut on the bias, so that the folds fall softly."""


@dataclass(frozen=True, slots=True)
class _Corner:
    """The edges at the center of the neck, from the center on: the center edge run toward the neck, those of
    the neck with dart legs between, and the edge after them (the shoulder), all run away from the center."""

    center: Edge
    neck: tuple[Edge, ...]
    shoulder: Edge
    forward: bool


def run(pattern: Pattern, context: StepContext, parameters: CowlParameters) -> Change:
    """Spread the neck, square it to the center, and cut the facing on."""
    _require_free(pattern, parameters)
    before = sewn_length(pattern, parameters.neck)
    pattern = _spread(pattern, context, parameters)
    name = require_one(pattern, parameters.center)
    piece = pattern.piece_of(name)
    corner = _corner(pattern, piece, parameters)
    depth = context.mm(parameters.facing)
    drawn, neck = _drawn(context.slug, piece, corner, depth)
    gone = _gone(piece, corner, drawn)
    notches = tuple(
        notch.name
        for notch in pattern.notches.values()
        if set(require(pattern, notch.place.edge)) & {edge.name for edge in corner.neck}
    )
    after = pattern.with_pieces(_grained(drawn, corner, parameters)).with_notches(without=notches)
    kept = {
        edge: value
        for edge, value in after.allowances.items()
        if not set(expand(pattern, edge)[0]) & gone.keys()
    }
    after = replace(after, allowances=frozen_map(kept)).with_allowances(
        _facing_allowances(context.slug, drawn)
    )
    removals = {**gone, **dict.fromkeys(notches, "its edge became the fold of a cowl")}
    notes = tuple(_notes(drawn, neck, before))
    return Change(after, removals=removals, grains=(drawn.name,), notes=notes)


def _facing_allowances(slug: str, piece: Piece) -> dict[str, Allowance]:
    """The facing is neatened at its edge and caught in the shoulder seam."""
    owner = piece_name(slug, last_word(piece.name))
    wanted = {
        part_name(owner, "facing_edge"): Allowance("neatened_edge"),
        part_name(owner, "facing_end"): Allowance("plain"),
        part_name(owner, "cowl_edge"): Allowance("plain"),
    }
    return {name: allowance for name, allowance in wanted.items() if piece.has_edge(name)}


def _require_free(pattern: Pattern, parameters: CowlParameters) -> None:
    """What is sewn to the neck would be left without its edge."""
    members = set(require(pattern, parameters.neck))
    for seam in pattern.seams.values():
        steps = (*run_of(pattern, seam.first), *run_of(pattern, seam.second))
        if any(step.edge.name in members for step in steps):
            raise StepRefused("cowl-neck-sewn", edge=spoken(parameters.neck), seam=spoken(seam.name))


def _spread(pattern: Pattern, context: StepContext, parameters: CowlParameters) -> Pattern:
    amount = context.mm(parameters.spread)
    if amount <= 0.0:
        return pattern
    if parameters.across is None or parameters.across_center is None:
        raise StepRefused("cowl-needs-across", spread=amount)
    ends = Ends(parameters.neck, parameters.neck_center, parameters.across, parameters.across_center)
    neck, across = (sewn_length(pattern, edge) for edge in (ends.edge, ends.across))
    shares = even_shares(parameters.number)
    slashes = slashes_by_share(
        pattern, ends, [share * neck for share in shares], [share * across for share in shares]
    )
    lines = [SlashLine(start, end, amount / parameters.number, 0.0) for start, end in slashes.places]
    try:
        made = spread_keeping_hinges(slashes.piece, lines, slashes.forward)
    except StepRefused as error:
        if error.code != "slash-leaves-piece" or not slashes.piece.darts:
            raise
        raise StepRefused(
            "cowl-slash-meets-dart", neck=spoken(ends.edge), across=spoken(ends.across)
        ) from error
    after = pattern.with_pieces(made.piece)
    return after.with_notches(*notches_carried(pattern, after, made.edges))


def _corner(pattern: Pattern, piece: Piece, parameters: CowlParameters) -> _Corner:
    """The edges round the neck, whichever way the outline runs."""
    center = piece.edge(require_one(pattern, parameters.center))
    members = require(pattern, parameters.neck)
    forward = center.end == parameters.neck_center
    outline = piece.outline if forward else tuple(edge.reversed() for edge in reversed(piece.outline))
    names = [edge.name for edge in outline]
    at = names.index(center.name)
    walked = [outline[(at + step) % len(outline)] for step in range(len(outline))]
    is_beside = walked[0].end == parameters.neck_center and walked[1].name in members
    if center.kind != "fold" or not is_beside or not set(members) <= set(names):
        raise StepRefused("cowl-center", center=spoken(center.name), neck=spoken(parameters.neck))
    last = max(index for index, edge in enumerate(walked) if edge.name in members)
    return _Corner(walked[0], tuple(walked[1 : last + 1]), walked[last + 1], forward)


def _drawn(slug: str, piece: Piece, corner: _Corner, depth: float) -> tuple[Piece, Path]:
    """The piece with its new center, neckline and facing, and the neckline from the center on."""
    start, shoulder = corner.center.path.start, corner.neck[-1].path.end
    up = (corner.center.path.end - start).unit()
    rise = (shoulder - start).dot(up)
    if rise <= 0.0:
        raise StepRefused("cowl-center", center=spoken(corner.center.name), neck=spoken(corner.neck[0].name))
    neck = Path.line(start + up * rise, shoulder)
    owner = piece_name(slug, last_word(piece.name))
    lines = tuple(_to_center(line, corner, Path.line(start, neck.start)) for line in piece.lines)
    if depth > 0.0:
        edges = _with_facing(owner, corner, neck, depth)
        fold = InternalLine(part_name(owner, "neck_fold"), neck, "fold_line")
        lines = (*lines, fold)
    else:
        ends = (corner.center.end, corner.shoulder.start)
        edges = (
            replace(corner.center, path=Path.line(start, neck.start)),
            Edge(part_name(owner, "cowl_edge"), neck, *ends, "plain"),
        )
    outline = _put_in(piece, corner, edges)
    legs = {edge.name for edge in corner.neck}
    intakes = tuple(one for one in piece.intakes if one.first_leg not in legs and one.edge not in legs)
    return replace(piece, outline=outline, intakes=intakes, lines=lines), neck


def _with_facing(owner: str, corner: _Corner, neck: Path, depth: float) -> tuple[Edge, ...]:
    """The center carried on over the facing, the edge of the facing, and its end to the shoulder."""
    start = corner.center.path.start
    up = (neck.start - start).unit()
    leaving = corner.shoulder.path.tangent_at(0.0, "after")
    turned = Transform.reflection(neck.start, neck.end)
    along = turned.apply(leaving) - turned.apply(Point(0.0, 0.0))
    if along.dot(up) <= _LEAST_RISE:
        raise StepRefused("cowl-facing", shoulder=spoken(corner.shoulder.name))
    top = neck.start + up * depth
    end = neck.end + along * (depth / along.dot(up))
    points = [part_name(owner, word) for word in ("facing_center", "facing_shoulder")]
    facing, ending = (part_name(owner, word) for word in ("facing_edge", "facing_end"))
    return (
        replace(corner.center, path=Path.line(start, top), end=points[0]),
        Edge(facing, Path.line(top, end), points[0], points[1], "plain"),
        Edge(ending, Path.line(end, neck.end), points[1], corner.shoulder.start, "plain"),
    )


def _put_in(piece: Piece, corner: _Corner, edges: tuple[Edge, ...]) -> tuple[Edge, ...]:
    """The outline with the edges in place of the center and the neck, in its own direction again."""
    gone = {corner.center.name, *(edge.name for edge in corner.neck)}
    if not corner.forward:
        edges = tuple(edge.reversed() for edge in reversed(edges))
    outline: list[Edge] = []
    for edge in piece.outline:
        if edge.name == corner.center.name:
            outline.extend(edges)
        elif edge.name not in gone:
            outline.append(edge)
    return tuple(outline)


def _to_center(line: InternalLine, corner: _Corner, center: Path) -> InternalLine:
    """A level that ended on the old center, carried on to the new one."""
    for at_start in (True, False):
        path = line.path if at_start else line.path.reversed()
        if corner.center.path.nearest(path.start).gap > 1e-3 or center.nearest(path.start).gap <= 1e-3:
            continue
        ray = Path.line(path.start, path.start - path.tangent_at(0.0) * 1000.0)
        met = ray.intersections(center)
        if met:
            longer = ray.between(0.0, met[0].at_self).reversed().joined(path)
            return replace(line, path=longer if at_start else longer.reversed())
    return line


def _gone(piece: Piece, corner: _Corner, drawn: Piece) -> dict[str, str]:
    """Every name of the piece that is not there any more."""
    living = set(drawn.names())
    return {
        name: "it became the fold of a cowl" for name in dict.fromkeys(piece.names()) if name not in living
    }


def _grained(piece: Piece, corner: _Corner, parameters: CowlParameters) -> Piece:
    along = (corner.center.path.end - corner.center.path.start).direction()
    turned = along + _BIAS if parameters.bias else along
    return replace(piece, grain=Grain(turned, piece.grain.one_way))


def _notes(piece: Piece, neck: Path, before: float) -> Iterator[Finding]:
    longer = neck.length - before
    shallow = longer < _LEAST_LONGER
    yield worded(
        STEP.operation,
        "cowl-shallow" if shallow else "cowl-drawn",
        Severity.LOOK if shallow else Severity.NOTE,
        Measured(neck.length, before + _LEAST_LONGER if shallow else before),
        piece=piece.name,
        where=piece.name,
        length=neck.length,
        longer=longer,
        before=before,
    )


_LEAST_LONGER = 10.0
"""mm that the edge of a cowl is longer than the neck was: with less, nothing is there to fall. Own
judgment."""


STEP = StepDefinition(
    operation="cowl",
    version=1,
    kind="style",
    title="Cowl neckline",
    sentence="{neck} spread by {spread}, square to {center}",
    parameters=CowlParameters,
    run=run,
)
