"""A leg of trousers drawn by hand, without the block: numbers invented for the tests.

The crotch level is y = 0 and the crease x = 0 on both panels; the side seam of the front lies toward -x, that
of the back toward +x. At the fork the corner of the front is 95 degrees, that of the back 85.
"""

from notchbook.geometry import Cubic, Path, Point, direction
from notchbook.pattern import Edge, EdgeKind, EdgeUse, InternalLine, Pattern, Piece, Seam, frozen_map

FRONT_CROTCH = "trousers.front/crotch_seam"
BACK_CROTCH = "trousers.back/crotch_seam"
KNEE, HEM = -290.0, -650.0
WAIST_SIDE = Point(140.0, 290.0 - 210.0 * 45.0 / 290.0)
"""Of the back: there the waist comes from its slanted center square."""
FRONT_FOOT, BACK_FOOT = Point(85.0, 0.0), Point(-115.0, 0.0)
"""Where the straight centers, drawn on, meet the crotch level: the corners that depths are measured from."""


def hand_trousers() -> Pattern:
    """Front and back of the right leg with the seams of the fork."""
    made = Pattern(pieces=frozen_map({piece.name: piece for piece in (_front(), _back())}))
    return made.with_seams(
        Seam(
            "trousers/inseam",
            first=(EdgeUse("trousers.front/inseam", "trousers.front/crotch_point"),),
            second=(EdgeUse("trousers.back/inseam", "trousers.back/crotch_point"),),
            allowance_class="inseam",
        ),
        *(_between_legs(which) for which in ("front", "back")),
    )


def _between_legs(which: str) -> Seam:
    edge, top = f"trousers.{which}/crotch_seam", f"trousers.{which}/waist_center"
    return Seam(
        f"trousers/{which}_crotch_seam",
        first=(EdgeUse(edge, top, "right"),),
        second=(EdgeUse(edge, top, "left"),),
        allowance_class="crotch",
    )


def curved(start: Point, heading: float, handles: tuple[float, float], end: Point, arriving: float) -> Cubic:
    """A cubic by its headings (degrees) and the lengths of its handles, mm."""
    return Cubic(start, start + direction(heading) * handles[0], end - direction(arriving) * handles[1], end)


def front_crotch(first: float = 66.0, second: float = 32.0) -> Path:
    """The front crotch seam from the waist to the crotch point, by the handles of its curve, mm."""
    start, point = Point(85.0, 100.0), Point(150.0, 0.0)
    curve = curved(start, -90.0, (first, second), point, 0.0)
    return Path((*Path.line(Point(85.0, 270.0), start).segments, curve))


def hooked_front() -> Path:
    """The front crotch seam with a tight bend instead of a J: then a slope of 26 degrees to the crotch point.
    It lies 32 mm from its corner, as a good one does."""
    start, point = Point(85.0, 56.0), Point(150.0, 0.0)
    curve = curved(start, -90.0, (20.0, 60.0), point, -26.0)
    return Path((*Path.line(Point(85.0, 270.0), start).segments, curve))


def hooked_back() -> Path:
    """The back crotch seam with a tight bend, then a slope of 32 degrees; 48 mm from its corner."""
    top = Point(-70.0, 290.0)
    start = BACK_FOOT.lerp(top, 0.3)
    heading = (BACK_FOOT - top).direction()
    curve = curved(start, heading, (24.0, 120.0), Point(-225.0, -15.0), 212.0)
    return Path((*Path.line(top, start).segments, curve))


def ramp_front() -> Path:
    """The front crotch seam as deep in its corner as a good one, as round as one, but
    with a ramp of 25 degrees to the crotch point."""
    start, point = Point(85.0, 75.0), Point(150.0, 0.0)
    curve = curved(start, -90.0, (52.0, 42.0), point, -25.0)
    return Path((*Path.line(Point(85.0, 270.0), start).segments, curve))


