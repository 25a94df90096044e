"""Seams, notches and allowances of the bodice."""

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.bodice_pieces.below_waist import HipHalf, HipPanel
from notchbook.blocks.upper.bust_line import bust_line
from notchbook.blocks.upper.shapes import BodiceHalf
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

_ALLOWANCES = {"neck": "neckline", "armhole": "armhole"}
"""The allowance classes of the edges that no seam of the block joins yet."""


def seams(names: PanelNames, shoulder_ease: float, *, center_front_is_seam: bool) -> tuple[Seam, ...]:
    """Shoulder (the back eased by mm) and side seam; the center front where a dart opens in it."""
    front, back = names.piece("front"), names.piece("back")

    def both(name: str, word: str, start: str, ease: float, allowance_class: str) -> Seam:
        return Seam(
            name,
            first=(EdgeUse(part_name(front, word), part_name(front, start)),),
            second=(EdgeUse(part_name(back, word), part_name(back, start)),),
            ease=ease,
            allowance_class=allowance_class,
        )

    found = [
        both(names.whole("shoulder"), "shoulder", "side_neck_point", shoulder_ease, "shoulder"),
        both(names.side_seam, "side_seam", "underarm", 0.0, "side"),
    ]
    if center_front_is_seam:
        center, top = part_name(front, "center_front"), part_name(front, "neck_pit")
        found.append(
            Seam(
                names.whole("center_front"),
                first=(EdgeUse(center, top, "right"),),
                second=(EdgeUse(center, top, "left"),),
                allowance_class="center_front",
            )
        )
    return tuple(found)


NOTCH_FROM_END = 20.0
"""mm that a notch stays off the ends of the side seam. Common practice, no source."""


def cut_data(
    pattern: Pattern, names: PanelNames, half: BodiceHalf, hip: HipHalf | None, lower_class: str
) -> Pattern:
    """Allowance classes and notches: the balance notches, those on the side seam at bust line and waist."""
    pieces = {which: names.piece(which) for which in ("front", "back")}
    classes = _ALLOWANCES | ({"hem" if hip else "waist": lower_class} if lower_class else {})
    allowances = {
        part_name(piece, word): Allowance(allowance_class)
        for piece in pieces.values()
        for word, allowance_class in classes.items()
    }
    side_seam = names.side_seam
    notches = [
        _balance_notch(pieces["front"], "single", balance_distance(half.front.armhole, half.front.across)),
        _balance_notch(pieces["back"], "double", balance_distance(half.back.armhole, half.back.across)),
        *(_side_notch(piece, side_seam, "side", _bust_distance(half)) for piece in pieces.values()),
    ]
    if hip is not None:
        below = (hip.front, hip.back)
        notches += [
            _side_notch(piece, side_seam, "waist", _waist_distance(panel))
            for piece, panel in zip(pieces.values(), below, strict=True)
        ]
    return pattern.with_allowances(allowances).with_notches(*notches)


def _bust_distance(half: BodiceHalf) -> float:
    """From the underarm down the back side seam to the bust line, clear of both ends, mm."""
    side = half.back.side
    distance = side.start.distance_to(bust_line(half).back_side)
    return min(max(distance, min(NOTCH_FROM_END, side.length / 2.0)), side.length - NOTCH_FROM_END)


def _waist_distance(panel: HipPanel) -> float:
    """From the underarm down the side seam to the waist line, mm."""
    return panel.side.length - panel.side.nearest(panel.waist_side).distance_along


def balance_distance(armhole: Path, across: Point) -> float:
    """From the underarm along the armhole to where it is upright, mm: there the balance notch stands."""
    return armhole.length - armhole.nearest(across).distance_along


def _balance_notch(piece: str, kind: NotchKind, distance: float) -> Notch:
    place = Place(part_name(piece, "armhole"), part_name(piece, "underarm"), distance)
    return Notch(part_name(piece, "balance_notch"), place, kind=kind, purpose="sleeve")


_PURPOSES = {"side": "bust level", "waist": "waist"}


def _side_notch(piece: str, seam: str, word: str, distance: float) -> Notch:
    place = Place(part_name(piece, "side_seam"), part_name(piece, "underarm"), distance)
    return Notch(part_name(piece, f"{word}_notch"), place, seam=seam, purpose=_PURPOSES[word])
