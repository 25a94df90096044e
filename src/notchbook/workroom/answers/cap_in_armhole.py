"""The sleeve cap laid into its armhole: what whoever sets it in wants to see."""

import numpy as np
from shapely import LineString, get_coordinates

from notchbook.checks.caps import LaidCap, laid_caps, laid_points
from notchbook.checks.measured import Numbers
from notchbook.checks.word_runs import WordRun
from notchbook.pattern import Pattern, Side
from notchbook.workroom.answers.form import Answer, At
from notchbook.workroom.reader import Reader

_SMOOTH = 0.05
"""mm by which a drawn line may be off: less than a pencil's width."""


class LaidNotch(Answer):
    """A notch that armhole and cap both have: where it stands on each."""

    label: str
    on_armhole: At
    on_cap: At


class LaidHalf(Answer):
    """Front or back, mm: the underarm at 0, the side seam down along -y, the front toward +x, y up.

    The cap lies turned over onto the armhole, their underarm seams together. ``ease_text`` is by how much
    this half of the cap is longer.
    """

    front: bool
    side: Side
    armhole: str
    cap: str
    notches: tuple[LaidNotch, ...]
    ease_text: str


def caps_in_armholes(pattern: Pattern, reader: Reader) -> tuple[LaidHalf, ...]:
    """Each half cap on its armhole; none where there is no set-in sleeve."""
    return tuple(_half(laid, reader) for laid in laid_caps(pattern))


def _half(laid: LaidCap, reader: Reader) -> LaidHalf:
    toward = 1.0 if laid.is_front else -1.0
    hole, cap = laid_points(laid.armhole) * (toward, 1.0), laid_points(laid.cap) * (toward, 1.0)
    return LaidHalf(
        front=laid.is_front,
        side=laid.cap.side,
        armhole=_path_text(hole),
        cap=_path_text(cap),
        notches=tuple(
            LaidNotch(
                label=label.replace("_", " "),
                on_armhole=_place(hole, laid.armhole, on_hole),
                on_cap=_place(cap, laid.cap, on_cap),
            )
            for label, on_hole, on_cap in laid.notches
        ),
        ease_text=reader.text(laid.cap.line.length - laid.armhole.line.length),
    )


def _path_text(points: Numbers) -> str:
    """The polyline as SVG data, places left out that no eye would miss."""
    kept = get_coordinates(LineString(points).simplify(_SMOOTH))
    return "M" + "L".join(f"{x:.2f} {y:.2f}" for x, y in kept)


def _place(points: Numbers, run: WordRun, distance: float) -> At:
    x, y = (float(np.interp(distance, run.line.along, points[:, axis])) for axis in (0, 1))
    return At(x=round(x, 3), y=round(y, 3))
