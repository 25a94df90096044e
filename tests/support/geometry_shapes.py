"""Invented shapes for tests of the geometry: the curves of the trade, outlines of pieces, random cubics."""

from hypothesis import strategies as st

from notchbook.geometry import Cubic, Line, Path, Point, curve_between

HIP = curve_between(Point(172.0, 0.0), 88.0, Point(165.0, 200.0), 104.0)
"""A hip curve of a skirt: near vertical at the hip, leaning at the waist."""

ARMHOLE = curve_between(Point(260.0, 350.0), 180.0, Point(205.0, 545.0), 82.0)
"""The J of an armhole: level at the side seam, steep at the shoulder."""

CROTCH = curve_between(Point(0.0, 228.0), -91.0, Point(-62.0, 0.0), 178.0, 1.3, 0.9)
"""A crotch curve that bends from the straight of the center into the fork."""

CAP = Path.of(
    curve_between(Point(-170.0, 0.0), 4.0, Point(0.0, 140.0), 0.0),
    curve_between(Point(0.0, 140.0), 0.0, Point(170.0, 0.0), -4.0),
)
"""A sleeve cap, with an inflection on each side."""

BODICE = Path.of(
    Line(Point(0.0, 0.0), Point(240.0, -5.0)),
    curve_between(Point(240.0, -5.0), 95.0, Point(260.0, 350.0), 88.0),
    ARMHOLE,
    Line(ARMHOLE.end, Point(70.0, 560.0)),
    curve_between(Point(70.0, 560.0), -90.0, Point(0.0, 480.0), 180.0),
    Line(Point(0.0, 480.0), Point(0.0, 0.0)),
)
"""A front, counter-clockwise, with a neckline, an armhole and a bent side seam."""

DART_MOUTH = Path.polyline(
    [
        Point(0, 0), Point(0, -250), Point(250, -250), Point(250, 0), Point(139, 6),
        Point(125, -90), Point(111, 6),
    ],
    closed=True,
)  # fmt: skip
"""A skirt front with a waist dart cut into the upper edge."""

COAT = Path.of(
    Line(Point(0.0, 0.0), Point(480.0, 12.0)),
    curve_between(Point(480.0, 12.0), 91.0, Point(300.0, 2000.0), 97.0, 1.2, 0.8),
    curve_between(Point(300.0, 2000.0), 180.0, Point(0.0, 1930.0), 200.0),
    Line(Point(0.0, 1930.0), Point(0.0, 0.0)),
)
"""A piece of 2 m."""

DEGENERATE = {
    "no start handle": Cubic(Point(0, 0), Point(0, 0), Point(60, 40), Point(100, 0)),
    "no end handle": Cubic(Point(0, 0), Point(30, 50), Point(100, 0), Point(100, 0)),
    "no handles": Cubic(Point(0, 0), Point(0, 0), Point(100, 0), Point(100, 0)),
    "both handles at the start": Cubic(Point(0, 0), Point(0, 0), Point(0, 0), Point(100, 50)),
    "one handle": Cubic(Point(0, 0), Point(50, 80), Point(50, 80), Point(100, 0)),
    "cusp": Cubic(Point(0, 0), Point(100, 100), Point(0, 100), Point(100, 0)),
    "near cusp": Cubic(Point(0, 0), Point(100, 100), Point(0.01, 100), Point(100, 0)),
    "loop": Cubic(Point(0, 0), Point(200, 100), Point(-100, 100), Point(100, 0)),
    "nearly straight": Cubic(Point(0, 0), Point(700, 1e-7), Point(1300, -1e-7), Point(2000, 0)),
    "turns back on itself": Cubic(Point(0, 0), Point(300, 0), Point(-200, 0), Point(100, 0)),
}

coordinates = st.floats(-1000.0, 1000.0, allow_nan=False).map(lambda value: round(value, 3))
points = st.builds(Point, coordinates, coordinates)


def _is_long(cubic: Cubic) -> bool:
    return cubic.length > 1.0


cubics = st.builds(Cubic, points, points, points, points).filter(_is_long)
"""Any cubics, loops and sharp bends among them."""


@st.composite
def drawn_curves(draw: st.DrawFn, one_sided: bool = False) -> Cubic:
    """A curve as drafts make them: two ends and two directions that turn by less than 150 degrees."""
    start, end = draw(points), draw(points)
    if start.distance_to(end) < 20.0:
        end = start + Point(60.0, 25.0)
    chord = (end - start).direction()
    lowest = 2.0 if one_sided else -75.0
    leaving, arriving = draw(st.floats(lowest, 75.0)), -draw(st.floats(lowest, 75.0))
    pulls = st.floats(0.6, 1.4)
    return curve_between(start, chord + leaving, end, chord + arriving, draw(pulls), draw(pulls))


@st.composite
def chains(draw: st.DrawFn) -> Path:
    """An open path of one to five segments, straight and curved."""
    here = draw(points)
    segments: list[Line | Cubic] = []
    for _ in range(draw(st.integers(1, 5))):
        end = here + Point(draw(st.floats(5.0, 300.0)), draw(st.floats(-200.0, 200.0)))
        if draw(st.booleans()):
            segments.append(Line(here, end))
        else:
            segments.append(Cubic(here, draw(points), draw(points), end))
        here = end
    return Path(tuple(segments))


@st.composite
def outlines(draw: st.DrawFn) -> Path:
    """A counter-clockwise outline like a bodice or a skirt panel, with invented measures."""
    width, height = draw(st.floats(120.0, 400.0)), draw(st.floats(250.0, 900.0))
    hem_lift, lean = draw(st.floats(-20.0, 20.0)), draw(st.floats(-30.0, 30.0))
    depth, shoulder = draw(st.floats(80.0, 200.0)), draw(st.floats(0.25, 0.5))
    underarm = Point(width + lean, height - depth - 60.0)
    tip = Point(width * (shoulder + 0.3), height - draw(st.floats(5.0, 40.0)))
    neck = Point(width * shoulder, height)
    center = Point(0.0, height - draw(st.floats(15.0, 90.0)))
    return Path.of(
        Line(Point(0.0, 0.0), Point(width, hem_lift)),
        curve_between(
            Point(width, hem_lift), 90.0 + draw(st.floats(-12, 12)), underarm, 90.0 + draw(st.floats(-8, 8))
        ),
        curve_between(
            underarm, 180.0 - draw(st.floats(0, 20)), tip, 95.0 - draw(st.floats(0, 15)),
            draw(st.floats(0.7, 1.3)), draw(st.floats(0.7, 1.3)),
        ),
        Line(tip, neck),
        curve_between(neck, -90.0, center, 180.0),
        Line(center, Point(0.0, 0.0)),
    )  # fmt: skip
