"""The cap of a dart: what the cut line looks like after the dart was folded and the edge cut through."""

from notchbook.finish.chain import chained
from notchbook.finish.corner import Corner
from notchbook.finish.strip import Strip, nearest_crossing, ray
from notchbook.geometry import Point, Transform
from notchbook.pattern import Intake, Piece, closing_motion
from notchbook.units import TOLERANCES


def is_open(piece: Piece, intake: Intake) -> bool:
    """Whether the dart takes up anything at its mouth; one of 0 has no cap, no notches and no hole."""
    return mouth_width(piece, intake) > TOLERANCES.sew_length


def mouth_width(piece: Piece, intake: Intake) -> float:
    """The intake at the mouth, straight from leg to leg, mm."""
    first, second = piece.edge(intake.first_leg).path, piece.edge(intake.second_leg).path
    return first.start.distance_to(second.end)


def middle_direction(piece: Piece, intake: Intake) -> Point:
    """The unit direction of the dart's fold, from its point out through the middle of its mouth."""
    first, second = piece.edge(intake.first_leg).path, piece.edge(intake.second_leg).path
    return ((first.start - first.end).unit() + (second.end - second.start).unit()).unit()


def capped(first: Strip, second: Strip, piece: Piece, intake: Intake) -> Corner | None:
    """The cap between the edges before and after a dart; None when the folded edge misses the dart.

    The dart is closed and pressed toward its ``fold_toward`` leg. The edge is cut straight through along
    the side that it is pressed on, and the cloth of the dart is unfolded again: the cap is that stretch
    of cut line, and its reflection in the dart's fold.
    """
    first_leg, second_leg = piece.edge(intake.first_leg).path, piece.edge(intake.second_leg).path
    point, reach = first_leg.end, first_leg.length + second_leg.length + first.first
    middle = middle_direction(piece, intake)
    unfold = Transform.reflection(point, point + middle)
    motion = closing_motion(piece, intake)
    center = ray(point, middle, reach)
    if intake.fold_toward == "second_leg":
        lying, still, mouth = second.line.transformed(motion), first.line, first_leg.start
    else:
        lying, still, mouth = first.line.transformed(motion.inverse()), second.line, second_leg.end
    stitching = ray(point, mouth - point, reach)
    on_still = nearest_crossing(still, stitching, mouth)
    on_lying = nearest_crossing(lying, stitching, mouth)
    at_fold = nearest_crossing(lying, center, mouth)
    if on_still is None or on_lying is None or at_fold is None:
        return None
    if intake.fold_toward == "second_leg":
        if at_fold.at_self <= on_lying.at_self:
            return None
        half = lying.between(on_lying.at_self, at_fold.at_self)
        bridge = chained((half, half.transformed(unfold).reversed()))
        return Corner(on_still.at_self, on_lying.at_self, bridge)
    if at_fold.at_self >= on_lying.at_self:
        return None
    half = lying.between(at_fold.at_self, on_lying.at_self)
    bridge = chained((half.transformed(unfold).reversed(), half))
    return Corner(on_lying.at_self, on_still.at_self, bridge)