def ramp_back() -> Path:
    """The back crotch seam with a bend of 85 mm, then a ramp of 33 degrees."""
    top = Point(-70.0, 290.0)
    start = BACK_FOOT.lerp(top, 0.37)
    heading = (BACK_FOOT - top).direction()
    curve = curved(start, heading, (52.0, 86.0), Point(-225.0, -15.0), 213.0)
    return Path((*Path.line(top, start).segments, curve))


def back_crotch(first: float = 100.0, second: float = 40.0) -> Path:
    """The back crotch seam from the waist to the crotch point, by the handles of its curve, mm."""
    top, foot = Point(-70.0, 290.0), BACK_FOOT
    start = foot.lerp(top, 0.45)
    heading = (foot - top).direction()
    curve = curved(start, heading, (first, second), Point(-225.0, -15.0), 200.0)
    return Path((*Path.line(top, start).segments, curve))


def _front() -> Piece:
    name = "trousers.front"
    crotch = front_crotch()
    side = Path.polyline((Point(-130.0, 270.0), Point(-155.0, 85.0), Point(-105.0, KNEE), Point(-100.0, HEM)))
    inseam = _inseam(crotch.end, -85.0, 105.0)
    waist = Path.line(crotch.start, side.start)
    hem = Path.line(side.end, inseam.end)
    outline = (
        _edge(name, "waist", waist, "waist_center", "waist_side"),
        _edge(name, "side_seam", side, "waist_side", "hem_side"),
        _edge(name, "hem", hem, "hem_side", "hem_inseam", "hem"),
        _edge(name, "inseam", inseam.reversed(), "hem_inseam", "crotch_point"),
        _edge(name, "crotch_seam", crotch.reversed(), "crotch_point", "waist_center"),
    )
    return Piece(name, "Front", outline, lines=_lines(name, 85.0, -155.0, crotch.end, 105.0), cut="pair")


def _back() -> Piece:
    name = "trousers.back"
    crotch = back_crotch()
    side = Path.polyline((Point(115.0, HEM), Point(120.0, KNEE), Point(145.0, 85.0), WAIST_SIDE))
    inseam = _inseam(crotch.end, -65.0, -120.0)
    outline = (
        _edge(name, "crotch_seam", crotch, "waist_center", "crotch_point"),
        _edge(name, "inseam", inseam, "crotch_point", "hem_inseam"),
        _edge(name, "hem", Path.line(inseam.end, side.start), "hem_inseam", "hem_side", "hem"),
        _edge(name, "side_seam", side, "hem_side", "waist_side"),
        _edge(name, "waist", Path.line(side.end, crotch.start), "waist_side", "waist_center"),
    )
    return Piece(name, "Back", outline, lines=_lines(name, -102.0, 145.0, crotch.end, 120.0), cut="pair")


def _inseam(fork: Point, heading: float, knee: float) -> Path:
    hem = Point(knee - 5.0 if knee > 0.0 else knee + 5.0, HEM)
    upper = curved(fork, heading, (90.0, 110.0), Point(knee, KNEE), -90.0)
    return Path((upper, *Path.line(Point(knee, KNEE), hem).segments))


def _lines(name: str, center: float, side: float, fork: Point, knee: float) -> tuple[InternalLine, ...]:
    return (
        InternalLine(f"{name}/hip_line", Path.line(Point(center, 85.0), Point(side, 85.0))),
        InternalLine(f"{name}/crotch_line", Path.line(Point(fork.x, 0.0), Point(side, 0.0))),
        InternalLine(f"{name}/knee_line", Path.line(Point(-knee, KNEE), Point(knee, KNEE))),
        InternalLine(f"{name}/crease_line", Path.line(Point(0.0, HEM), Point(0.0, 270.0)), "placement"),
    )


def _edge(piece: str, word: str, path: Path, start: str, end: str, kind: EdgeKind = "seam") -> Edge:
    return Edge(f"{piece}/{word}", path, f"{piece}/{start}", f"{piece}/{end}", kind)
