"""A straight skirt drawn by hand, without the block: numbers invented for the tests.

Front on the fold at center front, x from -240 to 0; back cut as a pair, x from 0 at center back to
250; y = 0 is the hip line. Invented body: waist 720, hip 940; ease 20 at the waist, 40 at the hip;
skirt length 600 from the center front waist. The waist is square to every dart leg, to both centers
and to the side seams, so that it runs on smoothly once the darts are closed.
"""

from math import asin, degrees
from typing import Literal

from notchbook.geometry import Cubic, Line, Path, Point, direction
from notchbook.pattern import (
    Allowance,
    CutInstruction,
    Edge,
    EdgeKind,
    EdgeUse,
    Group,
    Intake,
    InternalLine,
    Notch,
    Pattern,
    Piece,
    Place,
    Seam,
    frozen_map,
)

BODY_WAIST = 720.0
WAIST_EASE = 20.0
BODY_HIP = 940.0
HIP_EASE = 40.0

FRONT_WIDTH = 240.0
BACK_WIDTH = 250.0
FRONT_WAIST_Y = 200.0
BACK_WAIST_Y = 196.0
SIDE_WAIST_Y = 212.0
HEM_Y = -400.0
SIDE_LEAN = 12.0
"""How far the side seam leans toward the center at the waist, degrees."""

HALF_WAIST = (BODY_WAIST + WAIST_EASE) / 2


class HandDart:
    """A dart by its point, axis (degrees, from the point to the mouth), leg length and intake."""

    def __init__(self, point: Point, axis: float, leg: float, intake: float) -> None:
        half = degrees(asin(intake / 2 / leg))
        self.point = point
        self.first_way = axis - half
        self.second_way = axis + half
        self.first_mouth = point + direction(self.first_way) * leg
        self.second_mouth = point + direction(self.second_way) * leg


FRONT_DART = HandDart(Point(-110.0, 108.5), 92.0, 96.0, 20.0)
BACK_SIDE_DART = HandDart(Point(165.3, 75.5), 95.0, 130.0, 18.0)
BACK_CENTER_DART = HandDart(Point(81.9, 60.8), 92.0, 140.0, 22.0)


def hand_skirt() -> Pattern:
    """The whole hand-made skirt: two pieces, two seams, notches and allowances."""
    shift = _side_shift()
    front, back = hand_front(shift), hand_back(shift)
    return Pattern(
        pieces=frozen_map({front.name: front, back.name: back}),
        seams=frozen_map({seam.name: seam for seam in _seams()}),
        notches=frozen_map({notch.name: notch for notch in _notches()}),
        groups=frozen_map(
            {
                "skirt.front/waist": Group(
                    ("skirt.front/waist/center_side", "skirt.front/waist/side_side"), "skirt"
                ),
                "skirt.back/waist": Group(
                    (
                        "skirt.back/waist/side_side",
                        "skirt.back/waist/middle",
                        "skirt.back/waist/center_side",
                    ),
                    "skirt",
                ),
            }
        ),
        allowances=frozen_map(
            {
                "skirt.front/hem": Allowance("hem_skirt_straight"),
                "skirt.front/center_front": Allowance("fold"),
                "skirt.front/waist": Allowance("waist"),
                "skirt.front/side_seam": Allowance("side"),
                "skirt.back/hem": Allowance("hem_skirt_straight"),
                "skirt.back/center_back": Allowance("center_back"),
                "skirt.back/waist": Allowance("waist"),
                "skirt.back/side_seam": Allowance("side"),
            }
        ),
    )


def hand_front(shift: float) -> Piece:
    """The front; ``shift`` is how far the side waist lies inside the hip, mm."""
    name = "skirt.front"
    side_waist = Point(shift - FRONT_WIDTH, SIDE_WAIST_Y)
    center_waist = Point(0.0, FRONT_WAIST_Y)
    hem_side, hem_center = Point(-FRONT_WIDTH, HEM_Y), Point(0.0, HEM_Y)
    hip = Point(-FRONT_WIDTH, 0.0)
    dart = FRONT_DART
    waist_center = _curve(center_waist, 180.0, dart.first_mouth, dart.first_way + 90)
    waist_side = _curve(dart.second_mouth, dart.second_way + 90, side_waist, 180 - SIDE_LEAN)
    side = Path.of(_curve(side_waist, -90 - SIDE_LEAN, hip, -90.0), Line(hip, hem_side))
    return Piece(
        name=name,
        title="Skirt front",
        outline=(
            _edge(name, "hem", Path.line(hem_side, hem_center), "hem_side", "hem_center", "hem"),
            _edge(
                name,
                "center_front",
                Path.line(hem_center, center_waist),
                "hem_center",
                "center_waist",
                "fold",
            ),
            _edge(
                name, "waist/center_side", Path.of(waist_center), "center_waist", "waist_dart/center_mouth"
            ),
            *_legs(name, "waist_dart", dart, ("center", "side")),
            _edge(name, "waist/side_side", Path.of(waist_side), "waist_dart/side_mouth", "side_waist"),
            _edge(name, "side_seam", side, "side_waist", "hem_side"),
        ),
        intakes=(_intake(name, "waist_dart", ("center", "side"), "first_leg"),),
        lines=(InternalLine(f"{name}/hip_line", Path.line(hip, Point(0.0, 0.0))),),
        cut="fold",
        instructions=(CutInstruction("self", 1),),
    )


