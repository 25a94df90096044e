"""Faults planted in the room that girths have for the body, on the hand-made skirt.

Its hip is 980 mm: 940 and 40 of ease. What is least is reckoned by hand beside each fault.
"""

from dataclasses import replace

from notchbook.checks import Subject
from notchbook.geometry import Path, Point
from notchbook.pattern import Expectation, Intake, InternalLine, Pattern
from support.bent import path_changed, piece_changed
from support.faults import Made, fault, harmless
from support.faults_seams import HIP_PROMISE
from support.hand_skirt import BACK_WIDTH, BODY_HIP, HIP_EASE

SIDE = "skirt.back/side_seam"
HIP = BODY_HIP + HIP_EASE


def _styled(pattern: Pattern, promise: Expectation) -> Subject:
    return Subject(pattern, None, (promise,), is_block=False)


def _taken_in(skirt: Pattern, by: float) -> Pattern:
    """The back's side seam straight from hem and waist to a place on the hip line so far inside."""
    hip = Point(BACK_WIDTH - by, 0.0)
    return path_changed(skirt, SIDE, lambda old: Path.polyline((old.start, hip, old.end)))


@fault("girth-room", "girth-under-body", measured=HIP)
def body_larger_than_the_pattern(skirt: Pattern) -> Made:
    return _styled(skirt, replace(HIP_PROMISE, body=HIP + 4.0, ease=-4.0))


@fault("girth-room", "girth-under-least-ease", measured=HIP - 30.0)
def side_seam_taken_in_below_the_least_ease(skirt: Pattern) -> Made:
    """15 mm on each side: 10 mm of ease are left, and 20 are usual at the least."""
    return _styled(_taken_in(skirt, 15.0), replace(HIP_PROMISE, usual_ease=(20.0, 60.0)))


@harmless("girth-room")
def side_seam_taken_in_within_the_usual_ease(skirt: Pattern) -> Made:
    return _styled(_taken_in(skirt, 9.0), replace(HIP_PROMISE, usual_ease=(20.0, 60.0)))


@harmless("girth-room")
def draft_that_was_asked_for_less_than_is_usual(skirt: Pattern) -> Made:
    return _styled(skirt, replace(HIP_PROMISE, usual_ease=(50.0, 60.0)))


@harmless("girth-room")
def girth_that_a_step_made_much_wider(skirt: Pattern) -> Made:
    return _styled(_taken_in(skirt, -40.0), replace(HIP_PROMISE, usual_ease=(20.0, 60.0)))


@harmless("girth-room")
def cloth_that_stretches_and_is_smaller_than_the_body(skirt: Pattern) -> Made:
    for name in skirt.pieces:
        skirt = piece_changed(skirt, name, lambda piece: replace(piece, stretches=True))
    return _styled(skirt, replace(HIP_PROMISE, body=1060.0, ease=-80.0, usual_ease=(-120.0, -50.0)))


@fault("girth-room", "girth-under-least-ease", measured=HIP)
def cloth_that_stretches_and_is_smaller_than_it_can_give(skirt: Pattern) -> Made:
    for name in skirt.pieces:
        skirt = piece_changed(skirt, name, lambda piece: replace(piece, stretches=True))
    return _styled(skirt, replace(HIP_PROMISE, body=1060.0, ease=-50.0, usual_ease=(-60.0, -50.0)))


def _folded(skirt: Pattern, stitched: float) -> Pattern:
    """A pleat of 30 mm that the back's hip line runs through, 196 mm below its edge."""
    lines = tuple(
        InternalLine(
            f"skirt.back/pleat/{word}_line", Path.line(Point(x, 196.0), Point(x, -300.0)), "fold_line"
        )
        for word, x in (("near", 100.0), ("far", 130.0))
    )
    pleat = Intake(
        "skirt.back/pleat",
        "skirt.back/waist",
        kind="pleat",
        first_line=lines[0].name,
        second_line=lines[1].name,
        stitched=stitched,
    )
    return piece_changed(
        skirt,
        "skirt.back",
        lambda piece: replace(piece, lines=(*piece.lines, *lines), intakes=(*piece.intakes, pleat)),
    )


@fault("girth-room", "girth-under-body", measured=HIP - 60.0)
def pleats_stitched_down_past_the_hip(skirt: Pattern) -> Made:
    """Two pleats of 30 mm are sewn shut there: 920 are left for 940."""
    return _styled(_folded(skirt, 200.0), HIP_PROMISE)


@harmless("girth-room")
def pleats_that_open_above_the_hip(skirt: Pattern) -> Made:
    return _styled(_folded(skirt, 100.0), HIP_PROMISE)
