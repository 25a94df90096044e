"""What closures are usually made with: the default of each amount, and from where to where it is made.

All in mm. The limits leave room to either side: what lies outside is more often a slip than meant.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from notchbook.recipe.style_figure import RangedFigure


def _row(value: float, least: float, most: float, meaning: str, made: str) -> RangedFigure:
    return RangedFigure(value, meaning, made, "common practice", least, most)


USUAL_AMOUNTS: Final[Mapping[tuple[str, str], RangedFigure]] = MappingProxyType(
    {
        ("vent", "height"): _row(180.0, 40.0, 700.0, "height of a vent", "jackets 15 to 28 cm, coats more"),
        ("vent", "width"): _row(40.0, 15.0, 120.0, "width of a vent's extension", "4 to 5 cm"),
        ("hem_slit", "height"): _row(
            150.0, 20.0, 800.0, "height of a slit", "shirts 4 cm, long skirts 60 cm"
        ),
        ("button_stand", "button"): _row(15.0, 6.0, 50.0, "diameter of a button", "shirt 11 mm, coat 30 mm"),
        ("button_stand", "thickness"): _row(
            3.0, 1.0, 25.0, "thickness of a button", "flat 2 to 5 mm, balls more"
        ),
        ("button_stand", "width"): _row(
            15.0, 8.0, 120.0, "width of a stand", "as the button; double-breasted 8 cm"
        ),
        ("elastic_casing", "elastic"): _row(
            25.0, 3.0, 120.0, "width of an elastic", "sold 3 mm to 10 cm wide"
        ),
        ("elastic_casing", "turned"): _row(10.0, 0.0, 30.0, "what is turned under at a casing", "3/8 in"),
        ("belt_loops", "belt"): _row(40.0, 8.0, 150.0, "width of the belt of loops", "2 to 8 cm"),
        ("belt_loops", "ease"): _row(10.0, 0.0, 40.0, "what a loop is longer than its belt is wide", "1 cm"),
        ("belt_loops", "width"): _row(10.0, 4.0, 40.0, "width of a belt loop", "8 to 15 mm"),
        ("strap", "to_fit"): _row(
            40.0, 0.0, 200.0, "what a strap is cut longer", "cut long, pinned on the body"
        ),
        ("strap", "width"): _row(8.0, 2.0, 120.0, "width of a strap", "spaghetti 4 mm, aprons 5 cm"),
        ("tie", "length"): _row(
            600.0, 60.0, 2500.0, "length of a tie", "bows 25 cm, wraps round the waist 2 m"
        ),
        ("tie", "width"): _row(20.0, 3.0, 300.0, "width of a tie", "1 to 5 cm, sashes more"),
        ("belt", "beyond"): _row(150.0, 50.0, 1500.0, "what a belt is longer", "15 cm; tied belts a meter"),
        ("belt", "width"): _row(40.0, 8.0, 150.0, "width of a belt", "2 to 8 cm"),
        ("belt", "apart"): _row(25.0, 8.0, 80.0, "spacing of the holes of a belt", "1 in"),
        ("waistband", "depth"): _row(35.0, 10.0, 200.0, "finished width of a waistband", "2.5 to 5 cm"),
        ("waistband", "underlap"): _row(
            30.0, 0.0, 120.0, "underlap of a waistband", "3 cm; 44 mm behind a fly"
        ),
        ("waistband", "ease"): _row(0.0, 0.0, 60.0, "what of a waist is eased into its band", "1 to 3 cm"),
        ("contoured_waistband", "depth"): _row(50.0, 10.0, 250.0, "width of a contoured band", "4 to 10 cm"),
        ("contoured_waistband", "underlap"): _row(30.0, 0.0, 120.0, "underlap of a waistband", "3 cm"),
        ("button_loops", "button"): _row(10.0, 4.0, 40.0, "diameter of a button for loops", "8 to 15 mm"),
        ("button_loops", "thickness"): _row(
            6.0, 1.0, 40.0, "thickness of a button for loops", "a ball is as wide"
        ),
        ("button_loops", "cord"): _row(4.0, 1.0, 15.0, "thickness of a button loop", "2 to 5 mm"),
        ("hook_and_eye", "hook_inside"): _row(
            5.0, 1.0, 80.0, "how far inside an edge a hook lies", "2 to 10 mm"
        ),
        ("hook_and_eye", "eye_inside"): _row(
            5.0, 1.0, 80.0, "how far inside an edge an eye lies", "2 to 10 mm"
        ),
    }
)
"""By step and parameter; the value is the default."""
