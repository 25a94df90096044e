"""A bodice and a sleeve drawn by hand, without the blocks: numbers invented for the tests.

The front lies left of its center with a double-ended dart inside it, the back right of its center. The
lower 80 mm of each half of the cap are the lower armhole itself, turned over; one curve goes on to the crown.
"""

from dataclasses import replace

from notchbook.geometry import Cubic, Path, Point, Transform, direction
from notchbook.pattern import (
    Edge,
    EdgeKind,
    EdgeUse,
    InnerDart,
    InternalLine,
    Mark,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    frozen_map,
)

FRONT_ARMHOLE = "top.front/armhole"
BACK_ARMHOLE = "top.back/armhole"
CAP_FRONT = "sleeve.sleeve/cap_front"
CAP_BACK = "sleeve.sleeve/cap_back"
FRONT_SEAM = "sleeve/front_armhole"
INNER_DART = "top.front/waist_dart"
NOTCH_UP = 75.0
"""mm from the underarm to the balance notches."""
LAID = 80.0
"""mm of the cap that are the armhole itself."""
DART_WIDTH = 24.0
DART_X = -100.0


def hand_upper() -> Pattern:
    """The whole: front, back and sleeve, their seams and notches."""
    front, back = upper_front(), upper_back()
    sleeve = upper_sleeve(front, back)
    made = Pattern(pieces=frozen_map({piece.name: piece for piece in (front, back, sleeve)}))
    return made.with_seams(*_seams(made)).with_notches(*_notches())


def turned(start: Point, heading: float, handles: tuple[float, float], end: Point, arriving: float) -> Cubic:
    """A cubic by its headings (degrees) and the lengths of its handles, mm."""
    return Cubic(start, start + direction(heading) * handles[0], end - direction(arriving) * handles[1], end)


def upper_front() -> Piece:
    """The front, on the fold; clockwise order of the drawing turned into the outline's."""
    name = "top.front"
    neck_pit, side_neck = Point(0.0, 330.0), Point(-68.0, 414.0)
    tip, across, underarm = Point(-190.0, 370.0), Point(-178.0, 272.0), Point(-235.0, 200.0)
    side, center = Point(-235.0, -150.0), Point(0.0, -150.0)
    armhole = Path.of(
        turned(tip, -70.0, (38.0, 42.0), across, -90.0), turned(across, -90.0, (26.0, 54.0), underarm, 180.0)
    )
    outline = (
        _edge(name, "center_front", Path.line(center, neck_pit), "hem_center", "neck_pit", "fold"),
        _edge(
            name,
            "neck",
            Path.of(turned(neck_pit, 180.0, (48.0, 44.0), side_neck, 106.0)),
            "neck_pit",
            "side_neck_point",
        ),
        _edge(name, "shoulder", Path.line(side_neck, tip), "side_neck_point", "shoulder_point"),
        _edge(name, "armhole", armhole, "shoulder_point", "underarm"),
        _edge(name, "side_seam", Path.line(underarm, side), "underarm", "hem_side"),
        _edge(name, "hem", Path.line(side, center), "hem_side", "hem_center", "hem"),
    )
    return with_inner_dart(Piece(name, "Front", outline, cut="fold"), DART_WIDTH)


def with_inner_dart(front: Piece, width: float) -> Piece:
    """The front with its double-ended dart this wide at the waist (y = 0), mm."""
    upper, lower = Point(DART_X, 130.0), Point(DART_X, -110.0)
    mouths = {"center_leg": Point(DART_X + width / 2, 0.0), "side_leg": Point(DART_X - width / 2, 0.0)}
    legs = tuple(
        InternalLine(f"{INNER_DART}/{leg}", Path.polyline((upper, mouth, lower)), "dart_leg")
        for leg, mouth in mouths.items()
    )
    marks = (Mark(f"{INNER_DART}/upper_point", upper), Mark(f"{INNER_DART}/lower_point", lower))
    dart = InnerDart(INNER_DART, legs[0].name, legs[1].name, marks[0].name, marks[1].name)
    waist = (
        InternalLine(f"{front.name}/waist_line/center", Path.line(Point(0.0, 0.0), mouths["center_leg"])),
        InternalLine(f"{front.name}/waist_line/side", Path.line(mouths["side_leg"], Point(-235.0, 0.0))),
    )
    return replace(front, lines=(*waist, *legs), marks=marks, inner_darts=(dart,))


