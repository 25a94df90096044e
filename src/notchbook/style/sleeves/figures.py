"""Figures of the trade for sleeves, each with its source and grade."""

from typing import Final

from notchbook.recipe.style_figure import RangedFigure, StyleFigure

PUFF_HEIGHT: Final = RangedFigure(
    30.0,
    "by how much the cap of a puff is higher, so that the gathers stand",
    "1 to 2 in; no source",
    "common practice",
    15.0,
    60.0,
)

MUTTON_HEIGHT: Final = RangedFigure(
    50.0,
    "by how much the cap of a leg-of-mutton sleeve is higher",
    "2 in; no source",
    "common practice",
    25.0,
    100.0,
)

BISHOP_DROP: Final = RangedFigure(
    25.0,
    "by how much the hem of a bishop sleeve hangs lower behind, over the bent elbow",
    "3/4 to 1 1/2 in; no source",
    "common practice",
    15.0,
    40.0,
)

BISHOP_BACK: Final = RangedFigure(
    0.6,
    "share of the fullness of a bishop sleeve that lies in its back half",
    "more at the back, where the elbow is: 0.5 to 0.75; no source",
    "common practice",
    0.0,
    1.0,
)

CUFF_EASE: Final = StyleFigure(
    30.0, "a closed cuff over the wrist", "1 to 1 1/2 in over the wrist; no source", "common practice"
)

ARM_BAND_EASE: Final = StyleFigure(
    30.0,
    "a band or an elastic round the upper arm over the arm itself",
    "1 in and a little more; no source",
    "common practice",
)

HAND_ROOM: Final = StyleFigure(
    20.0,
    "what must pass over the hand at the least, over its girth",
    "as the check of openings has it",
    "common practice",
)

PLACKET_LENGTH: Final = RangedFigure(
    100.0,
    "length of the slit of a placket",
    "bound 6 to 10 cm, with a tower 12 to 15 cm; no source",
    "common practice",
    60.0,
    160.0,
)

PLACKET_PLACE: Final = RangedFigure(
    0.25,
    "where the slit stands along the hem from its back end, as a share",
    "half way over the back half, in line with the little finger: 0.2 to 0.35; no source",
    "common practice",
    0.05,
    0.6,
)

PLACKET_WIDTH: Final = RangedFigure(
    6.0,
    "finished width of the strip of a placket",
    "1/4 in; bound 3 to 6 mm, below a tower 10 mm",
    "common practice",
    3.0,
    12.0,
)

TOWER_WIDTH: Final = RangedFigure(
    25.0, "finished width of a tower", "1 in; no source", "common practice", 20.0, 30.0
)

TOWER_SEAM: Final = StyleFigure(
    6.0,
    "a tower and the strip below it are sewn so far inside the edges of the slit, and turned by as much",
    "1/4 in; no source",
    "common practice",
)

TOWER_POINT: Final = StyleFigure(
    35.0, "how far the point of a tower rises above the slit", "1 to 1 1/2 in; no source", "common practice"
)

CUFF_DEPTH: Final = RangedFigure(
    60.0, "finished depth of a cuff", "2 1/4 to 2 1/2 in; no source", "common practice", 25.0, 100.0
)

CUFF_OVERLAP: Final = RangedFigure(
    20.0, "how far the ends of a cuff lap", "3/4 to 1 in; no source", "common practice", 15.0, 30.0
)

BUTTON: Final = RangedFigure(
    11.0, "diameter of a button of a cuff", "18 lines of 1/40 in are 11.4 mm", "memory", 9.0, 15.0
)

HOLE_OVER_BUTTON: Final = StyleFigure(
    3.0, "a buttonhole over the diameter of its button", "1/8 in", "common practice"
)

FOREARM_SHIFT: Final = RangedFigure(
    25.0,
    "how far the seam at the forearm lies inside the front fold, so that it is not seen",
    "3/4 to 1 1/4 in, 20 to 30 mm; no source",
    "common practice",
    20.0,
    30.0,
)

HIND_ARM_SHIFT: Final = RangedFigure(
    20.0,
    "how far the seam at the hind arm lies inside the back fold at the cap; on the fold at the hem",
    "3/4 in at the cap, nothing from elbow or hem; no source",
    "common practice",
    0.0,
    30.0,
)

ELBOW_BEND: Final = RangedFigure(
    20.0,
    "how far the hem of a tailored sleeve swings forward below the elbow",
    "3/4 to 1 in; no source",
    "common practice",
    10.0,
    35.0,
)

BEND_REACH: Final = StyleFigure(
    90.0, "how far above and below the elbow the seams bend", "a hand's breadth", "own judgment"
)

HEM_SQUARE: Final = StyleFigure(
    40.0,
    "how high above its hem a tailored sleeve runs square to it, so that the hem turned up lies flat",
    "as deep as the hem: 1 1/2 to 2 in at jackets; no source",
    "common practice",
)

KIMONO_ANGLE: Final = RangedFigure(
    10.0,
    "degrees by which a cut-on sleeve hangs below the run of the shoulder seam, itself 20 below the level",
    "0 to 45 degrees below the level, to 25 below the shoulder: the lower it hangs, the less the arm is "
    "lifted",
    "memory",
    -15.0,
    45.0,
)

KIMONO_HEM_EASE: Final = RangedFigure(
    100.0, "hem of a cut-on sleeve over the wrist", "3 to 6 in; no source", "common practice", 60.0, 200.0
)

KIMONO_ARM_EASE: Final = StyleFigure(
    50.0,
    "the least that a cut-on sleeve is wider than the upper arm where it leaves the body",
    "looser than a set-in sleeve, whose ease is 2 in; no source",
    "common practice",
)

GUSSET_ANGLE: Final = RangedFigure(
    60.0,
    "degrees at the points of a gusset in front and behind",
    "a gusset of two equal triangles, 40 to 90 degrees; no source",
    "common practice",
    20.0,
    100.0,
)

RAGLAN_FRONT: Final = RangedFigure(
    35.0,
    "how far down the front neck from the shoulder a raglan line begins",
    "1 to 2 in; no source",
    "common practice",
    15.0,
    60.0,
)

RAGLAN_BACK: Final = RangedFigure(
    20.0,
    "how far along the back neck from the shoulder a raglan line begins",
    "3/4 to 1 in; no source",
    "common practice",
    10.0,
    40.0,
)

RAGLAN_ABOVE: Final = RangedFigure(
    10.0,
    "how far above the top of the cap the end of the shoulder lies in a raglan",
    "3/8 to 1/2 in; no source",
    "common practice",
    0.0,
    40.0,
)

ELASTIC_WIDTH: Final = StyleFigure(
    8.0, "width of an elastic in the hem of a sleeve", "8 to 10 mm; no source", "common practice"
)

CAP_LENGTH: Final = RangedFigure(
    85.0,
    "length of a cap sleeve below the shoulder",
    "a hand's breadth or less; no source",
    "common practice",
    50.0,
    120.0,
)
