"""What the finished sleeve must measure.

What is promised is what was asked for: the measure with its ease, and by how much a lever that the draft
speaks of gave way. Never what came out: a promise made of that could not be broken.
"""

import math
from collections.abc import Iterator
from dataclasses import replace

from notchbook.blocks.set_in.given import SleeveGiven
from notchbook.blocks.set_in.shapes import SleeveHalf
from notchbook.blocks.set_in.taper import elbow_depth, taper_tilt
from notchbook.blocks.sleeve_pieces.eases import sleeve_rows
from notchbook.blocks.sleeve_pieces.sleeve_measures import ArmRead
from notchbook.pattern import Expectation, part_name, piece_name

_SAME_LENGTH = 30.0
"""mm; a sleeve whose length differs from the arm's by more is no long one."""

_ROUNDS = 6
"""Rounds in which the lean of the seams settles: each leaves less than a hundredth of the miss before."""


def promises(slug: str, given: SleeveGiven, half: SleeveHalf, arm: ArmRead) -> tuple[Expectation, ...]:
    """Girths of the arm, the lengths, and both sides of the cap against their armhole."""
    return (
        _upper_arm(slug, given, half, arm),
        *_elbow(slug, given, half, arm),
        _hem(slug, given, half, arm),
        *_lengths(slug, given, arm),
        *_cap(slug, given),
    )


def _upper_arm(slug: str, given: SleeveGiven, half: SleeveHalf, arm: ArmRead) -> Expectation:
    return Expectation(
        part_name(slug, "upper_arm_girth"),
        "upper_arm_girth",
        (part_name(piece_name(slug, "sleeve"), "biceps_line"),),
        1,
        arm.upper_arm,
        _biceps(given, half) - arm.upper_arm,
        "the sleeve must pass round the upper arm with its ease",
        usual_ease=sleeve_rows()["ease.upper_arm"].usual,
    )


def _biceps(given: SleeveGiven, half: SleeveHalf) -> float:
    """The width at the biceps line, mm: as asked, or what a cap height that was asked for comes to."""
    widened = max(_pulled(half, "biceps_widened"), 0.0)  # a sleeve narrower than asked is said by no finding
    return given.biceps + widened if given.keep == "biceps" else half.biceps


def _elbow(slug: str, given: SleeveGiven, half: SleeveHalf, arm: ArmRead) -> Iterator[Expectation]:
    """The width at the elbow: on the straight way from biceps to hem, no less than the elbow asks for."""
    depth = elbow_depth(given, half.cap_height)
    if arm.elbow is None or depth is None or half.elbow_line is None:
        return
    sleeve = piece_name(slug, "sleeve")
    names = [part_name(sleeve, "elbow_line")]
    if half.elbow_dart is not None:
        names.append(part_name(sleeve, "elbow_dart", "upper_leg"))
    straight = _straight_width(_biceps(given, half), depth, _tilt(given, half))
    yield Expectation(
        part_name(slug, "elbow_girth"),
        "elbow_girth",
        tuple(names),
        1,
        arm.elbow,
        straight + _swelling(half, depth) - arm.elbow,
        "the arm must bend in the sleeve",
    )


def _straight_width(biceps: float, depth: float, tilt: float) -> float:
    """How wide a straight sleeve is so far below its biceps line, mm; ``tilt`` in radians."""
    return biceps - 2.0 * depth * math.tan(tilt)


def _swelling(half: SleeveHalf, depth: float) -> float:
    """By how much an elbow dart makes the sleeve wider there than straight seams of the same lean, mm."""
    if half.elbow_dart is None or half.elbow_width is None:
        return 0.0
    drawn = -math.pi / 2.0 - math.radians(half.front_seam.tangent_at(0.0, "after").direction())
    return half.elbow_width - _straight_width(half.biceps, depth, drawn)


