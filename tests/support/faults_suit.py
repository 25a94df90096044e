"""Faults planted in the hand-made suit."""

from dataclasses import replace
from itertools import pairwise

from notchbook.geometry import Cubic, Path, Point, direction
from notchbook.pattern import Edge, Elastic, InnerDart, InternalLine, Pattern, Piece, frozen_map
from support.bent import edge_changed, path_changed, piece_changed
from support.faults import Made, fault, harmless
from support.hand_suit import CROTCH, SIDE, hand_panel, hand_suit

CHECKED = ("leg-opening-shape",)
"""The checks under which the hand-made suit is right."""


@fault("leg-opening-shape", "leg-leaves-seat", measured=4.0)
def back_leg_nearly_straight(_: Pattern) -> Made:
    return hand_suit(cover=4.0)


@fault("leg-opening-shape", "leg-leaves-seat", measured=-30.0)
def back_leg_scooped_like_the_front(_: Pattern) -> Made:
    return hand_suit(cover=-30.0)


@fault("leg-opening-shape", "leg-below-seat", measured=32.0)
def back_leg_far_below_the_seat(_: Pattern) -> Made:
    return hand_suit(cover=32.0)


@fault("leg-opening-shape", "leg-not-scooped")
def front_leg_that_covers(_: Pattern) -> Made:
    return hand_suit(scoop=-8.0)


@harmless("leg-opening-shape")
def back_leg_just_over_the_seat(_: Pattern) -> Made:
    return hand_suit(cover=10.0)


def _bent_leg(which: str) -> Pattern:
    """The suit with a leg line that bends once to each side."""
    chord = SIDE - CROTCH
    off = chord.perpendicular().unit() * 60.0
    curve = Cubic(CROTCH, CROTCH + chord * (1.0 / 3.0) + off, CROTCH + chord * (2.0 / 3.0) - off, SIDE)
    return path_changed(hand_suit(), f"suit.{which}/leg_opening", lambda _: Path.of(curve))


@fault("fair-edges", "edge-wavers")
def front_leg_that_bends_both_ways(_: Pattern) -> Made:
    return _bent_leg("front")


@harmless("fair-edges")
def back_leg_that_turns_in_at_the_crotch(_: Pattern) -> Made:
    return _bent_leg("back")


@harmless("fair-edges")
def side_that_shapes_a_panel_alone(_: Pattern) -> Made:
    return hand_panel()


@fault("fair-edges", "edge-wavers")
def side_that_bends_twice_below_the_waist(_: Pattern) -> Made:
    return hand_panel(waist=390.0)


@fault("fair-edges", "edge-wavers")
def side_that_bends_twice_beside_a_dart(_: Pattern) -> Made:
    name = "suit.panel/dart"
    words = ("center_leg", "side_leg", "upper_point", "lower_point")
    center, side, upper, lower = (f"{name}/{word}" for word in words)
    dart = InnerDart(name, center, side, upper, lower)
    return piece_changed(hand_panel(), "suit.panel", lambda piece: replace(piece, inner_darts=(dart,)))


@harmless("fair-edges")
def inseam_that_follows_the_leg(_: Pattern) -> Made:
    return hand_panel(inseam=True)


@fault("fair-edges", "edge-wavers")
def inseam_of_a_leg_without_calf(_: Pattern) -> Made:
    bare = hand_panel(inseam=True)
    lines = bare.pieces["suit.panel"].lines[:2]
    return piece_changed(bare, "suit.panel", lambda piece: replace(piece, lines=lines))


def _waist_from(start: str, end: str) -> Pattern:
    """The panel whose top bends to each side, between ends of these words."""
    bust, middle = Point(215.0, 400.0), Point(0.0, 400.0)
    curve = Cubic(bust, bust + Point(-70.0, 40.0), middle + Point(70.0, -40.0), middle)
    panel = edge_changed(hand_panel(), "suit.panel/top", lambda edge: replace(edge, path=Path.of(curve)))
    renamed = {"suit.panel/underarm": f"suit.panel/{start}", "suit.panel/middle": f"suit.panel/{end}"}
    return piece_changed(
        panel, "suit.panel", lambda piece: piece.renamed(lambda name: renamed.get(name, name))
    )


def _hem_lower_at(at_center: float, at_side: float, falls: float = 0.0) -> Pattern:
    """The panel with a hem square to center and side, so many mm lower at them; at the side it may come down
    from a place so many mm over a square one."""
    renamed = {"suit.panel/center": "suit.panel/hem_center", "suit.panel/side": "suit.panel/hem_side"}
    panel = hand_panel().pieces["suit.panel"].renamed(lambda name: renamed.get(name, name))
    hem, side, top, center = panel.outline
    first, last = hem.path.start - Point(0.0, at_center), hem.path.end - Point(0.0, at_side)
    level = Point((last.x - first.x) / 3.0, 0.0)
    to_side = last - level + Point(0.0, falls)
    outline = (
        replace(hem, path=Path.of(Cubic(first, first + level, to_side, last))),
        replace(side, path=Path.line(last, side.path.end)),
        top,
        replace(center, path=Path.line(center.path.start, first)),
    )
    return Pattern(pieces=frozen_map({panel.name: replace(panel, outline=outline)}))


