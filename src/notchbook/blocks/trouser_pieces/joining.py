"""How trousers are sewn: seams, notches and allowance classes."""

import math
from collections.abc import Iterator, Mapping

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.legs.shapes import TrouserPanel, TrousersHalf
from notchbook.blocks.trouser_pieces.promises import Drafted
from notchbook.geometry import Path, Point
from notchbook.pattern import (
    Allowance,
    EdgeUse,
    Notch,
    NotchKind,
    Pattern,
    Place,
    Seam,
    part_name,
)

KNEE_NOTCH = "knee_notch"
"""The last word of the notches at the knee: the inseam is stretched above it."""

_KINDS: dict[str, NotchKind] = {"front": "single", "back": "double"}
"""A double notch is the sign of the back."""

_FLAT_HEM = 0.0009
"""1/mm; a hem 32 mm deep on a stronger curve differs at its raw edge by 2.9 % (own judgment: just under the
3 % from which the house warns)."""

LEAST_STRETCH = 0.05
"""mm below which nothing is stretched."""


def trouser_seams(names: PanelNames, half: TrousersHalf, stretch: float) -> tuple[Seam, ...]:
    """Side seam from the waist, inseam from the crotch point, crotch seams between the wearer's two legs.

    The back inseam is shorter than the front one by ``stretch`` mm and is stretched onto it above the knee.
    """
    is_stretched = stretch > LEAST_STRETCH
    has_knee = half.front.knee_inseam is not None
    return (
        _seam(names, "side_seam", "waist_side", ("front", "back"), "side"),
        Seam(
            names.whole("inseam"),
            first=(EdgeUse(names.at("back", "inseam"), names.at("back", "crotch_point")),),
            second=(EdgeUse(names.at("front", "inseam"), names.at("front", "crotch_point")),),
            ease=stretch if is_stretched else 0.0,
            allowance_class="inseam",
            ease_between=("start", KNEE_NOTCH) if is_stretched and has_knee else None,
            gives="shorter" if is_stretched else "longer",
        ),
        _crotch_seam(names, "front"),
        _crotch_seam(names, "back"),
    )


def _seam(names: PanelNames, word: str, start: str, panels: tuple[str, str], allowance_class: str) -> Seam:
    first, second = (EdgeUse(names.at(which, word), names.at(which, start)) for which in panels)
    return Seam(names.whole(word), first=(first,), second=(second,), allowance_class=allowance_class)


def _crotch_seam(names: PanelNames, which: str) -> Seam:
    edge, top = names.at(which, "crotch_seam"), names.at(which, "waist_center")
    return Seam(
        names.whole(f"{which}_crotch_seam"),
        first=(EdgeUse(edge, top, "right"),),
        second=(EdgeUse(edge, top, "left"),),
        allowance_class="crotch",
    )


def cut_data(pattern: Pattern, drafted: Drafted) -> Pattern:
    """Allowance classes, and the notches at hip, knee and where the crotch seam begins to curve."""
    names = drafted.names
    panels = {"front": drafted.half.front, "back": drafted.half.back}
    ways = dict(zip(panels, drafted.notches, strict=True))
    hem = "hem_trousers" if all(map(_is_flat, panels.values())) else "hem_trousers_tapered"
    allowances = {
        names.at(which, edge): Allowance(allowance_class)
        for which in panels
        for edge, allowance_class in (("waist", "waist"), ("hem", hem))
    }
    notches = [
        notch for which, panel in panels.items() for notch in _notches(names, which, panel, ways[which])
    ]
    notches += _knee_notches(names, panels)
    return pattern.with_allowances(allowances).with_notches(*notches)


def _notches(names: PanelNames, which: str, panel: TrouserPanel, crotch: float) -> Iterator[Notch]:
    side = names.at(which, "side_seam")
    waist, fork = names.at(which, "waist_side"), names.at(which, "crotch_point")
    hip = Place(side, waist, _along(panel.side, panel.hip_side))
    yield Notch(names.at(which, "hip_notch"), hip, seam=names.side_seam, purpose="hip")
    curve = Place(names.at(which, "crotch_seam"), fork, crotch)
    yield Notch(
        names.at(which, "crotch_notch"),
        curve,
        kind=_KINDS[which],
        seam=names.whole(f"{which}_crotch_seam"),
        purpose="crotch curve",
    )
    if panel.knee_side is not None:
        outer = Place(side, waist, _along(panel.side, panel.knee_side))
        yield Notch(part_name(side, KNEE_NOTCH), outer, seam=names.side_seam, purpose="knee")


def _knee_notches(names: PanelNames, panels: Mapping[str, TrouserPanel]) -> Iterator[Notch]:
    """On the inseams, as far from the hem of the back as from that of the front: below the knee nothing is
    stretched. On the back, which bends more, that is a hair off its knee line."""
    front = panels["front"]
    if front.knee_inseam is None:
        return
    below = front.inseam.length - _along(front.inseam, front.knee_inseam)
    for which, panel in panels.items():
        inseam = names.at(which, "inseam")
        place = Place(inseam, names.at(which, "crotch_point"), panel.inseam.length - below)
        yield Notch(part_name(inseam, KNEE_NOTCH), place, seam=names.whole("inseam"), purpose="knee")


def _along(path: Path, point: Point) -> float:
    return path.nearest(point).distance_along


def _is_flat(panel: TrouserPanel) -> bool:
    """Whether the hem curves so little that it can be turned at its full depth."""
    hem = panel.hem
    turn = abs(hem.tangent_at(hem.length).direction() - hem.tangent_at(0.0, "after").direction())
    return math.radians(min(turn, 360.0 - turn)) <= _FLAT_HEM * hem.length