def _tilt(given: SleeveGiven, half: SleeveHalf) -> float:
    """How far the seams lean in by what was asked, radians.

    The bend at the elbow lifts the hem, which is drawn lower for it; the length of the seam tells how much.
    """
    biceps, height, straight = _biceps(given, half), half.cap_height, given
    for _ in range(_ROUNDS):
        tilt = taper_tilt(straight, biceps, height)
        down = half.front_seam.length - biceps / 2.0 * math.tan(tilt / 2.0)
        straight = replace(given, length=height + down)
    return tilt


def _hem(slug: str, given: SleeveGiven, half: SleeveHalf, arm: ArmRead) -> Expectation:
    """The hem, as the wrist's where the sleeve reaches it."""
    is_to_wrist = arm.wrist is not None and _is_long(given, arm)
    wanted = given.hem + _pulled(half, "hem_widened")
    body = arm.wrist if is_to_wrist and arm.wrist is not None else given.hem
    return Expectation(
        part_name(slug, "wrist_girth" if is_to_wrist else "hem_girth"),
        "wrist_girth" if is_to_wrist else "",
        (part_name(piece_name(slug, "sleeve"), "hem"),),
        1,
        body,
        wanted - body,
        "the hand must pass, or a vent opens" if is_to_wrist else "the hem is as wide as asked",
        usual_ease=sleeve_rows()["ease.wrist"].usual if is_to_wrist else None,
    )


def _lengths(slug: str, given: SleeveGiven, arm: ArmRead) -> Iterator[Expectation]:
    """The length of the sleeve, and the cap height where that was asked for."""
    sleeve = piece_name(slug, "sleeve")
    crown, underarm, hem = (part_name(sleeve, word) for word in ("crown", "underarm_front", "hem_middle"))
    if given.below_underarm is not None:
        reason = "from the underarm to the hem the sleeve is as long as asked"
        yield _down(slug, "sleeve_length", given.below_underarm, (underarm, hem), reason)
    else:
        is_long = _is_long(given, arm) and arm.arm_length is not None
        word = "arm_length" if is_long else "sleeve_length"
        reason = "from the top of the cap to the hem the sleeve is as long as asked"
        body = arm.arm_length if is_long else None
        yield _down(slug, word, given.length, (crown, hem), reason, body)
    if given.keep == "cap_height" and given.cap_height is not None:
        yield _down(slug, "cap_height", given.cap_height, (crown, underarm), "the cap is as high as asked")


def _down(
    slug: str, word: str, wanted: float, chain: tuple[str, str], reason: str, body: float | None = None
) -> Expectation:
    """A length straight down from one point to another; ``body`` is the measure that it comes from."""
    return Expectation(
        part_name(slug, word),
        "" if body is None else word,
        (),
        1,
        wanted if body is None else body,
        0.0 if body is None else wanted - body,
        reason,
        kind="length",
        chains=(chain,),
        reach="down",
    )


def _cap(slug: str, given: SleeveGiven) -> Iterator[Expectation]:
    share = given.front_ease_share
    for which, armhole, ease in (
        ("front", given.armhole.front, share * given.cap_ease),
        ("back", given.armhole.back, (1.0 - share) * given.cap_ease),
    ):
        yield Expectation(
            part_name(slug, f"cap_{which}_length"),
            "",
            (part_name(piece_name(slug, "sleeve"), f"cap_{which}"),),
            1,
            armhole.length,
            ease,
            "the cap goes into the armhole with its ease",
            kind="length",
        )


def _is_long(given: SleeveGiven, arm: ArmRead) -> bool:
    """Whether the sleeve is asked to be as long as the arm."""
    is_given = given.below_underarm is None and arm.arm_length is not None
    return is_given and abs(given.length - (arm.arm_length or 0.0)) <= _SAME_LENGTH


def _pulled(half: SleeveHalf, name: str) -> float:
    """By how much a girth gave way, mm: what the draft says of the lever of this name."""
    return next((lever.pulled for lever in half.levers if lever.name == name), 0.0)