@harmless("fair-edges")
def hem_let_out_at_the_center(_: Pattern) -> Made:
    return _hem_lower_at(14.0, 0.0)


@fault("fair-edges", "edge-wavers")
def hem_that_drops_at_the_side(_: Pattern) -> Made:
    return _hem_lower_at(0.0, 14.0)


@fault("fair-edges", "edge-wavers")
def hem_let_out_at_the_center_that_waves_before_the_side(_: Pattern) -> Made:
    """It rises over the level before the side and comes down to it: a wave, not a hem let out."""
    return _hem_lower_at(14.0, 0.0, falls=8.0)


@harmless("fair-edges")
def waist_from_center_to_center(_: Pattern) -> Made:
    return _waist_from("waist_center_front", "waist_center_back")


@fault("fair-edges", "edge-wavers")
def waist_from_center_to_side(_: Pattern) -> Made:
    return _waist_from("waist_center_front", "waist_side")


def _with_elastic(*edges: str) -> Pattern:
    elastic = Elastic("suit/leg_elastic", "leg elastic", edges, 0.9, 8.0, "limb")
    return hand_suit().with_elastics(elastic)


@fault("elastics", "elastic-edge-lost")
def elastic_of_an_edge_that_is_gone(_: Pattern) -> Made:
    return _with_elastic("suit.front/leg_opening", "suit.back/leg_hem")


@harmless("elastics")
def elastic_with_its_edges(_: Pattern) -> Made:
    return _with_elastic("suit.front/leg_opening", "suit.back/leg_opening")


def _seam_over_waist(
    word: str, *rounds: tuple[float, float], hollows: tuple[tuple[float, float], ...] = ()
) -> Pattern:
    """A panel 600 mm high with its waist at 200, whose side is called so and is round by 20 degrees between
    each two heights, hollow by as much between others, straight elsewhere."""
    places, heading = [Point(200.0, 0.0)], 100.0
    while places[-1].y < 600.0:
        for low, high in rounds:
            heading -= 40.0 / (high - low) if low <= places[-1].y < high else 0.0
        for low, high in hollows:
            heading += 40.0 / (high - low) if low <= places[-1].y < high else 0.0
        places.append(places[-1] + direction(heading) * 2.0)
    corners = (places[-1], Point(0.0, places[-1].y), Point(0.0, 0.0), places[0])
    names = [f"suit.panel/{name}" for name in ("low_side", "high_side", "high_center", "low_center")]
    paths = (Path.polyline(places), *(Path.line(*ends) for ends in pairwise(corners)))
    words = (word, "top", "center", "bottom")
    outline = tuple(
        Edge(f"suit.panel/{one}", path, names[at], names[(at + 1) % 4])
        for at, (one, path) in enumerate(zip(words, paths, strict=True))
    )
    waist = InternalLine("suit.panel/waist_line", Path.line(Point(0.0, 200.0), Point(180.0, 200.0)))
    piece = Piece("suit.panel", "Panel", outline, lines=(waist,))
    return Pattern(pieces=frozen_map({piece.name: piece}))


@harmless("no-bump")
def panel_seam_round_at_the_bust_and_at_the_waist(_: Pattern) -> Made:
    return _seam_over_waist("style_line", (160.0, 240.0), (400.0, 480.0))


@fault("no-bump", "edge-bumpy")
def side_seam_round_at_the_bust_and_at_the_waist(_: Pattern) -> Made:
    return _seam_over_waist("side_seam", (160.0, 240.0), (400.0, 480.0))


@fault("no-bump", "edge-bumpy")
def panel_seam_round_twice_over_the_bust(_: Pattern) -> Made:
    return _seam_over_waist("style_line", (320.0, 400.0), (450.0, 530.0))


@harmless("fair-edges")
def panel_seam_above_a_waist_seam_round_and_then_hollow(_: Pattern) -> Made:
    return _seam_over_waist("style_line/above", (400.0, 480.0), hollows=((100.0, 180.0),))


@fault("fair-edges", "edge-wavers")
def panel_seam_above_a_waist_seam_hollow_on_both_sides_of_the_bust(_: Pattern) -> Made:
    return _seam_over_waist("style_line/above", (300.0, 380.0), hollows=((60.0, 140.0), (480.0, 560.0)))


@fault("fair-edges", "edge-wavers")
def hem_that_is_round_and_then_hollow(_: Pattern) -> Made:
    return _seam_over_waist("edge/above", (400.0, 480.0), hollows=((100.0, 180.0),))
