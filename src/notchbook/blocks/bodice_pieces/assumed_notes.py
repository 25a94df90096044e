"""Findings on what the bodice took because nobody measured it, and what it left as it falls."""

from collections.abc import Iterator

from notchbook.blocks.bodice_pieces.cups import point_distance
from notchbook.blocks.bodice_pieces.lever_notes import CHECK
from notchbook.blocks.bodice_pieces.promises import Drafted
from notchbook.pattern import Finding, Measured, Severity, part_name, worded


def assumed_notes(drafted: Drafted) -> Iterator[Finding]:
    """Slope, cup, front length, and the surplus of a waist that falls as it will."""
    measures = drafted.measures
    front = drafted.names.piece("front")
    if measures.slope_error is not None:
        yield worded(
            CHECK,
            "shoulder-slope-assumed",
            Severity.NOTE,
            where=part_name(front, "shoulder"),
            slope=measures.given.shoulder_slope + measures.lift,
            error=measures.slope_error,
        )
    body = measures.body
    if measures.given.bust_shape is not None:
        distance = point_distance(
            body["bust_girth"], body.get("under_bust_girth"), body.get("upper_bust_girth")
        )
        if distance.told_from == "unknown":
            point = part_name(front, "bust_point")
            amount = Measured(distance.short_by)
            yield worded(CHECK, "cup-unknown", Severity.NOTE, amount, where=point)
    if measures.front_is_assumed:
        yield worded(CHECK, "front-length-assumed", Severity.NOTE, where=part_name(front, "side_neck_point"))
    if drafted.half.fallen_waist is not None:
        surplus = drafted.half.fallen_waist - body["waist_girth"]
        waist = part_name(front, "waist")
        yield worded(CHECK, "waist-left-as-it-falls", Severity.NOTE, Measured(surplus), where=waist)