def hand_back(shift: float) -> Piece:
    """The back; ``shift`` is how far the side waist lies inside the hip, mm."""
    name = "skirt.back"
    side_waist = Point(BACK_WIDTH - shift, SIDE_WAIST_Y)
    center_waist = Point(0.0, BACK_WAIST_Y)
    hem_side, hem_center = Point(BACK_WIDTH, HEM_Y), Point(0.0, HEM_Y)
    hip = Point(BACK_WIDTH, 0.0)
    outer, inner = BACK_SIDE_DART, BACK_CENTER_DART
    waist_side = _curve(side_waist, 180 + SIDE_LEAN, outer.first_mouth, outer.first_way + 90)
    waist_middle = _curve(outer.second_mouth, outer.second_way + 90, inner.first_mouth, inner.first_way + 90)
    waist_center = _curve(inner.second_mouth, inner.second_way + 90, center_waist, 180.0)
    side = Path.of(Line(hem_side, hip), _curve(hip, 90.0, side_waist, 90 + SIDE_LEAN))
    return Piece(
        name=name,
        title="Skirt back",
        outline=(
            _edge(name, "hem", Path.line(hem_center, hem_side), "hem_center", "hem_side", "hem"),
            _edge(name, "side_seam", side, "hem_side", "side_waist"),
            _edge(name, "waist/side_side", Path.of(waist_side), "side_waist", "side_dart/side_mouth"),
            *_legs(name, "side_dart", outer, ("side", "center")),
            _edge(
                name,
                "waist/middle",
                Path.of(waist_middle),
                "side_dart/center_mouth",
                "center_dart/side_mouth",
            ),
            *_legs(name, "center_dart", inner, ("side", "center")),
            _edge(
                name, "waist/center_side", Path.of(waist_center), "center_dart/center_mouth", "center_waist"
            ),
            _edge(name, "center_back", Path.line(center_waist, hem_center), "center_waist", "hem_center"),
        ),
        intakes=(
            _intake(name, "side_dart", ("side", "center"), "second_leg"),
            _intake(name, "center_dart", ("side", "center"), "second_leg"),
        ),
        lines=(InternalLine(f"{name}/hip_line", Path.line(Point(0.0, 0.0), hip)),),
        cut="pair",
        instructions=(CutInstruction("self", 1),),
    )


def _seams() -> tuple[Seam, ...]:
    return (
        Seam(
            "skirt/side_seam",
            (EdgeUse("skirt.front/side_seam", "skirt.front/side_waist"),),
            (EdgeUse("skirt.back/side_seam", "skirt.back/side_waist"),),
            allowance_class="side",
        ),
        Seam(
            "skirt/center_back",
            (EdgeUse("skirt.back/center_back", "skirt.back/center_waist", "left"),),
            (EdgeUse("skirt.back/center_back", "skirt.back/center_waist", "right"),),
            allowance_class="center_back",
        ),
    )


def _notches() -> tuple[Notch, ...]:
    hip_from_hem = -HEM_Y
    return (
        Notch(
            "skirt.front/side_seam/hip",
            Place("skirt.front/side_seam", "skirt.front/hem_side", hip_from_hem),
            seam="skirt/side_seam",
            purpose="hip line",
        ),
        Notch(
            "skirt.back/side_seam/hip",
            Place("skirt.back/side_seam", "skirt.back/hem_side", hip_from_hem),
            seam="skirt/side_seam",
            purpose="hip line",
        ),
        Notch(
            "skirt.back/center_back/zip_stop",
            Place("skirt.back/center_back", "skirt.back/center_waist", 180.0),
            kind="double",
            seam="skirt/center_back",
            purpose="end of the zip",
        ),
    )


def _edge(piece: str, word: str, path: Path, start: str, end: str, kind: EdgeKind = "seam") -> Edge:
    return Edge(f"{piece}/{word}", path, f"{piece}/{start}", f"{piece}/{end}", kind)


def _legs(piece: str, word: str, dart: HandDart, roles: tuple[str, str]) -> tuple[Edge, Edge]:
    first, second = roles
    return (
        _edge(
            piece,
            f"{word}/{first}_leg",
            Path.line(dart.first_mouth, dart.point),
            f"{word}/{first}_mouth",
            f"{word}/point",
            "leg",
        ),
        _edge(
            piece,
            f"{word}/{second}_leg",
            Path.line(dart.point, dart.second_mouth),
            f"{word}/point",
            f"{word}/{second}_mouth",
            "leg",
        ),
    )


def _intake(
    piece: str, word: str, roles: tuple[str, str], toward: Literal["first_leg", "second_leg"]
) -> Intake:
    return Intake(
        name=f"{piece}/{word}",
        mouth=f"{piece}/waist",
        first_leg=f"{piece}/{word}/{roles[0]}_leg",
        second_leg=f"{piece}/{word}/{roles[1]}_leg",
        point=f"{piece}/{word}/point",
        fold_toward=toward,
    )


def _curve(start: Point, start_way: float, end: Point, end_way: float) -> Cubic:
    """The parabola that leaves and arrives in the given directions (degrees): it never inflects."""
    leaving, arriving = direction(start_way), direction(end_way)
    reach = (end - start).cross(arriving) / leaving.cross(arriving)
    meeting = start + leaving * reach
    return Cubic(start, start.lerp(meeting, 2 / 3), end.lerp(meeting, 2 / 3), end)


def _half_waist(shift: float) -> float:
    edges = (*hand_front(shift).outline, *hand_back(shift).outline)
    return sum(edge.length for edge in edges if "/waist/" in edge.name)


def _side_shift() -> float:
    """The shift of the side waist at which the waist as sewn measures body and ease, by bisection."""
    low, high = 15.0, 45.0
    for _ in range(50):
        middle = (low + high) / 2
        if _half_waist(middle) > HALF_WAIST:
            low = middle
        else:
            high = middle
    return (low + high) / 2
