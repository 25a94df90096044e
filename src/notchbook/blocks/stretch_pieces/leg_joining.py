"""How leggings are sewn: seams, notches, allowances."""

from collections.abc import Iterator

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.stretch.shapes import LeggingsLeg
from notchbook.blocks.stretch_pieces.outline import at_height
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
    """The casing at the waist, the hem, and notches at the knee; two at the back of the crotch."""
    words = ("front", "back") if has_side_seam else ("leg",)
    allowances = {
        names.at(word, edge): Allowance(allowance_class)
        for word in words
        for edge, allowance_class in (("waist", "elastic_casing"), ("hem", "hem_top"))
    }
    return pattern.with_allowances(allowances).with_notches(
        *_knee_notches(names, leg, has_side_seam=has_side_seam)
    )


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


def _knee_notches(names: PanelNames, leg: LeggingsLeg, *, has_side_seam: bool) -> Iterator[Notch]:
    for which, panel in (("front", leg.front), ("back", leg.back)):
        if leg.knee_level <= panel.hem.start.y:
            continue
        piece = which if has_side_seam else "leg"
        edge = "inseam" if has_side_seam else f"{which}_inseam"
        start = "crotch_point" if has_side_seam else f"crotch_point_{which}"
        runs = [("inseam", panel.inseam, edge, start)]
        if has_side_seam:
            runs.append(("side_seam", panel.side, "side_seam", "waist_side"))
        for seam, path, word, point in runs:
            distance = path.nearest(at_height(path, leg.knee_level)).distance_along
            place = Place(names.at(piece, word), names.at(piece, point), distance)
            yield Notch(names.at(piece, word, "knee_notch"), place, seam=names.whole(seam), purpose="knee")
