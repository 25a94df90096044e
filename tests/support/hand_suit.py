"""The lower part of a suit drawn by hand, without the block: numbers invented for the tests.

Front and back from the waist to the crotch; a leg line is a parabola between side and crotch, whose middle
lies a chosen way off its chord.
"""

from notchbook.geometry import Cubic, Path, Point
from notchbook.pattern import Edge, EdgeKind, InternalLine, Pattern, Piece, frozen_map

FRONT_SCOOP, BACK_COVER = 55.0, 15.0
"""mm off the chord: the front into the piece, the back out of it."""

WAIST, SIDE, CROTCH, CENTER = Point(170.0, 0.0), Point(200.0, -180.0), Point(35.0, -330.0), Point(0.0, -330.0)


def hand_suit(scoop: float = FRONT_SCOOP, cover: float = BACK_COVER) -> Pattern:
    """Front and back of the right half, each with its center at x = 0 and its side toward +x."""
    pieces = (_piece("front", "neck_pit", scoop), _piece("back", "nape", -cover))
    return Pattern(pieces=frozen_map({piece.name: piece for piece in pieces}))


def leg_line(into: float) -> Path:
    """From the crotch to the side, the middle so far into the piece (below 0: out of it), mm.

    A cubic whose two handles lie 4/3 of that off the thirds of the chord is the parabola with this rise.
    """
    chord = SIDE - CROTCH
    inward = chord.perpendicular().unit() * (4.0 / 3.0 * into)
    first, second = (CROTCH + chord * (share / 3.0) + inward for share in (1.0, 2.0))
    return Path.of(Cubic(CROTCH, first, second, SIDE))


def _piece(which: str, top: str, into: float) -> Piece:
    name = f"suit.{which}"
    upper = Point(0.0, 0.0)

    def edge(word: str, path: Path, start: str, end: str, kind: EdgeKind = "seam") -> Edge:
        return Edge(f"{name}/{word}", path, f"{name}/{start}", f"{name}/{end}", kind)

    return Piece(
        name=name,
        title=which.capitalize(),
        outline=(
            edge("crotch", Path.line(CENTER, CROTCH), "crotch_center", "crotch_side"),
            edge("leg_opening", leg_line(into), "crotch_side", "leg_side"),
            edge("side_seam", Path.line(SIDE, WAIST), "leg_side", "waist_side"),
            edge("waist", Path.line(WAIST, upper), "waist_side", top),
            edge(f"center_{which}", Path.line(upper, CENTER), top, "crotch_center", "fold"),
        ),
        cut="fold",
    )


def hand_panel(waist: float = 200.0, *, inseam: bool = False) -> Pattern:
    """A panel 400 mm high, round at the bust, hollow half way, round at the hip, its waist line at a height.

    With ``inseam`` the edge at its side is one, and thigh, knee and calf are drawn.
    """
    name = "suit.panel"
    hip, hollow, bust = Point(220.0, 0.0), Point(180.0, 200.0), Point(215.0, 400.0)
    corners = (Point(0.0, 0.0), Point(0.0, 400.0))
    side = Path.of(_upright(hip, hollow), _upright(hollow, bust))
    word = "inseam" if inseam else "side_seam"
    levels = {"thigh_line": 350.0, "knee_line": waist, "calf_line": 80.0} if inseam else {"waist_line": waist}
    piece = Piece(
        name=name,
        title="Panel",
        outline=(
            Edge(f"{name}/hem", Path.line(corners[0], hip), f"{name}/center", f"{name}/side", "hem"),
            Edge(f"{name}/{word}", side, f"{name}/side", f"{name}/underarm"),
            Edge(f"{name}/top", Path.line(bust, corners[1]), f"{name}/underarm", f"{name}/middle"),
            Edge(
                f"{name}/center_front", Path.line(corners[1], corners[0]), f"{name}/middle", f"{name}/center"
            ),
        ),
        lines=tuple(
            InternalLine(f"{name}/{level}", Path.line(Point(0.0, height), Point(180.0, height)))
            for level, height in levels.items()
        ),
    )
    return Pattern(pieces=frozen_map({name: piece}))


def _upright(start: Point, end: Point) -> Cubic:
    """From one point to another, upright at both: it bends first one way, then the other."""
    reach = Point(0.0, (end.y - start.y) / 3.0)
    return Cubic(start, start + reach, end - reach, end)
