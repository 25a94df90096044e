"""Invented bodies for the stretch blocks in numbers, and rulers that are not the project's own.

Lengths and directions are taken with svgpathtools, areas and crossings with shapely.
"""

from dataclasses import replace

import numpy as np
from shapely import Polygon
from svgpathtools import CubicBezier, Line
from svgpathtools import Path as SvgPath

from notchbook.blocks.stretch import (
    BodysuitGiven,
    BodysuitPanel,
    LeggingsGiven,
    LegPanel,
    StretchSleeve,
    StretchSleeveGiven,
    TorsoGiven,
    TorsoPanel,
)
from notchbook.geometry import Path

TOLERANCE = 0.1
"""mm for lengths. Source: the house's own closure."""

ANGLE = 1.0
"""Degrees where two edges run on across a seam. Source: the house's own closure."""

WOMAN = TorsoGiven(
    bust=792.0,
    waist=648.0,
    hip=864.0,
    neck=342.0,
    shoulder=117.0,
    shoulder_slope=22.0,
    across_back=325.0,
    across_chest=305.0,
    armhole_depth=180.0,
    back_length=385.0,
    hip_depth=190.0,
    length=190.0,
    sleeve=StretchSleeveGiven(biceps=262.0, hem=150.0, length=560.0),
)
"""Bust 88, waist 72, hip 96 in cloth that gives 50 %; invented, as all here."""

PLUS = replace(
    WOMAN,
    bust=1152.0,
    waist=1010.0,
    hip=1188.0,
    neck=400.0,
    shoulder=124.0,
    across_back=400.0,
    across_chest=385.0,
    armhole_depth=205.0,
    back_length=400.0,
    sleeve=StretchSleeveGiven(biceps=375.0, hem=185.0, length=545.0),
)

MAN = TorsoGiven(
    bust=900.0,
    waist=792.0,
    hip=900.0,
    neck=392.0,
    shoulder=140.0,
    shoulder_slope=20.0,
    across_back=390.0,
    across_chest=380.0,
    armhole_depth=215.0,
    back_length=430.0,
    hip_depth=195.0,
    length=195.0,
    sleeve=StretchSleeveGiven(biceps=304.0, hem=168.0, length=610.0),
)

CHILD = TorsoGiven(
    bust=558.0,
    waist=508.0,
    hip=590.0,
    neck=265.0,
    shoulder=88.0,
    shoulder_slope=19.0,
    across_back=240.0,
    across_chest=230.0,
    armhole_depth=155.0,
    back_length=277.0,
    hip_depth=133.0,
    length=133.0,
    sleeve=StretchSleeveGiven(biceps=180.0, hem=128.0, length=417.0),
)

T_SHIRT = replace(
    WOMAN,
    bust=920.0,
    waist=None,
    hip=1000.0,
    neck=388.0,
    shoulder=130.0,
    across_back=350.0,
    across_chest=330.0,
    armhole_depth=212.0,
    back_length=405.0,
    hip_depth=200.0,
    length=240.0,
    neck_wider=6.0,
    front_neck_lower=12.0,
    sleeve=StretchSleeveGiven(biceps=335.0, hem=320.0, length=195.0),
)
"""Looser than the body."""

BODIES = {"woman": WOMAN, "plus": PLUS, "man": MAN, "child": CHILD, "t_shirt": T_SHIRT}

SUIT = BodysuitGiven(WOMAN, crotch_front=290.0, crotch_back=362.0, leg_opening=510.0)

SUITS = {
    "woman": SUIT,
    "plus": BodysuitGiven(PLUS, crotch_front=372.0, crotch_back=437.0, leg_opening=740.0),
    "man": BodysuitGiven(MAN, crotch_front=290.0, crotch_back=354.0, leg_opening=548.0),
    "child": BodysuitGiven(
        CHILD, crotch_front=228.0, crotch_back=275.0, crotch_width=50.0, leg_opening=330.0
    ),
}

LEGGINGS = LeggingsGiven(
    waist=648.0,
    hip=864.0,
    thigh=514.0,
    knee=329.0,
    calf=323.0,
    ankle=193.0,
    crotch_front=290.0,
    crotch_back=362.0,
    rise=240.0,
    hip_depth=190.0,
    knee_down=345.0,
    calf_down=475.0,
    hem_down=740.0,
)

