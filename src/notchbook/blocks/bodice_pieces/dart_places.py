"""Where the bust dart opens: the one angle about the bust point, shared out over places of the outline.

The front comes in two frames (see ``FrontHalf``). With every dart closed about the bust point the whole
outline lies in one chart; walking round it counter-clockwise from the waist center, every place that
was passed turns what follows by its share of the angle. So the angle is the same wherever the dart goes,
and no length changes except that the edge it opens in is now in two parts.
"""

from dataclasses import dataclass
from typing import Literal

from notchbook.blocks.bodice_pieces.panel import Opening, Run
from notchbook.blocks.upper.shapes import FrontHalf, OpenDart
from notchbook.geometry import Line, Path, Point, Transform

DartPlace = Literal["side", "underarm", "shoulder", "armhole", "french", "center_front", "waist"]
"""Where the bust dart is drawn."""

BELOW_BUST = 32.0
"""mm along the side seam from the bust level down to the lower leg of a dart at the side.
Source: drafting practice (own judgment in the house's notes on the draft)."""

FROM_WAIST = 35.0
FROM_UNDERARM = 30.0
"""mm of side seam that stay whole below and above a dart at the side. Common practice, no source.
The dart ``underarm`` opens at the latter distance."""

FRENCH_ABOVE_WAIST = 40.0
"""mm above the waist at which the French dart opens in the side seam (handbooks: 2 to 8 cm)."""

FROM_CENTER_ENDS = 30.0
"""mm of center front that stay whole at both its ends. Common practice, no source."""

ARMHOLE_SHARE = 0.45
"""How far up the armhole from the underarm its dart opens, as a share of its length: about the level of
the across chest, clear of the lower armhole that the sleeve lies on. Common practice, no source."""

MIDDLE = 0.5
"""Where a dart opens in the shoulder, as a share of the edge. Common practice, no source."""

NECK_SHARES = (0.2, 0.7)
"""Within which part of the neck, from the side-neck point, its dart opens: where it runs square into the
neckline, so that its legs can be notched in a narrow allowance. Own judgment."""

_EDGE_OF: dict[str, str] = {
    "side": "side_seam",
    "underarm": "side_seam",
    "french": "side_seam",
    "armhole": "armhole",
    "shoulder": "shoulder",
    "neck": "neck",
    "center_front": "center",
    "waist": "waist",
}

EDGES = ("waist", "side_seam", "armhole", "shoulder", "neck", "center")
"""The edges of a panel counter-clockwise from the waist center."""


@dataclass(frozen=True, slots=True)
class Share:
    """A dart by its word, the place where it opens (a :data:`DartPlace` or "neck"), its angle in degrees."""

    dart: str
    place: str
    angle: float


@dataclass(frozen=True, slots=True)
class Cut:
    """Where a share opens: ``distance`` mm along its edge, walked counter-clockwise."""

    edge: str
    distance: float
    share: Share


