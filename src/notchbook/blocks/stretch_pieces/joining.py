"""How torso and bodysuit are sewn: seams, notches, allowances."""

from collections.abc import Iterator
from dataclasses import replace

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.stretch.figures import figure
from notchbook.blocks.stretch.shapes import BodysuitHalf, TorsoHalf
from notchbook.blocks.stretch_pieces.outline import KINDS, at_height
from notchbook.pattern import Allowance, EdgeUse, Notch, Pattern, Place, Seam, part_name

Half = TorsoHalf | BodysuitHalf


def upper_seams(names: PanelNames, half: Half) -> tuple[Seam, ...]:
    """Shoulder and side seam; with a sleeve both halves of the armhole and the seam under the arm."""
    found = [
        _between(names, names.whole("shoulder"), "shoulder", "side_neck_point", "shoulder"),
        _side(names, half),
    ]
    if half.sleeve is not None:
        sleeve = names.piece("sleeve")
        found += [_armhole(names, sleeve, which) for which in ("front", "back")]
        found.append(
            Seam(
                names.whole("sleeve_seam"),
                first=(EdgeUse(part_name(sleeve, "front_seam"), part_name(sleeve, "underarm_front")),),
                second=(EdgeUse(part_name(sleeve, "back_seam"), part_name(sleeve, "underarm_back")),),
                allowance_class="side",
            )
        )
    return tuple(found)


def crotch_seams(names: PanelNames) -> tuple[Seam, ...]:
    """Front and back joined at the crotch, and the lining laid into that seam."""
    return (
        _between(names, names.whole("crotch"), "crotch", "crotch_side", "overlock"),
        Seam(
            names.whole("lining_crotch"),
            first=(EdgeUse(names.at("back", "crotch"), names.at("back", "crotch_side")),),
            second=(EdgeUse(names.at("lining", "crotch"), names.at("lining", "crotch_side")),),
            allowance_class="overlock",
        ),
    )


def upper_cut_data(pattern: Pattern, names: PanelNames, half: Half, classes: dict[str, str]) -> Pattern:
    """Notches, and the allowance classes of the edges that no seam joins, by their words."""
    allowances = {
        names.at(which, edge): Allowance(allowance_class)
        for which in ("front", "back")
        for edge, allowance_class in classes.items()
    }
    if half.sleeve is not None:
        allowances[names.at("sleeve", "hem")] = Allowance("hem_sleeve")
    return pattern.with_allowances(allowances).with_notches(
        *_side_notches(names, half), *_armhole_notches(names, half), *_leg_notches(names, half)
    )


def _between(names: PanelNames, name: str, edge: str, start: str, allowance_class: str) -> Seam:
    """A seam of the same edge of front and back."""
    front, back = (EdgeUse(names.at(which, edge), names.at(which, start)) for which in ("front", "back"))
    return Seam(name, (front,), (back,), allowance_class=allowance_class)


def _side(names: PanelNames, half: Half) -> Seam:
    """The side seam; a front that is longer over the bust is eased into the back between two notches."""
    seam = _between(names, names.side_seam, "side_seam", "underarm", "side")
    if half.front_length.longer == 0.0:
        return seam
    return replace(seam, ease=-half.eased, ease_between=EASE_NOTCHES)


def _armhole(names: PanelNames, sleeve: str, which: str) -> Seam:
    return Seam(
        names.whole(f"{which}_armhole"),
        first=(EdgeUse(names.at(which, "armhole"), names.at(which, "underarm")),),
        second=(EdgeUse(part_name(sleeve, f"cap_{which}"), part_name(sleeve, f"underarm_{which}")),),
        allowance_class="armhole",
    )


EASE_NOTCHES = ("upper_ease_notch", "lower_ease_notch")
"""Between them a front that is longer over the bust is eased in."""

NOTCH_FROM_END = 20.0
"""mm that a notch stays off the ends of the side seam. Common practice, no source."""


def _side_notches(names: PanelNames, half: Half) -> Iterator[Notch]:
    """On the side seam at waist and hip, where these lie clear of its ends."""
    side = half.back.side
    for word, height in (("waist", half.levels.waist), ("hip", half.levels.hip)):
        distance = side.nearest(at_height(side, height)).distance_along
        if height <= side.end.y or not NOTCH_FROM_END < distance < side.length - NOTCH_FROM_END:
            continue
        yield from _on_side(names, half, f"{word}_notch", word, distance, half.eased)
    if half.front_length.longer > 0.0:
        waist = side.nearest(at_height(side, half.levels.waist)).distance_along
        off = figure("front.ease_from_end")
        for name, distance, eased in zip(EASE_NOTCHES, (off, waist - off), (0.0, half.eased), strict=True):
            yield from _on_side(names, half, name, "ease", distance, eased)


def _on_side(
    names: PanelNames, half: Half, name: str, purpose: str, distance: float, eased: float
) -> Iterator[Notch]:
    """One on the back so far from the underarm (mm), its mate on the front ``eased`` mm farther."""
    for which, place in (("front", distance + eased), ("back", distance)):
        at = Place(names.at(which, "side_seam"), names.at(which, "underarm"), place)
        yield Notch(names.at(which, name), at, seam=names.side_seam, purpose=purpose)


def _armhole_notches(names: PanelNames, half: Half) -> Iterator[Notch]:
    """One in front, two behind; the cap has its own as far from the underarm, and one at the shoulder."""
    if half.sleeve is None:
        return
    sleeve = names.piece("sleeve")
    for which, panel in (("front", half.front), ("back", half.back)):
        kind, distance = KINDS[which], panel.notch
        seam, cap = names.whole(f"{which}_armhole"), part_name(sleeve, f"cap_{which}")
        hole = Place(names.at(which, "armhole"), names.at(which, "underarm"), distance)
        mate = Place(cap, part_name(sleeve, f"underarm_{which}"), distance)
        yield Notch(names.at(which, "balance_notch"), hole, kind=kind, seam=seam, purpose="armhole")
        yield Notch(part_name(cap, "balance_notch"), mate, kind=kind, seam=seam, purpose="armhole")
    crown = Place(part_name(sleeve, "cap_front"), part_name(sleeve, "cap_top"), 0.0)
    yield Notch(part_name(sleeve, "shoulder_notch"), crown, purpose="shoulder seam")


def _leg_notches(names: PanelNames, half: Half) -> Iterator[Notch]:
    """Half way along the leg opening of front and back, for the elastic, and half way along the join; the
    lining that is laid into that seam has its own there."""
    if not isinstance(half, BodysuitHalf):
        return
    for which, panel in (("front", half.front), ("back", half.back)):
        start, kind = names.at(which, "crotch_side"), KINDS[which]
        leg = Place(names.at(which, "leg_opening"), start, panel.leg.length / 2.0)
        yield Notch(names.at(which, "leg_notch"), leg, kind=kind, purpose="elastic")
        join = Place(names.at(which, "crotch"), start, panel.crotch.length / 2.0)
        yield Notch(names.at(which, "join_notch"), join, seam=names.whole("crotch"), purpose="crotch join")
    middle = half.front.crotch.length / 2.0
    lining = Place(names.at("lining", "crotch"), names.at("lining", "crotch_side"), middle)
    yield Notch(names.at("lining", "join_notch"), lining, purpose="crotch join")
