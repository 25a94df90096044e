"""A vent at the lower end of a center or side seam: an extension to turn in, cut in one piece."""

from dataclasses import dataclass
from typing import Any, Literal

from notchbook.errors import InputError, StepRefused
from notchbook.pattern import (
    Allowance,
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
from notchbook.style.closures.not_on_fold import require_not_on_fold
from notchbook.style.closures.notches_left import notches_left
from notchbook.style.closures.sewn_below import StillSewn, still_sewn
from notchbook.style.closures.sewn_mates import End, opened_ends
from notchbook.style.closures.vent_orders import VentSide, vent_orders
from notchbook.style.closures.vent_shape import VentSizes, vented
from notchbook.style.closures.within_trade import told_unusual


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
    both_edges: bool = True
    """Whether the edge that is sewn to it gets the same extension. Without, that edge needs a vent too."""


def run(pattern: Pattern, context: StepContext, parameters: VentParameters) -> Change:
    """Add the extension below the vent's height, with its fold line and a notch at the top, to the edge and
    to the one that is sewn to it."""
    height = context.positive(parameters.height, "height")
    width = context.positive(parameters.width, "width")
    slant = context.mm(parameters.slant)
    if not 0.0 <= slant < height:
        raise StepRefused("vent-slant", slant=slant, height=height)
    require_not_on_fold(pattern, parameters.edge)
    given: End = (parameters.edge, parameters.hem_end)
    ends = opened_ends(pattern, *given) if parameters.both_edges else (given,)
    made = [_vent(pattern, context, parameters, end, (height, width, slant)) for end in ends]
    pieces = [one.piece.name for one in made]
    if len(set(pieces)) < len(pieces):
        raise StepRefused("vent-twice-on-piece", piece=spoken(pieces[0]))
    stays = {one.cut: StillSewn(one.above, one.hem_end, one.top) for one in made}
    after = pattern.with_pieces(*(one.piece for one in made))
    after = after.with_seams(*(still_sewn(pattern, seam, stays) for seam in pattern.seams.values()))
    opened = {one.cut: (one.hem_end, height) for one in made}
    after = after.with_notches(*notches_left(pattern, opened), *(one.notch for one in made))
    for one in made:
        after = _finished(pattern, after, context.slug, one)
    sides = [one.side for one in made]
    after = after.with_operations(
        *vent_orders(pattern, context.slug, sides, mitered=parameters.corner == "mitered")
    )
    notes = told_unusual(made[0].piece.name, "vent", {"height": height, "width": width})
    return Change(after, splits={one.cut: one.children for one in made}, notes=tuple(notes))


@dataclass(frozen=True, slots=True)
class _Vent:
    """One side of the vent: the piece with its extension, the edge that was divided and its parts, its end at
    the hem, the point at the top, the ``owner`` of the new names, and whether its corner is mitered."""

    piece: Piece
    cut: str
    children: tuple[str, ...]
    hem_end: str
    top: str
    owner: str
    is_mitered: bool

    @property
    def above(self) -> str:
        """The part of the edge that stays sewn."""
        return child_name(self.cut, "seam")

    @property
    def vent(self) -> str:
        """The part of the edge that opens, moved to the outer edge of the extension."""
        return child_name(self.cut, "vent")

    @property
    def lower(self) -> str:
        """The lower end of the extension."""
        return part_name(self.owner, "miter" if self.is_mitered else "hem")

    @property
    def side(self) -> VentSide:
        """What the sewing order names of it."""
        return VentSide(self.cut, self.vent, self.lower)

    @property
    def notch(self) -> Notch:
        """The mark at the top of the vent."""
        name = part_name(self.owner, "vent_notch")
        return Notch(name, Place(self.above, self.top, 0.0), purpose="top of vent")


def _vent(
    pattern: Pattern,
    context: StepContext,
    parameters: VentParameters,
    end: End,
    size: tuple[float, float, float],
) -> _Vent:
    """The extension at one edge; ``size``: height, width and slant, mm. StepRefused ``vent-too-high``,
    ``vent-miter-too-high``, ``vent-edge-curved``."""
    height, width, slant = size
    name, hem_end = end
    found = locate(pattern, Place(name, hem_end, height))
    piece = pattern.pieces[found.piece]
    if hem_end not in (found.edge.end, found.edge.start):
        raise StepRefused("vent-too-high", edge=spoken(name), height=height)
    sizes = VentSizes(height, width, slant, _miter(pattern, context, parameters, piece, end))
    if sizes.miter >= height - slant:
        raise StepRefused("vent-miter-too-high", depth=sizes.miter, height=height - slant)
    drawn, children = vented(piece, found.edge, hem_end, sizes, context.slug)
    owner = piece_name(context.slug, last_word(piece.name))
    top = part_name(owner, "top_inner")
    return _Vent(drawn, found.edge.name, children, hem_end, top, owner, sizes.miter > 0.0)


def _finished(before: Pattern, after: Pattern, slug: str, vent: _Vent) -> Pattern:
    """The pattern with the allowances of one extension, and how its lower corner is made."""
    turned_in = Allowance("vent")
    after = after.with_allowances({vent.vent: turned_in, part_name(vent.owner, "top"): turned_in})
    if not vent.is_mitered:
        hem = _hem_beside(before, before.pieces[vent.piece.name], vent.hem_end)
        return after.with_allowances({vent.lower: hem})
    after = after.with_allowances({vent.lower: Allowance("facing_edge")})
    return after.with_corners({vent.hem_end: "mitre"})


def _miter(
    pattern: Pattern, context: StepContext, parameters: VentParameters, piece: Piece, end: End
) -> float:
    """How deep the hem is where it is mitered, mm; 0 where it is not. InputError ``vent-hem-unsaid``."""
    if parameters.corner == "plain":
        return 0.0
    if parameters.hem_depth is not None:
        return context.positive(parameters.hem_depth, "hem_depth")
    beside = _hem_beside(pattern, piece, end[1])
    if beside.width is None:
        raise InputError("vent-hem-unsaid", edge=spoken(end[0]))
    return beside.width


def _hem_beside(pattern: Pattern, piece: Piece, hem_end: str) -> Allowance:
    """The allowance of the hem beside the vent: the extension is turned up with it."""
    for edge in piece.outline:
        if edge.kind == "hem" and hem_end in (edge.start, edge.end):
            for name, allowance in pattern.allowances.items():
                if edge.name in expand(pattern, name)[0]:
                    return allowance
    return Allowance("hem_skirt_straight")


def _one_edge(parameters: dict[str, Any]) -> dict[str, Any]:
    """Version 1 made the vent on the edge that was named alone."""
    return {**parameters, "both_edges": False}


STEP = StepDefinition(
    operation="vent",
    version=2,
    kind="style",
    title="Vent",
    sentence="{height} high, {width} wide at {edge}",
    parameters=VentParameters,
    run=run,
    upcasters={1: _one_edge},
)