class OpenedFront:
    """The front with its bust dart opened at the shares' places; ``runs`` are its edges.

    The first waist dart points at the bust point; a share at the waist widens it. Its name is then the
    share's, that of the waist darts as ``waist_words`` says. ``from_waist`` mm of the side seam stay whole
    above the waist.
    """

    def __init__(
        self,
        front: FrontHalf,
        shares: tuple[Share, ...],
        waist_words: tuple[str, ...],
        from_waist: float = FROM_WAIST,
    ) -> None:
        self.front = front
        self.cuts = sorted(
            (cut_of(front, share, from_waist) for share in shares),
            key=lambda cut: (EDGES.index(cut.edge), cut.distance),
        )
        self.runs = tuple(
            self._waist_run(waist_words) if edge == "waist" else self._run(edge) for edge in EDGES
        )

    def run(self, edge: str) -> Run:
        """The run of an edge."""
        return self.runs[EDGES.index(edge)]

    def motion_at(self, edge: str, distance: float) -> Transform:
        """The turn from an edge's own frame to where it lies in the opened front, at a distance along it."""
        return self.turned(edge, self.opened_before(edge, distance))

    def opened_before(self, edge: str, distance: float) -> float:
        """The sum of the angles that open before this place, degrees."""
        here = (EDGES.index(edge), distance)
        return sum(cut.share.angle for cut in self.cuts if (EDGES.index(cut.edge), cut.distance) < here)

    def _rotation(self, degrees: float) -> Transform:
        if abs(degrees) < 1e-12:
            return Transform.identity()
        return Transform.rotation(degrees, self.front.bust_point)

    def turned(self, edge: str, opened: float) -> Transform:
        """The turn from an edge's own frame after ``opened`` degrees were opened before it."""
        is_lower = edge in ("waist", "side_seam")
        return self._rotation(opened if is_lower else opened - self.front.dart_angle)

    def _run(self, edge: str) -> Run:
        """An edge with the darts that open in it."""
        path = edge_path(self.front, edge)
        parts: list[Path] = []
        openings: list[Opening] = []
        opened, done = self.opened_before(edge, -1.0), 0.0
        for cut in (cut for cut in self.cuts if cut.edge == edge):
            first = self.turned(edge, opened)
            opened += cut.share.angle
            mouth = path.point_at(cut.distance)
            parts.append(path.between(done, cut.distance).transformed(first))
            openings.append(
                Opening(
                    cut.share.dart,
                    parts[-1].end,
                    self.front.bust_point,
                    self.turned(edge, opened).apply(mouth),
                )
            )
            done = cut.distance
        rest = path.between(done, path.length) if done else path
        return Run(edge, (*parts, rest.transformed(self.turned(edge, opened))), tuple(openings))

    def _waist_run(self, words: tuple[str, ...]) -> Run:
        """The waist with its darts; a share at the waist widens the first one, which may be none."""
        front = self.front
        parts, darts = list(front.waist), list(front.waist_darts)
        names = list(words)
        at_waist = [cut for cut in self.cuts if cut.edge == "waist"]
        if at_waist and not darts:
            split = parts[0].split_at(at_waist[0].distance)
            parts = [*split]
            darts, names = [OpenDart(split[0].end, front.bust_point, split[0].end)], [""]
        if at_waist:
            names[0] = at_waist[0].share.dart
        turn = self._rotation(sum(cut.share.angle for cut in at_waist))
        openings = []
        for index, (dart, name) in enumerate(zip(darts, names, strict=True)):
            before = Transform.identity() if index == 0 else turn
            openings.append(
                Opening(name, before.apply(dart.first), before.apply(dart.point), turn.apply(dart.second))
            )
        moved = (parts[0], *(part.transformed(turn) for part in parts[1:]))
        return Run("waist", moved, tuple(openings))


def edge_path(front: FrontHalf, edge: str) -> Path:
    """An edge of the front counter-clockwise, in its own frame and without darts; not the waist."""
    if edge == "side_seam":
        return front.side.reversed()
    if edge == "armhole":
        return front.armhole.reversed()
    if edge == "shoulder":
        return front.shoulder.reversed()
    if edge == "neck":
        return front.neck.reversed()
    return Path.of(Line(front.neck.start, Point(0.0, front.waist[0].start.y)))


def cut_of(front: FrontHalf, share: Share, from_waist: float = FROM_WAIST) -> Cut:
    """Where a share opens its edge."""
    edge = _EDGE_OF[share.place]
    if edge == "side_seam":
        distance = _along_side(edge_path(front, edge), front.bust_point.y, share.place, from_waist)
        return Cut(edge, distance, share)
    return Cut(edge, _distance(front, share.place, edge), share)


def _distance(front: FrontHalf, place: str, edge: str) -> float:
    """Where a place lies along its edge, counter-clockwise, mm."""
    if place == "waist":
        return 0.0 if front.waist_darts else _below_bust_point(front)
    path = edge_path(front, edge)
    if place == "center_front":
        drop = path.start.y - front.bust_point.y
        return min(max(drop, FROM_CENTER_ENDS), path.length - FROM_CENTER_ENDS)
    if place == "neck":
        low, high = (share * path.length for share in NECK_SHARES)
        return min(max(path.nearest(front.bust_point).distance_along, low), high)
    return path.length * (ARMHOLE_SHARE if place == "armhole" else MIDDLE)


def _along_side(path: Path, bust_level: float, place: str, from_waist: float) -> float:
    """From the waist up along the side seam, within what must stay whole; else in the middle of it."""
    low, high = from_waist, path.length - FROM_UNDERARM
    if low >= high:
        return path.length / 2.0
    if place == "underarm":
        return high
    if place == "french":
        return min(max(FRENCH_ABOVE_WAIST, low), high)
    return min(max(_distance_at_level(path, bust_level) - BELOW_BUST, low), high)


def _below_bust_point(front: FrontHalf) -> float:
    """Where a dartless waist lies straight below the bust point."""
    waist = front.waist[0]
    return waist.nearest(Point(front.bust_point.x, waist.start.y)).distance_along


def _distance_at_level(side: Path, level: float) -> float:
    """How far up the straight side seam a height y is reached, mm; its nearer end beyond it."""
    share = (level - side.start.y) / (side.end.y - side.start.y)
    return side.length * min(max(share, 0.0), 1.0)
