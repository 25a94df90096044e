"""Faults planted behind a zip: what is turned in there must be open where the garment is.

The zip of the hand-made skirt opens the center back 18 cm from the waist down. A facing or lining that is
closed behind it lets nobody in (a fact of plain handling, no source).
"""

from functools import cache

from notchbook.geometry import Path, Point
from notchbook.pattern import Edge, EdgeUse, Notch, Pattern, Piece, Place, Seam
from notchbook.pattern.seam import TURNED_SEAM
from support.closure_steps import FLY, stepped
from support.edge_steps import trousers
from support.faults import Made, fault, harmless

ZIP = "skirt.back/center_back/zip_stop"
INNER = "facing.back"
CORNERS = {
    "center_waist": Point(0.0, 196.0),
    "center_lower": Point(0.0, 0.0),
    "side_lower": Point(220.0, 0.0),
    "side_waist": Point(220.0, 196.0),
}
EDGES = ("center_back", "edge", "side", "waist")


def _turned_in(skirt: Pattern) -> Pattern:
    """The skirt with a piece sewn to its back waist and turned in, 196 mm deep, its center back open."""
    words = [*CORNERS, "center_waist"]
    outline = tuple(
        Edge(
            f"{INNER}/{edge}",
            Path.line(CORNERS[words[index]], CORNERS[words[index + 1]]),
            f"{INNER}/{words[index]}",
            f"{INNER}/{words[index + 1]}",
        )
        for index, edge in enumerate(EDGES)
    )
    waist = Seam(
        "facing/waist",
        (EdgeUse(f"{INNER}/waist", f"{INNER}/side_waist"),),
        (EdgeUse("skirt.back/waist", "skirt.back/side_waist"),),
        seam_class=TURNED_SEAM,
    )
    piece = Piece(INNER, "Back facing", outline, cut="pair", rule="facing")
    return skirt.with_pieces(piece).with_seams(waist)


def _closed(skirt: Pattern) -> Pattern:
    """The same with its center back sewn, left to right."""
    right, left = (
        EdgeUse(f"{INNER}/center_back", f"{INNER}/center_waist", side) for side in ("right", "left")
    )
    return _turned_in(skirt).with_seams(Seam("facing/center_back", (right,), (left,)))


def _with_notch(skirt: Pattern, amount: float) -> Pattern:
    """The same with a zip notch of its own, so far below the waist."""
    stop = Place(f"{INNER}/center_back", f"{INNER}/center_waist", amount)
    return _closed(skirt).with_notches(Notch("facing/zip_notch", stop, purpose="zip stop"))


@fault("opened-at-zips", "closed-behind-zip")
def facing_sewn_shut_behind_the_zip(skirt: Pattern) -> Made:
    return _closed(skirt)


@fault("opened-at-zips", "closed-behind-zip")
def lining_open_a_few_centimeters_only(skirt: Pattern) -> Made:
    return _with_notch(skirt, 50.0)


@harmless("opened-at-zips")
def facing_open_behind_the_zip(skirt: Pattern) -> Made:
    return _turned_in(skirt)


@harmless("opened-at-zips")
def lining_sewn_below_its_zip_notch(skirt: Pattern) -> Made:
    return _with_notch(skirt, 175.0)


@harmless("opened-at-zips")
def facing_closed_where_there_is_no_zip(skirt: Pattern) -> Made:
    return _closed(skirt).with_notches(without=[ZIP])


@cache
def _lined_trousers() -> Pattern:
    """Trousers lined to the hem, the fly made after the lining."""
    pieces = ("trousers.front", "trousers.back")
    lining = {"pieces": list(pieces), "caught": [f"{piece}/waist" for piece in pieces]}
    return stepped(trousers(), ("lining", lining), ("fly", FLY)).pattern


@fault("opened-at-zips", "closed-behind-zip")
def lining_of_trousers_sewn_shut_behind_the_fly(_: Pattern) -> Made:
    return _lined_trousers().with_notches(without=["fly.lining_front/zip_notch"])


@harmless("opened-at-zips")
def lining_of_trousers_open_behind_the_fly(_: Pattern) -> Made:
    return _lined_trousers()