def upper_back() -> Piece:
    """The back, on the fold."""
    name = "top.back"
    nape, side_neck = Point(0.0, 392.0), Point(71.0, 415.0)
    tip, across, underarm = Point(196.0, 369.0), Point(183.0, 300.0), Point(245.0, 200.0)
    side, center = Point(245.0, -150.0), Point(0.0, -150.0)
    armhole = Path.of(
        turned(underarm, 180.0, (42.0, 52.0), across, 90.0), turned(across, 90.0, (26.0, 26.0), tip, 70.0)
    )
    outline = (
        _edge(name, "center_back", Path.line(nape, center), "nape", "hem_center", "fold"),
        _edge(name, "hem", Path.line(center, side), "hem_center", "hem_side", "hem"),
        _edge(name, "side_seam", Path.line(side, underarm), "hem_side", "underarm"),
        _edge(name, "armhole", armhole, "underarm", "shoulder_point"),
        _edge(name, "shoulder", Path.line(tip, side_neck), "shoulder_point", "side_neck_point"),
        _edge(
            name,
            "neck",
            Path.of(turned(side_neck, -114.0, (14.0, 40.0), nape, 180.0)),
            "side_neck_point",
            "nape",
        ),
    )
    return Piece(name, "Back", outline, cut="fold")


def upper_sleeve(front: Piece, back: Piece) -> Piece:
    """The right sleeve: front toward +x, crown at (0, 140)."""
    name = "sleeve.sleeve"
    under_front, under_back, crown = Point(165.0, 0.0), Point(-178.0, 0.0), Point(0.0, 140.0)
    over = Transform.reflection(Point(0.0, 0.0), Point(0.0, 1.0))
    lower_front = front.edge(FRONT_ARMHOLE).path.reversed().between(0.0, LAID).transformed(over)
    lower_back = back.edge(BACK_ARMHOLE).path.between(0.0, LAID).transformed(over)
    cap_front = _cap(lower_front, under_front, crown, 180.0)
    cap_back = _cap(lower_back, under_back, crown, 0.0).reversed()
    hem_front, hem_back = Point(165.0, -420.0), Point(-178.0, -420.0)
    outline = (
        _edge(name, "cap_front", cap_front, "underarm_front", "cap_top"),
        _edge(name, "cap_back", cap_back, "cap_top", "underarm_back"),
        _edge(name, "back_seam", Path.line(under_back, hem_back), "underarm_back", "hem_back"),
        _edge(name, "hem", Path.line(hem_back, hem_front), "hem_back", "hem_front", "hem"),
        _edge(name, "front_seam", Path.line(hem_front, under_front), "hem_front", "underarm_front"),
    )
    return Piece(name, "Sleeve", outline, cut="pair")


def _cap(lower: Path, underarm: Point, crown: Point, arriving: float) -> Path:
    shift = underarm - lower.start
    moved = lower.transformed(Transform.translation(shift.x, shift.y))
    heading = moved.tangent_at(moved.length).direction()
    return Path((*moved.segments, turned(moved.end, heading, (52.0, 62.0), crown, arriving)))


def _seams(made: Pattern) -> tuple[Seam, ...]:
    def use(edge: str, point: str) -> tuple[EdgeUse, ...]:
        return (EdgeUse(edge, f"{edge.split('/')[0]}/{point}"),)

    def ease(first: str, second: str) -> float:
        return made.edges[second].length - made.edges[first].length

    between = ("balance_notch", "ease_notch")
    return (
        Seam(
            "top/shoulder",
            use("top.front/shoulder", "side_neck_point"),
            use("top.back/shoulder", "side_neck_point"),
            ease("top.front/shoulder", "top.back/shoulder"),
        ),
        Seam(
            "top/side_seam",
            use("top.front/side_seam", "underarm"),
            use("top.back/side_seam", "underarm"),
            allowance_class="side",
        ),
        Seam(
            FRONT_SEAM,
            use(FRONT_ARMHOLE, "underarm"),
            use(CAP_FRONT, "underarm_front"),
            ease(FRONT_ARMHOLE, CAP_FRONT),
            ease_between=between,
        ),
        Seam(
            "sleeve/back_armhole",
            use(BACK_ARMHOLE, "underarm"),
            use(CAP_BACK, "underarm_back"),
            ease(BACK_ARMHOLE, CAP_BACK),
            ease_between=between,
        ),
        Seam(
            "sleeve/sleeve_seam",
            use("sleeve.sleeve/front_seam", "underarm_front"),
            use("sleeve.sleeve/back_seam", "underarm_back"),
            allowance_class="side",
        ),
    )


def _notches() -> tuple[Notch, ...]:
    found = []
    for edge, underarm, top, seam in (
        (FRONT_ARMHOLE, "underarm", "shoulder_point", FRONT_SEAM),
        (CAP_FRONT, "underarm_front", "cap_top", FRONT_SEAM),
        (BACK_ARMHOLE, "underarm", "shoulder_point", "sleeve/back_armhole"),
        (CAP_BACK, "underarm_back", "cap_top", "sleeve/back_armhole"),
    ):
        piece = edge.split("/")[0]
        found.append(Notch(f"{edge}/balance_notch", Place(edge, f"{piece}/{underarm}", NOTCH_UP), seam=seam))
        found.append(Notch(f"{edge}/ease_notch", Place(edge, f"{piece}/{top}", 20.0), seam=seam))
    return tuple(found)


def _edge(piece: str, word: str, path: Path, start: str, end: str, kind: EdgeKind = "seam") -> Edge:
    return Edge(f"{piece}/{word}", path, f"{piece}/{start}", f"{piece}/{end}", kind)
