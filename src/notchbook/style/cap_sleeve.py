"""A cap sleeve that ends on the cap: only the top of the armhole has a sleeve, the rest is faced or bound.

The cap is cut off from balance notch to balance notch by a hem that hangs lowest below the shoulder. It is
cut double, so that its round hem is turned by its own lining.
"""

from collections.abc import Mapping
from dataclasses import replace

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, curve_between
from notchbook.pattern import (
    Allowance,
    CutInstruction,
    EdgeUse,
    Notch,
    Pattern,
    Piece,
    Place,
    child_name,
    frozen_map,
    part_name,
    piece_name,
    require,
    sewn_length,
    spoken,
)
from notchbook.pattern.names import last_word
from notchbook.pattern.operation import Operation
from notchbook.pattern.sewn import place_distance
from notchbook.pattern.splitting import EdgeNames, cut_edge
from notchbook.recipe import AmountText, Change, StepContext, StepDefinition, StepParameters
from notchbook.recipe.parameters import Word
from notchbook.style._outlined import Side, outlined
from notchbook.style._ranged_amount import told_outside
from notchbook.style.sleeves.figures import CAP_LENGTH
from notchbook.style.sleeves.found import HALVES, FoundSleeve, Which, notch_from_top, sleeve_found

_EASE_KEPT = 0.05
"""Share of the upper armhole that is eased in at the most: what the cap has more is cut off at its ends. Half
of what a whole cap takes. Own judgment."""

_GONE = "the sleeve ends on its cap"


class CapSleeveParameters(StepParameters):
    """The ``sleeve`` that is cut off on its cap, and how long it is below the shoulder."""

    sleeve: Word = "sleeve"
    """The sleeve that ends on its cap."""
    length: AmountText = CAP_LENGTH.amount
    """From the top of the cap to the lowest place of the hem."""


def run(pattern: Pattern, context: StepContext, parameters: CapSleeveParameters) -> Change:
    """Cut the sleeve off between its notches, and leave the lower armhole to be faced."""
    sleeve = sleeve_found(pattern, parameters.sleeve)
    if len(sleeve.cap) != 2:
        raise StepRefused("sleeve-in-parts", sleeve=spoken(sleeve.piece.name))
    trims = {which: _trim(pattern, sleeve, which) for which in HALVES}
    length = context.positive(parameters.length, "length")
    piece = _cut_off(context.slug, sleeve, length, trims)
    after = pattern.with_pieces(piece)
    splits: dict[str, tuple[str, ...]] = {cap.name: (child_name(cap.name, "above"),) for cap in sleeve.cap}
    for which in HALVES:
        after, parts = _armhole_parted(pattern, after, context.slug, sleeve, (which, trims[which]))
        splits.update(parts)
    living = {*piece.names(), *splits}
    seam = part_name(sleeve.slug, "sleeve_seam")
    off = [n.name for n in after.notches.values() if n.serves(seam) or n.place.edge in sleeve_edges(sleeve)]
    gone = [name for name in sleeve.piece.names() if name not in living]
    after = after.with_seams(without=(seam,)).with_notches(without=off)
    allowances = {name: one for name, one in after.allowances.items() if name not in gone}
    after = replace(after, allowances=frozen_map(allowances)).with_allowances(
        {piece.outline[-1].name: Allowance("facing_edge")}
    )
    return Change(
        after.with_operations(_order(context.slug, piece)),
        splits=splits,
        removals=dict.fromkeys([*gone, *off, seam], _GONE),
        asked={
            child_name(cap.name, "above"): piece.edge(child_name(cap.name, "above")).length - cap.length
            for cap in sleeve.cap
        },
        notes=tuple(told_outside(STEP.operation, piece.name, "length", length, CAP_LENGTH)),
    )


def sleeve_edges(sleeve: FoundSleeve) -> set[str]:
    """The edges of a sleeve below its cap."""
    caps = {edge.name for edge in sleeve.cap}
    return {edge.name for edge in sleeve.piece.outline if edge.name not in caps}


def _trim(pattern: Pattern, sleeve: FoundSleeve, which: Which) -> float:
    """How much of half the upper cap is cut off, so that no more is eased in than a short run takes, mm."""
    seam = pattern.seams[part_name(sleeve.slug, f"{which}_armhole")]
    upper = notch_from_top(pattern, sleeve.piece.name, which) - seam.ease
    return max(seam.ease - _EASE_KEPT * upper, 0.0)


