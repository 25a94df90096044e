"""Figures of the trade for closures: stands, buttons and holes, each with its source and grade.

All in mm where the meaning does not say otherwise. Each is the default of a parameter.
"""

from typing import Final

from notchbook.recipe.style_figure import RangedFigure, StyleFigure

STAND_BEYOND_HALF: Final = StyleFigure(
    3.0,
    "what a stand is wider than half its button at the least, so that the button does not hang over the edge",
    "extension at least half the button and a little",
    "memory",
)

STAND_OF_BUTTON: Final = StyleFigure(
    1.0,
    "width of a stand over the diameter of its button",
    "extension about as wide as the button",
    "memory",
)

FACING_CUT_ON: Final = RangedFigure(
    60.0,
    "width of a facing cut on, from the folded edge",
    "facing cut on, 5 to 8 cm",
    "common practice",
    40.0,
    90.0,
)

FIRST_BELOW_HALF: Final = StyleFigure(
    6.0,
    "what the first button lies lower than half its diameter below the upper edge",
    "first buttonhole half the button and 1/4 in below the neck",
    "memory",
)

LAST_ABOVE_HEM: Final = RangedFigure(
    100.0,
    "how far above a hem the last button lies at the least",
    "last button clear of the hem, about a hand; coats and dresses end higher",
    "common practice",
    60.0,
    400.0,
)

SPACING: Final = RangedFigure(
    90.0,
    "spacing of buttons down a front",
    "shirt and blouse fronts 7.5 to 11 cm, coats to 13 cm",
    "common practice",
    60.0,
    130.0,
)

HOLE_BEYOND_CENTER: Final = StyleFigure(
    3.0,
    "how far beyond the center toward the edge a buttonhole across begins: the button pulls into its end",
    "1/8 in beyond the center",
    "memory",
)

HOLE_BEFORE_EDGE: Final = StyleFigure(
    6.0,
    "cloth that is left between the end of a buttonhole and the edge, at the least",
    "a worked hole needs cloth before it",
    "own judgment",
)

FLY_WIDTH: Final = RangedFigure(
    38.0,
    "width of a fly's facing or extension beyond the center",
    "fly extension 35 to 40 mm",
    "common practice",
    32.0,
    50.0,
)

SHIELD_MORE: Final = RangedFigure(
    6.0,
    "what a fly shield is wider and longer than the facing that it lies behind",
    "shield 5 to 8 mm longer and wider",
    "common practice",
    5.0,
    8.0,
)

ZIP_STOP_ABOVE: Final = StyleFigure(
    10.0,
    "how far above the lower end of the opening the zip stops",
    "zip stop 10 mm above the crotch notch",
    "common practice",
)

STITCH_INSIDE: Final = StyleFigure(
    6.0,
    "how far inside the free edge of the facing the J of a fly is stitched",
    "fly stitched about 3 cm from the center, through its facing",
    "common practice",
)

BELT_BEYOND: Final = StyleFigure(
    150.0,
    "what a belt is longer than the waist that it goes round, for its lap through the buckle",
    "belt 15 cm longer than the waist",
    "common practice",
)

BELT_HOLES_APART: Final = StyleFigure(
    25.0, "how far apart the holes of a belt are, the middle one at the waist", "1 in", "common practice"
)

LOOP_OVER_BELT: Final = StyleFigure(
    10.0,
    "what a belt loop is longer between its stitchings than the belt is wide",
    "loop as long as the belt is wide and 1 cm",
    "common practice",
)

LOOP_TURNED_IN: Final = StyleFigure(
    12.0, "what of a belt loop is turned in or caught at each end", "1/2 in at each end", "common practice"
)

LOOPS_APART: Final = RangedFigure(
    150.0,
    "how far apart belt loops are at most",
    "five to seven loops round a waist, more round a wide one; closer on a small body: none is taken away",
    "common practice",
    50.0,
    170.0,
)

STRAP_TO_FIT: Final = StyleFigure(
    40.0,
    "what a strap is cut longer, to be set on the body",
    "cut straps long and pin them at the back",
    "common practice",
)

SIDE_NECK_ABOVE_NAPE: Final = StyleFigure(
    20.0,
    "how much higher than the nape the strap crosses the shoulder",
    "back neck 2 cm deep in a fitted block",
    "common practice",
)

CASING_EASE: Final = RangedFigure(
    5.0,
    "what a casing is wider than its elastic, so that it can be drawn through",
    "casing of twice the elastic and 6 to 10 mm: the seam and the room together",
    "common practice",
    2.0,
    8.0,
)

CASING_TURNED: Final = StyleFigure(
    10.0, "what is turned under at the raw edge of a casing cut on", "3/8 in", "common practice"
)

ELASTIC_SHARE: Final = RangedFigure(
    0.9,
    "length of the closed elastic over the body's waist",
    "elastic 0.85 to 0.95 of the body at the waist",
    "common practice",
    0.85,
    0.95,
)

SLIT_TURNED: Final = RangedFigure(
    30.0,
    "what is turned in along a slit",
    "slit facing 2.5 to 4 cm, as the hem; as narrow as 1 cm in a shirt",
    "common practice",
    10.0,
    50.0,
)

ZIP_STEP_BELOW: Final = StyleFigure(
    20.0, "how far below the zip's stop its allowance ends", "zip tape reaches 2 cm below its stop", "memory"
)

BUTTON_LOOPS_APART: Final = RangedFigure(
    25.0,
    "spacing of small buttons in loops",
    "loops close together, 1 to 4 cm",
    "common practice",
    8.0,
    60.0,
)

NEAR_NECK: Final = StyleFigure(
    30.0,
    "mm from a neck edge within which a tie counts as one at the neck",
    "a tie at the top of a front opening hangs at the throat",
    "own judgment",
)

OLDER_CHILD_HEIGHT: Final = StyleFigure(
    1820.0,
    "mm of height up to which a body with a child's girths counts as an older child as far as cords go",
    "EN 14682, from memory: to 14 years, girls to 176 cm, boys to 182 cm; the greater, to be safe",
    "memory",
)

CHILD_TIE_FREE: Final = StyleFigure(
    140.0,
    "free end of a tie at the waist of a child's garment, at the most",
    "EN 14682, from memory: free ends at the waist 140 mm, tied belts 360 mm, none tied at the back",
    "memory",
)
