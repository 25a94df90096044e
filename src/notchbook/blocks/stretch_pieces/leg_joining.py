"""How leggings are sewn: seams, notches, allowances."""

from collections.abc import Iterator

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.stretch.shapes import LeggingsLeg, LegPanel
from notchbook.blocks.stretch_pieces.cuts import cut
from notchbook.blocks.stretch_pieces.outline import KINDS, at_height
from notchbook.pattern import Allowance, EdgeUse, Notch, Pattern, Place, Seam


def leg_seams(names: PanelNames, *, has_side_seam: bool) -> tuple[Seam, ...]:
    """The inseam, the side seam where there is one, and both halves of the crotch from left to right."""
    if has_side_seam:
        return (
            _seam(
                names,
                "side_seam",
                [("front", "side_seam", "waist_side"), ("back", "side_seam", "waist_side")],
            ),
            _seam(names, "inseam", [("front", "inseam", "crotch_point"), ("back", "inseam", "crotch_point")]),
            *(_crotch(names, which, which, "crotch_seam", "waist_center") for which in ("front", "back")),
        )
    ends = [("leg", f"{which}_inseam", f"crotch_point_{which}") for which in ("front", "back")]
    return (
        _seam(names, "inseam", ends),
        *(
            _crotch(names, which, "leg", f"{which}_crotch_seam", f"waist_center_{which}")
            for which in ("front", "back")
        ),
    )


def leg_cut_data(pattern: Pattern, names: PanelNames, leg: LeggingsLeg, *, has_side_seam: bool) -> Pattern:
    """The casing at the waist, the hem, and notches at crotch, side and knee; the back's is double."""
    words = ("front", "back") if has_side_seam else ("leg",)
    allowances = {
        names.at(word, edge): Allowance(allowance_class)
        for word in words
        for edge, allowance_class in (("waist", "elastic_casing"), ("hem", "hem_top"))
    }
    sides = _side_notches(names, leg, has_side_seam=has_side_seam)
    notches = [
        notch
        for which, panel in (("front", leg.front), ("back", leg.back))
        for notch in (
            _crotch_notch(names, which, panel, has_side_seam=has_side_seam),
            *_knee_notches(names, which, panel, leg.knee_level, has_side_seam=has_side_seam),
        )
    ]
    return pattern.with_allowances(allowances).with_notches(*sides, *notches)


def _seam(names: PanelNames, word: str, runs: list[tuple[str, str, str]]) -> Seam:
    first, second = (EdgeUse(names.at(piece, edge), names.at(piece, start)) for piece, edge, start in runs)
    return Seam(names.whole(word), (first,), (second,), allowance_class="overlock")


def _crotch(names: PanelNames, which: str, piece: str, edge: str, start: str) -> Seam:
    """One half of the crotch, sewn between the wearer's two legs."""
    name, point = names.at(piece, edge), names.at(piece, start)
    return Seam(
        names.whole(f"{which}_crotch_seam"),
        first=(EdgeUse(name, point, "right"),),
        second=(EdgeUse(name, point, "left"),),
        allowance_class="overlock",
    )


def _crotch_notch(names: PanelNames, which: str, panel: LegPanel, *, has_side_seam: bool) -> Notch:
    """A share of the seam from the inseam: so the wearer's two legs have it at the same place."""
    piece, edge, start = _at(which, "crotch_seam", "crotch_point", has_side_seam=has_side_seam)
    place = Place(names.at(piece, edge), names.at(piece, start), cut("crotch.notch") * panel.crotch.length)
    seam = names.whole(f"{which}_crotch_seam")
    name = names.at(piece, edge, "crotch_notch")
    return Notch(name, place, kind=KINDS[which], seam=seam, purpose="crotch curve")


def _side_notches(names: PanelNames, leg: LeggingsLeg, *, has_side_seam: bool) -> Iterator[Notch]:
    """The hip on the side seams; without them the side on the waist edge, which tells front from back."""
    if not has_side_seam:
        place = Place(names.at("leg", "waist"), names.at("leg", "waist_center_front"), leg.front.waist.length)
        yield Notch(names.at("leg", "side_notch"), place, purpose="side")
        return
    for which, panel in (("front", leg.front), ("back", leg.back)):
        distance = panel.side.nearest(at_height(panel.side, leg.hip_level)).distance_along
        place = Place(names.at(which, "side_seam"), names.at(which, "waist_side"), distance)
        yield Notch(names.at(which, "hip_notch"), place, seam=names.side_seam, purpose="hip")


def _knee_notches(
    names: PanelNames, which: str, panel: LegPanel, knee_level: float, *, has_side_seam: bool
) -> Iterator[Notch]:
    if knee_level <= panel.hem.start.y:
        return
    runs = [("inseam", panel.inseam, *_at(which, "inseam", "crotch_point", has_side_seam=has_side_seam))]
    if has_side_seam:
        runs.append(("side_seam", panel.side, which, "side_seam", "waist_side"))
    for seam, path, piece, word, point in runs:
        distance = path.nearest(at_height(path, knee_level)).distance_along
        place = Place(names.at(piece, word), names.at(piece, point), distance)
        yield Notch(names.at(piece, word, "knee_notch"), place, seam=names.whole(seam), purpose="knee")


def _at(which: str, edge: str, point: str, *, has_side_seam: bool) -> tuple[str, str, str]:
    """The piece, the edge and the point of a front or back by their words."""
    return (which, edge, point) if has_side_seam else ("leg", f"{which}_{edge}", f"{point}_{which}")
