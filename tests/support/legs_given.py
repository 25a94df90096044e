"""Invented bodies for the trousers in numbers; girths with their ease, mm."""

from dataclasses import replace

from notchbook.blocks.legs import LevelGirth, TrousersGiven, count_darts


def settled(given: TrousersGiven) -> TrousersGiven:
    """With as many darts as this body asks for."""
    front, back = count_darts(given)
    return replace(given, front_darts=front, back_darts=back)


def foretold_crotch(rise: float, hip: float, waist: float) -> float:
    """The crotch length of a woman, foretold from surveyed women (SD 23 mm); body girths, mm."""
    return 72.0 + 0.97 * (rise - 10.5) + 0.414 * hip - 0.078 * waist


def woman(waist: float, hip: float, hip_depth: float = 205.0, rise: float = 275.0) -> TrousersGiven:
    """A woman by her girths: fitted trousers to the ankle, sitting rise."""
    thigh = 0.6 * hip
    knee = max(0.62 * thigh + 40.0, 0.72 * (thigh + 40.0))
    return settled(
        TrousersGiven(
            waist=waist + 20.0,
            hip=hip + 40.0,
            hip_depth=hip_depth,
            rise=rise,
            depth_ease=20.0,
            depth_most=30.0,
            crotch=foretold_crotch(rise, hip, waist) + 25.0,
            thigh=thigh + 40.0,
            knee_depth=rise + 330.0,
            length=rise + 745.0,
            knee=knee,
            hem=0.86 * knee,
            wearer="women",
        )
    )


WOMAN = woman(720.0, 960.0)
"""An ordinary woman, waist 72, hip 96."""

HOLLOW = woman(680.0, 1030.0, 210.0, 280.0)
"""Hip 35 cm larger than the waist."""

FULL_SEAT = replace(woman(760.0, 1040.0, 210.0, 280.0), crotch=785.0)
"""A full seat: the crotch 40 mm longer than foretold."""

PLUS = woman(1120.0, 1320.0, 215.0, 300.0)
"""Waist 112, hip 132."""

STOUT = woman(1140.0, 1080.0, 200.0, 280.0)
"""A waist larger than the hip."""

MAN = settled(
    replace(
        woman(900.0, 1020.0, 200.0, 265.0),
        wearer="men",
        crotch=670.0 + 25.0,
        knee=490.0,
        hem=440.0,
    )
)
"""A man, waist 90, hip 102."""

BELLY_MAN = settled(
    replace(
        woman(1140.0, 1100.0, 200.0, 275.0),
        wearer="men",
        crotch=750.0,
        between=(LevelGirth(1180.0, 90.0),),
    )
)
"""A man whose belly is larger than waist and hip."""

CHILD = settled(
    TrousersGiven(
        waist=580.0,
        hip=650.0,
        hip_depth=130.0,
        rise=190.0,
        depth_ease=12.0,
        depth_most=30.0,
        crotch=455.0,
        thigh=390.0,
        knee_depth=410.0,
        length=680.0,
        knee=320.0,
        hem=300.0,
    )
)
"""A child of 116 cm."""

BODIES = {
    "woman": WOMAN,
    "hollow back": HOLLOW,
    "full seat": FULL_SEAT,
    "plus": PLUS,
    "waist over hip": STOUT,
    "man": MAN,
    "belly man": BELLY_MAN,
    "child": CHILD,
}
