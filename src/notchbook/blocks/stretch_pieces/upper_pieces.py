"""Torso and bodysuit as pieces: front, back, sleeve and the lining of the crotch."""

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.stretch.shapes import BodysuitPanel, Levels, StretchSleeve, TorsoPanel
from notchbook.blocks.stretch_pieces.cuts import cut
from notchbook.blocks.stretch_pieces.outline import ACROSS, Drawing, Run, at_height, named_piece
from notchbook.geometry import Path, Point, curve_between
from notchbook.pattern import Piece
from notchbook.units import TOLERANCES

_CENTERS = {"front": "neck_pit", "back": "nape"}
"""What the neck's end at the center is called."""


_LINING_SIDE = 55.0
"""Degrees over the level to which the side of a lining follows the leg line: where it runs flatter, the
lining would end in a beak (own judgment)."""


_INWARD = 2.0
"""Degrees by which the top of a lining leaves the leg line inward at least (own judgment)."""

_STEEPEST = 80.0
"""Degrees over the level at which the top of a lining leaves the leg at most (own judgment)."""


def torso_piece(names: PanelNames, which: str, panel: TorsoPanel, levels: Levels) -> Piece:
    """A panel to waist or hip, cut on the fold of its center."""
    hem = (Run("hem", panel.hem, "hem_center", "hem"), Run("side_seam", panel.side.reversed(), "hem_side"))
    return _panel(names, which, panel, levels, hem)


def bodysuit_piece(names: PanelNames, which: str, panel: BodysuitPanel, levels: Levels) -> Piece:
    """A panel to the crotch, cut on the fold of its center."""
    lower = (
        Run("crotch", panel.crotch.reversed(), "crotch_center"),
        Run("leg_opening", panel.leg.reversed(), "crotch_side"),
        Run("side_seam", panel.side.reversed(), "leg_side"),
    )
    return _panel(names, which, panel, levels, lower)


def lining_piece(names: PanelNames, front: BodysuitPanel, height: float) -> Piece:
    """The lining of the crotch: the front from its join up to ``height`` mm over it, edge on edge.

    At the center, which belongs to both of the wearer's sides, it always is so high.
    """
    leg = front.leg.reversed()
    top = leg.nearest(at_height(leg, leg.start.y + height)).distance_along
    lower = leg.between(0.0, min(top, _steep_way(leg)))
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


def lining_height(front: BodysuitPanel, most: float) -> float:
    """How high the lining stands over the join at the center, mm: so that its upper edge is a shallow arc
    from where the leg line runs flat, but no more than ``most``."""
    leg = front.leg.reversed()
    flat = leg.point_at(_steep_way(leg)).y - leg.start.y
    return min(flat + cut("crotch.lining_rise"), most)


def _steep_way(leg: Path) -> float:
    """How far up from the crotch a leg line runs steeply, mm."""
    steep, flat = 0.0, leg.length
    while flat - steep > TOLERANCES.join:
        middle = (steep + flat) / 2.0
        if leg.tangent_at(middle).direction() % 360.0 > _LINING_SIDE:
            steep = middle
        else:
            flat = middle
    return steep


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
) -> Piece:
    """A panel from its lower edge round; a front is reflected. A back neck that is cut lower keeps a mark at
    the nape."""
    pit, end = panel.neck.start, lower[0].path.start
    runs = (
        *lower,
        Run("armhole", panel.armhole.reversed(), "underarm"),
        Run("shoulder", panel.shoulder.reversed(), "shoulder_point"),
        Run("neck", panel.neck.reversed(), "side_neck_point"),
        Run(f"center_{which}", Path.line(pit, end), _CENTERS[which], "fold"),
    )
    marks = [("waist_center", Point(0.0, levels.waist))] if end.y < levels.waist else []
    if which == "back" and levels.nape > pit.y:
        marks.append(("neck_base", Point(0.0, levels.nape)))
    lines = tuple(_levels(panel, which, levels))
    marks += _sides_of_cut_lines(panel, levels, lines)
    drawing = Drawing(names.title(which), runs, lines, tuple(marks))
    piece = named_piece(names.piece(which), drawing)
    return piece if which == "back" else piece.transformed(ACROSS)


def _levels(panel: TorsoPanel | BodysuitPanel, which: str, levels: Levels) -> list[tuple[str, Path]]:
    """The level lines from the center to the side; within the piece where neck or leg opening is cut in."""
    across = f"across_{'chest' if which == 'front' else 'back'}_line"
    low = panel.side.end.y
    found = [("bust_line", _level(panel, panel.underarm))]
    if panel.across.y < min(panel.neck.start.y, panel.shoulder.end.y):
        found.append((across, _level(panel, panel.across)))
    found += [
        (word, _level(panel, at_height(panel.side, height)))
        for word, height in (("waist_line", levels.waist), ("hip_line", levels.hip))
        if height >= low - TOLERANCES.join
    ]
    return found


def _level(panel: TorsoPanel | BodysuitPanel, end: Point) -> Path:
    """The line from the center to this place at the side, as far as there is cloth."""
    start = Point(0.0, end.y)
    if panel.neck.start.y < end.y < panel.neck.end.y:
        start = at_height(panel.neck, end.y)
    if isinstance(panel, BodysuitPanel) and panel.leg.bounds().max_y > end.y > panel.leg.end.y:
        end = at_height(panel.leg.reversed(), end.y)
    return Path.line(start, end)


def _sides_of_cut_lines(
    panel: TorsoPanel | BodysuitPanel, levels: Levels, lines: tuple[tuple[str, Path], ...]
) -> list[tuple[str, Point]]:
    """Where waist and hip lines that are cut short would meet the side: there their girths are measured."""
    heights = {"waist_line": levels.waist, "hip_line": levels.hip}
    sides = {word: at_height(panel.side, height) for word, height in heights.items()}
    return [
        (word.replace("_line", "_side"), sides[word])
        for word, line in lines
        if word in sides and abs(line.length - sides[word].x) > TOLERANCES.join
    ]
