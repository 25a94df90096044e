"""Whether the arm finds room in the armhole, and what would give it room where it does not."""

from collections.abc import Iterator
from dataclasses import replace

from notchbook.blocks.set_in.cap import (
    Cap,
    CapLengths,
    are_uneven,
    cap_halves,
    cap_lengths,
    cap_of_height,
    is_as_high,
    low_share,
)
from notchbook.blocks.set_in.crown import crowned_cap
from notchbook.blocks.set_in.figures import figure
from notchbook.blocks.set_in.given import ArmholeGiven, SleeveGiven
from notchbook.blocks.set_in.half_cap import LAID
from notchbook.errors import DraftRefused
from notchbook.geometry import Path, Transform

_COARSE = 10.0
"""mm between the lowerings that are tried first."""
_FINEST = 1.0
"""mm; how exactly a lowering is solved, before it is rounded up to whole millimeters."""
_SPARE = 0.002
"""Share of the armhole by which a cured cap is higher than it must be, so that the cure holds."""


def draft_cap(given: SleeveGiven) -> tuple[Cap, CapLengths]:
    """Solve the cap that keeps the biceps or the cap height.

    A sleeve too narrow for its armhole is drawn as narrow as it can be, up to 30 mm wider than given.
    DraftRefused ``sleeve-arm-too-full`` with the fact ``lower_by``, ``sleeve-arm-beyond-armhole``,
    ``sleeve-arm-too-thin``, ``sleeve-armhole-uneven``, ``sleeve-cap-not-reached``.
    """
    if given.keep == "cap_height" and given.cap_height is not None:
        lengths = cap_lengths(given)
        return cap_of_height(given, *cap_halves(given, lengths), given.cap_height), lengths
    cap, lengths = crowned_cap(given)
    if cap is None and are_uneven(given, *cap_halves(given, lengths)):
        armhole = given.armhole
        raise DraftRefused(
            "sleeve-armhole-uneven", front=armhole.front.length, back=armhole.back.length, biceps=given.biceps
        )
    if not has_room(given, cap) or cap is None:
        raise _too_full(given)
    wider_by = cap.biceps - given.biceps
    if wider_by > figure("cap.most_widened"):
        raise DraftRefused(
            "sleeve-arm-too-thin",
            biceps=given.biceps,
            armhole=given.armhole.girth,
            narrowest=cap.biceps,
            wider_by=wider_by,
        )
    return cap, lengths


def lower_armhole_by(given: SleeveGiven) -> float | None:
    """How far the armhole must be lowered, mm, so that the cap of this biceps is high enough and lies on it.

    Only high enough where both cannot be had; None where the most that is lowered does not serve. Seen on
    the armhole drawn out below its balance notches; what the bodice makes of the amount is drafted anew
    and judged again.
    """
    low, least = low_share(given) + _SPARE, figure("cap.least_share") + _SPARE
    for share, is_to_lie in ((low, True), (low, False), (least, False)):
        found = _least_lowering(given, share, is_to_lie)
        if found is not None:
            return found
    return None


def lowered(armhole: ArmholeGiven, amount: float) -> ArmholeGiven:
    """The armhole with its underarm lowered: drawn out below the balance notches, as wide as before."""
    front, front_longer = _drawn_out(armhole.front, armhole.front_notch, amount)
    back, back_longer = _drawn_out(armhole.back, armhole.back_notch, amount)
    return ArmholeGiven(front, back, armhole.front_notch + front_longer, armhole.back_notch + back_longer)


def narrower_by(given: SleeveGiven) -> float | None:
    """By how much narrower the sleeve must be for a cap of the least height, mm; None where there is none."""
    lowest = figure("cap.least_share") * given.armhole.girth
    try:
        cap = cap_of_height(given, *cap_halves(given, cap_lengths(given)), lowest)
    except DraftRefused:
        return None
    return max(given.biceps - cap.biceps, 0.0)


def has_room(given: SleeveGiven, cap: Cap | None) -> bool:
    """Whether the arm finds room in the armhole under this cap; None: there is no cap.

    It finds none where the cap comes out lower than a quarter of the armhole, or leaves it under the arm.
    """
    if cap is None or (given.pitch is None and _is_astray(cap)):
        return False
    return _share(given, cap) >= figure("cap.least_share") or _is_flat(given, cap)


def _is_astray(cap: Cap) -> bool:
    """Whether the cap has to turn over so early that it leaves the armhole by more than it may."""
    return min(cap.front_lever, cap.back_lever) < LAID and not lies_on_armhole(cap)


def lies_on_armhole(cap: Cap) -> bool:
    """Whether the lower cap lies on the armhole, with what the line drawn may differ from the one solved."""
    reach, spare = figure("lay.least_length"), figure("lay.margin") / 2.0
    return all(
        line.laid_gap(reach) <= figure(f"lay.{which}_gap") - spare
        for which, line in (("front", cap.front), ("back", cap.back))
    )


def _share(given: SleeveGiven, cap: Cap) -> float:
    return cap.height / given.armhole.girth


def _is_flat(given: SleeveGiven, cap: Cap) -> bool:
    """Whether the armhole is so wide and flat that even the narrowest sleeve has a low cap."""
    if _share(given, cap) < figure("cap.flat_share"):
        return False
    narrowest, _ = crowned_cap(replace(given, biceps=given.biceps / 2.0))
    return narrowest is not None and _share(given, narrowest) < low_share(given)


def _too_full(given: SleeveGiven) -> DraftRefused:
    facts = {
        "biceps": given.biceps,
        "armhole": given.armhole.girth,
        "lowest": figure("cap.least_share") * given.armhole.girth,
    }
    lower_by, narrower = lower_armhole_by(given), narrower_by(given)
    if narrower is not None:
        facts["narrower_by"] = narrower
    if lower_by is None:
        return DraftRefused("sleeve-arm-beyond-armhole", **facts, most_lowered=figure("cap.most_lowered"))
    return DraftRefused("sleeve-arm-too-full", **facts, lower_by=lower_by)


def _least_lowering(given: SleeveGiven, share: float, is_to_lie: bool) -> float | None:
    """The least lowering that makes the cap so high (and lie on the armhole), mm; None where none does."""

    def serves(lower_by: float) -> bool:
        trial = replace(given, armhole=lowered(given.armhole, lower_by))
        return is_as_high(trial, share, is_to_lie=is_to_lie)

    # From the first that serves: a very deep armhole may not serve again.
    high = next((by for by in _trials() if serves(by)), None)
    if high is None:
        return None
    low = max(high - _COARSE, 0.0)
    while high - low > _FINEST:
        middle = (low + high) / 2.0
        if serves(middle):
            high = middle
        else:
            low = middle
    return high


def _trials() -> Iterator[float]:
    """Lowerings looked at before the least is sought, mm."""
    count = round(figure("cap.most_lowered") / _COARSE)
    return (number * _COARSE for number in range(1, count + 1))


def _drawn_out(armhole: Path, notch: float, amount: float) -> tuple[Path, float]:
    """The armhole drawn out below the notch, and how much longer it is there, mm."""
    below, above = armhole.split_at(notch)
    height = below.end.y
    stretched = below.transformed(Transform(d=(height + amount) / height))
    moved = above.transformed(Transform.translation(0.0, amount))
    return stretched.joined(moved), stretched.length - below.length