def _cut_off(slug: str, sleeve: FoundSleeve, length: float, trims: Mapping[Which, float]) -> Piece:
    """What is left of the sleeve: the upper cap and its hem; StepRefused ``cap-sleeve-length``."""
    front, back = sleeve.cap
    owner = piece_name(slug, "sleeve")
    fore = front.path.between(sleeve.notches[0] + trims["front"], front.length)
    hind = back.path.between(0.0, sleeve.notches[1] - trims["back"] - front.length)
    top = sleeve.piece.points[sleeve.name("crown")]
    lowest = Point((fore.start.x + hind.end.x) / 2.0, top.y - length)
    if lowest.y > min(fore.start.y, hind.end.y) or not sleeve.piece.sew_line.contains(lowest):
        raise StepRefused("cap-sleeve-length", length=length, least=top.y - min(fore.start.y, hind.end.y))
    hem = Path.of(
        curve_between(hind.end, 2.0 * (lowest - hind.end).direction(), lowest, 0.0),
        curve_between(lowest, 0.0, fore.start, 2.0 * (fore.start - lowest).direction()),
    )
    sides = (
        Side("cap", "hem_front", fore, keeps=child_name(front.name, "above")),
        Side("cap", "", hind, keeps=child_name(back.name, "above"), from_point=back.start),
        Side("hem", "hem_back", hem, "plain"),
    )
    crown = tuple(mark for mark in sleeve.piece.marks if mark.name == sleeve.name("crown"))
    return replace(
        sleeve.piece,
        title="Cap sleeve",
        outline=outlined(owner, sides),
        intakes=(),
        lines=(),
        marks=crown,
        instructions=(CutInstruction("self", 2),),
    )


def _armhole_parted(
    pattern: Pattern, after: Pattern, slug: str, sleeve: FoundSleeve, half: tuple[Which, float]
) -> tuple[Pattern, dict[str, tuple[str, ...]]]:
    """``after`` with one armhole divided where the sleeve begins; its seam and notches on the upper part
    alone.

    StepRefused ``cap-sleeve-armhole`` where the armhole is in parts already.
    """
    which, trim = half
    seam = pattern.seams[part_name(sleeve.slug, f"{which}_armhole")]
    (use,) = seam.first
    members = require(pattern, use.edge)
    if len(members) != 1:
        raise StepRefused("cap-sleeve-armhole", armhole=spoken(use.edge))
    edge, piece = pattern.edges[members[0]], pattern.piece_of(members[0])
    notch = next(
        n
        for n in pattern.notches.values()
        if n.place.edge == use.edge and last_word(n.name) == "balance_notch"
    )
    up = place_distance(pattern, notch.place)
    runs_up = edge.start == use.starts_at
    at = up if (notch.place.from_point == use.starts_at) == runs_up else edge.length - up
    point = part_name(piece_name(slug, last_word(piece.name)), "hem_end")
    roles = ("below", "above") if runs_up else ("above", "below")
    names = EdgeNames(child_name(edge.name, roles[0]), child_name(edge.name, roles[1]), point, point)
    parts = cut_edge(edge, at, names)
    index = piece.edge_index(edge.name)
    outline = (*piece.outline[:index], *parts, *piece.outline[index + 1 :])
    above = child_name(edge.name, "above")
    cap = child_name(sleeve.name(f"cap_{which}"), "above")
    cap_end = part_name(piece_name(slug, "sleeve"), f"hem_{which}")
    between = ("start", seam.ease_between[1]) if seam.ease_between else None
    sewn = replace(
        seam,
        first=(EdgeUse(above, point),),
        second=(EdgeUse(cap, cap_end),),
        ease=seam.ease - trim,
        ease_between=between,
    )
    moved = [
        *_moved(pattern, use.edge, use.starts_at, (above, point), at if runs_up else edge.length - at),
        *_moved(
            pattern,
            sleeve.name(f"cap_{which}"),
            sleeve.name(f"underarm_{which}"),
            (cap, cap_end),
            (sleeve.notches[0] if which == "front" else sleeve.line.length - sleeve.notches[1]) + trim,
        ),
    ]
    after = after.with_pieces(replace(piece, outline=outline)).with_seams(sewn).with_notches(*moved)
    after = after.with_allowances({child_name(edge.name, "below"): Allowance("facing_edge")})
    return after, {edge.name: tuple(part.name for part in parts)}


def _moved(before: Pattern, edge: str, underarm: str, now: tuple[str, str], cut: float) -> list[Notch]:
    """The notches of an edge, counted from where the sleeve begins."""
    found: list[Notch] = []
    for notch in before.notches.values():
        if notch.place.edge == edge:
            distance = place_distance(before, notch.place)
            if notch.place.from_point != underarm:
                distance = sewn_length(before, edge) - distance
            found.append(replace(notch, place=Place(*now, max(distance - cut, 0.0))))
    return found


def _order(slug: str, piece: Piece) -> Operation:
    text = "Sew the two layers of the cap sleeve along the hem right sides together, turn and press them."
    return Operation(part_name(slug, "made"), "prepare", text, (piece.name,))


STEP = StepDefinition(
    operation="cap_sleeve",
    version=1,
    kind="style",
    title="Cap sleeve",
    sentence="{sleeve} ends on its cap, {length} long",
    parameters=CapSleeveParameters,
    run=run,
)
