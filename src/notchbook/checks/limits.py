"""What the checks allow: each limit with its reason, source and grade."""

from collections.abc import Mapping
from dataclasses import dataclass, field, fields, replace
from typing import Any, Final

from notchbook.errors import InputError
from notchbook.units import TOLERANCES


def _limit(amount: float, unit: str, reason: str, source: str, grade: str) -> Any:
    return field(default=amount, metadata={"unit": unit, "reason": reason, "source": source, "grade": grade})


_HOUSE = "tolerances of the house"
_COMMON = "no source"
_PRACTICE = "common practice"


@dataclass(frozen=True, slots=True)
class Limits:
    """How far off is still right, or worth a look. mm, degrees, or a share."""

    seam_walk: float = _limit(
        TOLERANCES.seam_walk, "mm", "Two sides of a seam agree within a pencil line.", _HOUSE, "house"
    )
    dart_legs: float = _limit(
        0.5, "mm", "Legs that differ more leave a step at the mouth.", "trade handbooks", "memory"
    )
    closure: float = _limit(
        TOLERANCES.closure, "mm", "A girth on the sew line is body plus ease.", _HOUSE, "house"
    )
    straightness: float = _limit(
        TOLERANCES.closure,
        "mm",
        "A fold is one straight line; what bends away from it is cut twice.",
        _HOUSE,
        "house",
    )
    shortest: float = _limit(
        TOLERANCES.closure,
        "mm",
        "A shorter segment cannot be drawn with the sharpest pencil.",
        _HOUSE,
        "house",
    )
    junction: float = _limit(
        TOLERANCES.side_junction,
        "deg",
        "Below this no corner shows across a seam.",
        _HOUSE,
        _PRACTICE,
    )
    underarm: float = _limit(
        2.0 * TOLERANCES.side_junction,
        "deg",
        "A corner in the armhole cannot be sewn to the round of a cap, nor faced.",
        _COMMON,
        "own judgment",
    )
    square: float = _limit(
        TOLERANCES.angle, "deg", "A protractor on paper is not read closer.", _HOUSE, _PRACTICE
    )
    grain: float = _limit(
        TOLERANCES.angle,
        "deg",
        "Off grain by more than this, a panel twists visibly.",
        _HOUSE,
        _PRACTICE,
    )
    grain_share: float = _limit(
        1 / 3,
        "share",
        "A short grain line cannot be laid straight to the selvage.",
        _COMMON,
        _PRACTICE,
    )
    dart_angle: float = _limit(
        60.0,
        "deg",
        "A wider dart cannot be pressed flat; it is a seam or two darts.",
        _COMMON,
        _PRACTICE,
    )
    dart_room: float = _limit(
        10.0, "mm", "A dart that ends nearer to an edge runs into its allowance.", _COMMON, _PRACTICE
    )
    dart_smallest: float = _limit(
        8.0, "mm", "A smaller dart is hardly seen; the side seam can take it.", _COMMON, _PRACTICE
    )
    dart_largest: float = _limit(
        40.0,
        "mm",
        "A wider dart pokes at its end: handbooks take two from 4 to 5 cm on.",
        "trade handbooks",
        "memory",
    )
    bust_dart_angle: float = _limit(
        27.0,
        "deg",
        "99 of 100 surveyed women need no wider bust dart; a wider one is shared between two places.",
        "trial drafts of surveyed women",
        "own judgment",
    )
    combined_dart_angle: float = _limit(
        40.0,
        "deg",
        "Bust and waist in one dart: the widest bust dart, and a waist dart of 40 mm on a leg of 175 mm.",
        "27 and 13 degrees",
        "own judgment",
    )
    kink: float = _limit(
        TOLERANCES.angle, "deg", "A smaller turn within a line is not seen.", _HOUSE, _PRACTICE
    )
    inflection: float = _limit(
        1.5,
        "deg",
        "A curve must turn this much each way before the eye sees an S.",
        _COMMON,
        _PRACTICE,
    )
    hem_flat: float = _limit(
        TOLERANCES.closure, "mm", "A turned hem lies on the piece it is turned to.", _HOUSE, "house"
    )
    hollow_height: float = _limit(
        1 / 3,
        "share",
        "The front of the arm stands forward low down: there the armhole is hollowest.",
        "a patternmaker's review",
        "memory",
    )
    hollow_depth: float = _limit(
        0.1,
        "share",
        "An armhole shallower than this against the straight way from underarm to tip is a diagonal.",
        _COMMON,
        "own judgment",
    )
    armhole_hook: float = _limit(
        0.25,
        "share",
        "Square to the shoulder at its tip, an armhole may turn back over this part of its length.",
        _COMMON,
        "own judgment",
    )
    back_neck_rise: float = _limit(
        0.45,
        "share",
        "A back neck rises by about a third of its width; one that rises more stands off or chokes.",
        "trade handbooks",
        "memory",
    )
    lay_length: float = _limit(
        60.0,
        "mm",
        "So far up from the underarm the cap lies on the armhole; above, its ease begins.",
        "a patternmaker's review",
        "memory",
    )
    lay_share: float = _limit(
        0.3,
        "share",
        "Of a small armhole so much: 60 mm of a child's are no longer its lower part.",
        "60 mm of an armhole of 200 mm, the usual one of a woman",
        "own judgment",
    )
    lay_front: float = _limit(
        3.0,
        "mm",
        "In front the arm moves forward against the seam: cap and armhole are one line there.",
        "a patternmaker's review",
        "memory",
    )
    lay_back: float = _limit(
        4.0,
        "mm",
        "Behind, the cap may lie a little over the armhole, for reach.",
        "a patternmaker's review",
        "memory",
    )
    lay_stretch: float = _limit(
        8.0,
        "mm",
        "A cap of stretch fabric is sewn in flat, without ease: it may leave the armhole so far.",
        _COMMON,
        "own judgment",
    )
    lay_notch: float = _limit(
        1.0,
        "mm",
        "From the underarm to the balance notch the cap is sewn flat, without ease.",
        "a patternmaker's review",
        "memory",
    )
    crotch_front_least: float = _limit(
        30.0,
        "mm",
        "From the corner at 45 degrees to the front crotch seam: less hangs in folds.",
        "a patternmaker's review",
        "memory",
    )
    crotch_front_most: float = _limit(
        38.0, "mm", "The same: more is a diagonal.", "a patternmaker's review", "memory"
    )
    crotch_front_plus: float = _limit(
        45.0, "mm", "The same on large bodies.", "a patternmaker's review", "memory"
    )
    crotch_back_least: float = _limit(
        42.0,
        "mm",
        "From the corner at 45 degrees to the back crotch seam: less hangs in folds.",
        "a patternmaker's review",
        "memory",
    )
    crotch_back_most: float = _limit(
        52.0, "mm", "The same: more cuts into the seat.", "a patternmaker's review", "memory"
    )
    crotch_back_plus: float = _limit(
        58.0, "mm", "The same on large bodies.", "a patternmaker's review", "memory"
    )
    crotch_front_radius: float = _limit(
        43.0,
        "mm",
        "The J of the front is one round line: tighter it is a hook, and what follows it a straight slope.",
        "drafts that were found good bend at 50 to 93 mm, hooks at 24 to 41",
        "own judgment",
    )
    crotch_back_radius: float = _limit(
        55.0,
        "mm",
        "The back lies flatter round the seat; tighter, it turns its corner in one place.",
        "drafts that were found good bend at 57 to 205 mm",
        "own judgment",
    )
    crotch_front_end: float = _limit(
        0.018,
        "share",
        "How far the last third of the curve lies from its chord, over that: less is a straight ramp to the "
        "fork.",
        "drafts of large bodies that were found to be ramps have 0.012 and 0.016, good ones 0.024 and more",
        "own judgment",
    )
    crotch_back_end: float = _limit(
        0.007,
        "share",
        "The same behind, where the seam lies flatter.",
        "drafts that were found to be ramps have 0.004, good ones 0.012 and more",
        "own judgment",
    )
    crotch_small_below: float = _limit(
        860.0, "mm", "Hip with ease below which the corners shrink with it.", _COMMON, "own judgment"
    )
    crotch_plus_from: float = _limit(
        1165.0, "mm", "Hip with ease from which a body counts as large.", _COMMON, "own judgment"
    )
    crotch_plus_full: float = _limit(
        1240.0, "mm", "Hip with ease at which the corners are the largest.", _COMMON, "own judgment"
    )
    crease_middle: float = _limit(
        1.0, "mm", "A crease is pressed no closer to the middle of a leg.", _COMMON, _PRACTICE
    )
    leg_balance: float = _limit(
        2.0,
        "mm",
        "Below the knee both halves of a leg are as wide, so that it hangs about its crease.",
        "a patternmaker's review",
        "memory",
    )
    seat_cover_least: float = _limit(
        10.0,
        "mm",
        "Below its straight way the back leg opening lies so far: less leaves the seat bare.",
        "a patternmaker's review",
        "memory",
    )
    seat_cover_most: float = _limit(
        20.0, "mm", "The same: more lies in folds under the seat.", "a patternmaker's review", "memory"
    )
    bump: float = _limit(
        1.5,
        "deg",
        "A curve that slackens and tightens again by this much in 10 mm shows as a bump.",
        _COMMON,
        "own judgment",
    )
    small_child_height: float = _limit(
        980.0,
        "mm",
        "So tall at most is a child of three years, for whom small parts are looked at.",
        "size steps of children's clothing: 98 for three years",
        "memory",
    )
    opening_spare: float = _limit(
        20.0,
        "mm",
        "So much larger than what passes through it must an opening be that nothing opens.",
        _COMMON,
        _PRACTICE,
    )
    girth_room: float = _limit(
        3.0,
        "mm",
        "A tape round a body is read no closer: a girth that lacks less is not too small.",
        _COMMON,
        "own judgment",
    )
    ease_usual: float = _limit(
        0.07,
        "share",
        "So much of a seam is eased in unseen: 6 to 10 mm of a back shoulder.",
        "trade handbooks",
        "memory",
    )
    ease_of_cap: float = _limit(
        0.1,
        "share",
        "A cap takes 30 to 40 mm on an armhole of 450, on the bias and with steam.",
        "trade handbooks",
        "memory",
    )
    ease_most: float = _limit(
        0.15,
        "share",
        "What is more is gathered: a light gather begins at one and a quarter to one.",
        "trade handbooks",
        "memory",
    )
    notch_alike: float = _limit(
        6.0,
        "mm",
        "Seams and notches that differ by less than a notch's reach are taken for each other.",
        _COMMON,
        "own judgment",
    )

    def with_changes(self, changes: Mapping[str, float]) -> "Limits":
        """The limits with some changed; InputError ``limit-unknown`` or ``limit-unusable``."""
        known = tuple(item.name for item in fields(self))
        for name, value in changes.items():
            if name not in known:
                raise InputError("limit-unknown", name=name, known=known)
            if isinstance(value, bool) or not isinstance(value, (int, float)) or not 0 <= value <= _MOST:
                raise InputError("limit-unusable", name=name, value=value)
        return replace(self, **dict(changes))


_MOST = 3000.0
"""No limit of a check, mm or degrees, can be larger: it would switch the check off unseen."""

LIMITS: Final = Limits()
"""The limits that hold unless a profile changes them."""
