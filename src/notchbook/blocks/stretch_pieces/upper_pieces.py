"""Torso and bodysuit as pieces: front, back, sleeve and the lining of the crotch."""

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.stretch.shapes import BodysuitPanel, Levels, StretchSleeve, TorsoPanel
from notchbook.blocks.stretch_pieces.outline import ACROSS, Drawing, Run, at_height, named_piece
from notchbook.geometry import Path, Point, curve_between
from notchbook.pattern import Piece
from notchbook.units import TOLERANCES

_CENTERS = {"front": "neck_pit", "back": "nape"}
"""What the neck's end at the center is called."""


_MOST_LINING = 0.75
"""Share of the height of the leg opening that the lining takes at most: above, the leg runs level (own
judgment)."""


_INWARD = 2.0
"""Degrees by which the top of a lining leaves the leg line inward at least (own judgment)."""

_STEEPEST = 80.0
"""Degrees over the level at which the top of a lining leaves the leg at most (own judgment)."""


def torso_piece(
    names: PanelNames, which: str, panel: TorsoPanel, levels: Levels, nape: float | None = None
) -> Piece:
    """A panel to waist or hip, cut on the fold of its center. ``nape`` is the height of the body's nape,
    mm, where the back neck is cut lower."""
    hem = (Run("hem", panel.hem, "hem_center", "hem"), Run("side_seam", panel.side.reversed(), "hem_side"))
    return _panel(names, which, panel, levels, hem, nape)


def bodysuit_piece(
    names: PanelNames, which: str, panel: BodysuitPanel, levels: Levels, nape: float | None = None
) -> Piece:
    """A panel to the crotch, cut on the fold of its center; ``nape`` as of the torso."""
    lower = (
        Run("crotch", panel.crotch.reversed(), "crotch_center"),
        Run("leg_opening", panel.leg.reversed(), "crotch_side"),
        Run("side_seam", panel.side.reversed(), "leg_side"),
    )
    return _panel(names, which, panel, levels, lower, nape)


def lining_piece(names: PanelNames, front: BodysuitPanel, height: float) -> Piece:
    """The lining of the crotch: the front from its join up to ``height`` mm over it, edge on edge.

    At the center, which belongs to both of the wearer's sides, it always is so high.
    """
    leg = front.leg.reversed()
    level = leg.start.y + min(height, _MOST_LINING * (leg.end.y - leg.start.y))
    top = at_height(leg, level)
    lower = leg.between(0.0, leg.nearest(top).distance_along)
    center = Point(0.0, leg.start.y + height)
    drawing = Drawing(
        "Crotch lining",
        (
            Run("crotch", front.crotch.reversed(), "crotch_center"),
            Run("leg_opening", lower, "crotch_side"),
            Run("upper", _lining_top(lower, center), "upper_side", "plain"),
            Run("center_front", Path.line(center, front.crotch.end), "upper_center", "fold"),
        ),
        material="lining",
    )
    return named_piece(names.piece("lining"), drawing).transformed(ACROSS)


def _lining_top(leg: Path, center: Point) -> Path:
    """From the end of the leg line to the center, where it is square; it leaves the leg inward."""
    lift = 180.0 - (center - leg.end).direction() % 360.0
    along = leg.tangent_at(leg.length).direction() % 360.0
    leaving = max(180.0 - min(2.0 * lift, max(lift, _STEEPEST)), along + _INWARD)
    return Path.of(curve_between(leg.end, leaving, center, 180.0))


def sleeve_piece(names: PanelNames, sleeve: StretchSleeve) -> Piece:
    """The wearer's right sleeve, face up: front toward +x, biceps line at y = 0; cut as a pair."""
    biceps = Path.line(sleeve.cap_back.start, sleeve.cap_front.start)
    middle = sleeve.hem.point_at(sleeve.hem.length / 2.0)
    drawing = Drawing(
        "Sleeve",
        (
            Run("hem", sleeve.hem, "hem_back", "hem"),
            Run("front_seam", sleeve.front_seam.reversed(), "hem_front"),
            Run("cap_front", sleeve.cap_front, "underarm_front"),
            Run("cap_back", sleeve.cap_back.reversed(), "cap_top"),
            Run("back_seam", sleeve.back_seam, "underarm_back"),
        ),
        levels=(("biceps_line", biceps),),
        marks=(("hem_middle", Point(sleeve.crown.x, middle.y)),),
        cut="pair",
    )
    return named_piece(names.piece("sleeve"), drawing)


def _panel(
    names: PanelNames,
    which: str,
    panel: TorsoPanel | BodysuitPanel,
    levels: Levels,
    lower: tuple[Run, ...],
    nape: float | None,
) -> Piece:
    """A panel from its lower edge round; a front is reflected."""
    pit, end = panel.neck.start, lower[0].path.start
    runs = (
        *lower,
        Run("armhole", panel.armhole.reversed(), "underarm"),
        Run("shoulder", panel.shoulder.reversed(), "shoulder_point"),
        Run("neck", panel.neck.reversed(), "side_neck_point"),
        Run(f"center_{which}", Path.line(pit, end), _CENTERS[which], "fold"),
    )
    marks = [("waist_center", Point(0.0, levels.waist))] if end.y < levels.waist else []
    if nape is not None and nape > pit.y and which == "back":
        marks.append(("neck_base", Point(0.0, nape)))
    drawing = Drawing(names.title(which), runs, tuple(_levels(panel, which, levels)), tuple(marks))
    piece = named_piece(names.piece(which), drawing)
    return piece if which == "back" else piece.transformed(ACROSS)


def _levels(panel: TorsoPanel | BodysuitPanel, which: str, levels: Levels) -> list[tuple[str, Path]]:
    """The level lines that run from the center to the side within the piece."""
    across = f"across_{'chest' if which == 'front' else 'back'}_line"
    low = panel.side.end.y
    found = [("bust_line", Path.line(Point(0.0, levels.underarm), panel.underarm))]
    if panel.across.y < min(panel.neck.start.y, panel.shoulder.end.y):
        found.append((across, Path.line(Point(0.0, panel.across.y), panel.across)))
    found += [
        (word, Path.line(Point(0.0, height), at_height(panel.side, height)))
        for word, height in (("waist_line", levels.waist), ("hip_line", levels.hip))
        if height >= low - TOLERANCES.join
    ]
    return found