LEGS = {
    "woman": LEGGINGS,
    "side_seam": replace(LEGGINGS, side_seam=True),
    "plus": replace(
        LEGGINGS,
        waist=1008.0,
        hip=1188.0,
        thigh=740.0,
        knee=449.0,
        calf=412.0,
        ankle=222.0,
        crotch_front=370.0,
        crotch_back=440.0,
        rise=264.0,
        knee_down=310.0,
        calf_down=450.0,
        hem_down=720.0,
    ),
    "man": replace(
        LEGGINGS,
        waist=792.0,
        hip=900.0,
        thigh=547.0,
        knee=347.0,
        calf=346.0,
        ankle=205.0,
        rise=245.0,
        crotch_front=298.0,
        crotch_back=361.0,
        has_front_room=True,
    ),
    "child": LeggingsGiven(
        waist=513.0,
        hip=576.0,
        thigh=329.0,
        knee=230.0,
        calf=214.0,
        ankle=158.0,
        crotch_front=205.0,
        crotch_back=255.0,
        rise=185.0,
        hip_depth=126.0,
        knee_down=225.0,
        calf_down=314.0,
        hem_down=457.0,
    ),
}


def svg(path: Path) -> SvgPath:
    """The same curve in the words of svgpathtools."""
    place = 0j
    parts: list[CubicBezier | Line] = []
    for row in path.to_data():
        numbers = [float(word) for word in row[1:]]
        points = [complex(x, y) for x, y in zip(numbers[::2], numbers[1::2], strict=True)]
        if row[0] == "L":
            parts.append(Line(place, points[0]))
        elif row[0] == "C":
            parts.append(CubicBezier(place, *points))
        place = points[-1]
    return SvgPath(*parts)


def length(path: Path) -> float:
    """mm."""
    return float(svg(path).length(error=1e-6))


def start_heading(path: Path) -> float:
    """Degrees."""
    return float(np.degrees(np.angle(svg(path)[0].unit_tangent(0.0))))


def end_heading(path: Path) -> float:
    """Degrees."""
    return float(np.degrees(np.angle(svg(path)[-1].unit_tangent(1.0))))


def between(first: float, second: float) -> float:
    """The angle from one heading to another, degrees, in [-180, 180)."""
    return (second - first + 180.0) % 360.0 - 180.0


def points(path: Path, count: int = 60) -> np.ndarray:
    """Places along the path, ends included, one row each."""
    steps = np.linspace(0.0, 1.0, count + 1)
    places = np.concatenate([np.asarray(segment.poly()(steps)) for segment in svg(path)])
    return np.column_stack([places.real, places.imag])


def width_at(paths: tuple[Path, ...], level: float) -> float:
    """The x at which a chain of paths that falls passes a level, mm."""
    rows = np.vstack([points(path, 2000) for path in paths])
    order = np.argsort(rows[:, 1])
    return float(np.interp(level, rows[order, 1], rows[order, 0]))


def polygon(*paths: Path) -> Polygon:
    """The area inside a chain of paths."""
    rows = np.round(np.vstack([points(path) for path in paths]), 6)
    return Polygon(rows[np.any(np.diff(rows, axis=0, append=rows[:1]) != 0.0, axis=1)])


def panel_area(panel: TorsoPanel | BodysuitPanel) -> Polygon:
    """A half panel, closed along its center."""
    below = (panel.hem.reversed(),) if isinstance(panel, TorsoPanel) else (panel.leg, panel.crotch)
    return polygon(panel.neck, panel.shoulder, panel.armhole, panel.side, *below)


def sleeve_area(sleeve: StretchSleeve) -> Polygon:
    """The sleeve."""
    return polygon(
        sleeve.cap_front,
        sleeve.cap_back.reversed(),
        sleeve.back_seam,
        sleeve.hem,
        sleeve.front_seam.reversed(),
    )


def leg_area(front: LegPanel, back: LegPanel) -> Polygon:
    """A leg without side seam."""
    return polygon(
        front.waist,
        front.crotch,
        front.inseam,
        front.hem,
        back.hem.reversed(),
        back.inseam.reversed(),
        back.crotch.reversed(),
        back.waist.reversed(),
    )
