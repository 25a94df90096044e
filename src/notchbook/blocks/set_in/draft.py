"""The set-in sleeve as a whole: cap, seams and hem, with what it took to make them agree."""

from dataclasses import replace

from notchbook.blocks.set_in.below import Below, draft_below
from notchbook.blocks.set_in.cap import Cap, CapLengths
from notchbook.blocks.set_in.cap_path import cap_paths
from notchbook.blocks.set_in.figures import figure
from notchbook.blocks.set_in.front_hollow import hollower_in_front
from notchbook.blocks.set_in.given import SleeveGiven
from notchbook.blocks.set_in.levers import sleeve_levers
from notchbook.blocks.set_in.room import draft_cap
from notchbook.blocks.set_in.shapes import SleeveHalf
from notchbook.geometry import Point

_LEVEL = 1e-6
"""mm; a bend that lifts the hem by less needs no further round."""
_ROUNDS = 6


def draft_sleeve(given: SleeveGiven) -> SleeveHalf:
    """Draft one sleeve into its armhole.

    Both sides of the cap are as long as their side of the armhole with its share of the ease; the lower
    cap is drawn as the armhole is; cap height or biceps is solved. The seams are equally long (but for
    ``back_ease``), the hem is ``given.hem`` unless the elbow or the lean of the seams asks for more.

    DraftRefused ``sleeve-arm-too-full`` (with ``lower_by``), ``sleeve-arm-too-thin``,
    ``sleeve-too-short``, ``sleeve-cap-not-reached``.
    """
    cap, lengths, below = _agreeing(given)
    cap_front, cap_back = cap_paths(cap, lengths)
    armhole = given.armhole
    free = figure("ease.free_at_crown")
    return SleeveHalf(
        cap_front=cap_front,
        cap_back=cap_back,
        front_seam=below.front_seam,
        back_seam=below.back_seam,
        hem=below.hem,
        elbow_dart=below.elbow_dart,
        elbow_line=below.elbow_line,
        crown=Point(0.0, cap.height),
        hem_middle=below.hem_middle,
        cap_height=cap.height,
        biceps=cap.biceps,
        hem_girth=below.hem_girth,
        elbow_width=below.elbow_width,
        elbow_down=below.elbow_down,
        front_notch=armhole.front_notch,
        back_notch=armhole.back_notch,
        front_ease_end=cap_front.length - free,
        back_ease_end=cap_back.length - free,
        front_gap=cap.front.laid_gap(figure("lay.least_length")),
        back_gap=cap.back.laid_gap(figure("lay.least_length")),
        pitch=360.0 * lengths.behind / armhole.girth,
        levers=sleeve_levers(given, cap, below),
    )


def _agreeing(given: SleeveGiven) -> tuple[Cap, CapLengths, Below]:
    """Cap and what is below it; a bend at the elbow lifts the hem, which is then drawn lower."""
    lowered = given
    for _ in range(_ROUNDS):
        cap, lengths = draft_cap(lowered)
        cap = hollower_in_front(lowered, cap, lengths)
        below = draft_below(lowered, cap)
        lift = below.lift - (lowered.length - given.length)
        if abs(lift) <= _LEVEL:
            break
        lowered = replace(given, length=given.length + below.lift)
    return cap, lengths, below
