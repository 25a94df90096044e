"""A vent at the lower end of a center or side seam: an extension to turn in, cut in one piece."""

from dataclasses import replace
from typing import Literal, NamedTuple

from notchbook.errors import InputError, StepRefused
from notchbook.geometry import Path
from notchbook.pattern import (
    Allowance,
    Edge,
    EdgeKind,
    InternalLine,
    Notch,
    Pattern,
    Piece,
    Place,
    child_name,
    locate,
    part_name,
    piece_name,
    spoken,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.operation import Operation
from notchbook.pattern.resolve import expand
from notchbook.recipe import (
    AmountText,
    Change,
    EdgeName,
    PointName,
    StepContext,
    StepDefinition,
    StepParameters,
)
from notchbook.style._seam_above import only_above
from notchbook.style.closures.not_on_fold import require_not_on_fold
from notchbook.style.closures.notches_left import notches_left
from notchbook.style.closures.within_trade import told_unusual
from notchbook.units import TOLERANCES


class VentParameters(StepParameters):
    """The straight ``edge`` with the vent, its end at the hem, ``height`` and ``width`` of the vent, and
    how much lower the top of the extension lies at its outer end (``slant``)."""

    edge: EdgeName
    """The straight seam that opens at its lower end."""
    hem_end: PointName
    """The end of the seam at the hem."""
    height: AmountText = "18 cm"
    """How high the vent reaches above the hem."""
    width: AmountText = "4 cm"
    """How wide the extension is."""
    slant: AmountText = "2 cm"
    """How much lower the top of the extension lies at its outer end."""
    corner: Literal["plain", "mitered"] = "plain"
    """Turned up with the hem; or mitered, so that extension and hem meet without a lump."""
    hem_depth: AmountText | None = None
    """How deep the hem is turned up, for the miter; empty: as it was set before."""


def run(pattern: Pattern, context: StepContext, parameters: VentParameters) -> Change:
    """Add the extension below the vent's height, with its fold line and a notch at the top."""
    height = context.positive(parameters.height, "height")
    width = context.positive(parameters.width, "width")
    slant = context.mm(parameters.slant)
    if not 0.0 <= slant < height:
        raise StepRefused("vent-slant", slant=slant, height=height)
    require_not_on_fold(pattern, parameters.edge)
    found = locate(pattern, Place(parameters.edge, parameters.hem_end, height))
    piece = pattern.pieces[found.piece]
    if found.edge.end != parameters.hem_end and found.edge.start != parameters.hem_end:
        raise StepRefused("vent-too-high", edge=spoken(parameters.edge), height=height)
    sizes = _Sizes(height, width, slant, _miter(pattern, context, parameters, piece))
    if sizes.miter >= height - slant:
        raise StepRefused("vent-miter-too-high", depth=sizes.miter, height=height - slant)
    vented, children = _vented(piece, found.edge, parameters.hem_end, sizes, context.slug)
    above, vent = child_name(found.edge.name, "seam"), child_name(found.edge.name, "vent")
    owner = piece_name(context.slug, last_word(piece.name))
    top_point = part_name(owner, "top_inner")
    cut, stays = (found.edge.name, parameters.hem_end), (above, top_point)
    seams = [only_above(pattern, seam, cut, stays) for seam in pattern.seams.values()]
    notch = Notch(
        part_name(owner, "vent_notch"),
        Place(above, top_point, 0.0),
        purpose="top of vent",
    )
    turned_in = Allowance("vent")
    lone = notches_left(pattern, {found.edge.name: (parameters.hem_end, height)})
    after = pattern.with_pieces(vented).with_seams(*seams).with_notches(*lone, notch)
    after = after.with_allowances({vent: turned_in, part_name(owner, "top"): turned_in})
    if sizes.miter > 0.0:
        after = after.with_allowances({part_name(owner, "miter"): Allowance("facing_edge")})
        after = after.with_corners({parameters.hem_end: "mitre"})
        after = after.with_operations(_mitered(context.slug, owner))
    else:
        hem = _hem_beside(pattern, piece, parameters.hem_end)
        after = after.with_allowances({part_name(owner, "hem"): hem})
    notes = told_unusual(piece.name, "vent", {"height": height, "width": width})
    return Change(after, splits={found.edge.name: children}, notes=tuple(notes))


class _Sizes(NamedTuple):
    """The vent in mm: height, width, slant of its top, and how deep the hem of its miter is (0: none)."""

    height: float
    width: float
    slant: float
    miter: float


def _miter(pattern: Pattern, context: StepContext, parameters: VentParameters, piece: Piece) -> float:
    """How deep the hem is where it is mitered, mm; 0 where it is not. InputError ``vent-hem-unsaid``."""
    if parameters.corner == "plain":
        return 0.0
    if parameters.hem_depth is not None:
        return context.positive(parameters.hem_depth, "hem_depth")
    beside = _hem_beside(pattern, piece, parameters.hem_end)
    if beside.width is None:
        raise InputError("vent-hem-unsaid", edge=spoken(parameters.edge))
    return beside.width


def _mitered(slug: str, owner: str) -> Operation:
    text = "Sew the miter of the vent to the end of the hem, right sides together, before both are turned."
    return Operation(part_name(slug, "miter"), "hems", text, (part_name(owner, "miter"),))


def _hem_beside(pattern: Pattern, piece: Piece, hem_end: str) -> Allowance:
    """The allowance of the hem beside the vent: the extension is turned up with it."""
    for edge in piece.outline:
        if edge.kind == "hem" and hem_end in (edge.start, edge.end):
            for name, allowance in pattern.allowances.items():
                if edge.name in expand(pattern, name)[0]:
                    return allowance
    return Allowance("hem_skirt_straight")


def _vented(
    piece: Piece, edge: Edge, hem_end: str, sizes: _Sizes, slug: str
) -> tuple[Piece, tuple[str, ...]]:
    """The piece with the extension on the end of ``edge`` at the hem, and the two parts of the edge.

    Mitered, its lower corner is cut off from the end of the fold to as high above the hem as that is deep:
    turned in, this line lies on that at which the hem ends (closed form).
    """
    height, width, slant, miter = sizes
    owner = piece_name(slug, last_word(piece.name))
    runs_down = edge.end == hem_end
    down = edge if runs_down else edge.reversed()
    upper, lower = down.path.split_at(down.length - height)
    if lower.start.distance_to(lower.end) < lower.length - TOLERANCES.sew_length:
        raise StepRefused("vent-edge-curved", edge=spoken(edge.name))
    along = lower.tangent_at(0.0)
    outward = along.perpendicular() * (-width if runs_down else width)
    outer = lower.end + outward - along * miter
    corners = (lower.start, lower.start + outward + along * slant, outer, lower.end)
    points = (
        part_name(owner, "top_inner"),
        part_name(owner, "top_outer"),
        part_name(owner, "hem_outer" if miter == 0.0 else "miter_outer"),
        hem_end,
    )
    last = part_name(owner, "hem" if miter == 0.0 else "miter")
    names = (part_name(owner, "top"), child_name(edge.name, "vent"), last)
    kinds: tuple[EdgeKind, ...] = ("plain", "plain", "hem" if miter == 0.0 else "plain")
    edges = [Edge(child_name(edge.name, "seam"), upper, down.start, points[0], edge.kind)]
    edges += [
        Edge(names[i], Path.line(corners[i], corners[i + 1]), points[i], points[i + 1], kinds[i])
        for i in range(3)
    ]
    children = (edges[0].name, names[1])
    if not runs_down:
        edges = [one.reversed() for one in reversed(edges)]
        children = children[::-1]
    index = piece.edge_index(edge.name)
    outline = (*piece.outline[:index], *edges, *piece.outline[index + 1 :])
    fold = InternalLine(part_name(owner, "fold_line"), lower, "fold_line")
    return replace(piece, outline=outline, lines=(*piece.lines, fold)), children


STEP = StepDefinition(
    operation="vent",
    version=1,
    kind="style",
    title="Vent",
    sentence="{height} high, {width} wide at {edge}",
    parameters=VentParameters,
    run=run,
)
