"""Where the crown lies: behind the shoulder seam by the balance of the cap, or moved so that it can be drawn.

The less of the cap lies before the crown, the steeper is its front and the flatter its back. Where one half
leaves the armhole too soon and the other does not, or where front and back armhole differ so much that no
crown is equally high on both, the crown is moved by as little as helps.
"""

from dataclasses import replace
from functools import lru_cache

from notchbook.blocks.set_in.cap import Cap, CapLengths, are_uneven, cap_halves, cap_lengths, cap_of_biceps
from notchbook.blocks.set_in.figures import figure
from notchbook.blocks.set_in.given import SleeveGiven
from notchbook.blocks.set_in.half_cap import LAID
from notchbook.errors import DraftRefused

_HALVINGS = 5
"""Rounds in which the least move is sought: to half a millimeter."""


@lru_cache(maxsize=64)
def crowned_cap(given: SleeveGiven) -> tuple[Cap | None, CapLengths]:
    """The cap of the given biceps (None where there is none), its crown moved where that serves it."""
    lengths = cap_lengths(given)
    cap = _cap_at(given, lengths)
    if given.pitch is not None or (cap is not None and cap.is_laid):
        return cap, lengths
    if cap is None and not are_uneven(given, *cap_halves(given, lengths)):
        return cap, lengths  # too full an arm finds no room under another crown either
    end = _farthest(lengths, cap)
    moved = replace(lengths, behind=end)
    best = _cap_at(given, moved)
    if not _is_better(best, cap):
        return cap, lengths
    low, high = lengths.behind, end
    for _ in range(_HALVINGS):
        trial = replace(lengths, behind=(low + high) / 2.0)
        found = _cap_at(given, trial)
        if _is_far_enough(found, is_back=end > lengths.behind):
            best, moved, high = found, trial, trial.behind
        else:
            low = trial.behind
    return best, moved


def _cap_at(given: SleeveGiven, lengths: CapLengths) -> Cap | None:
    try:
        return cap_of_biceps(given, *cap_halves(given, lengths))
    except DraftRefused:
        return None


def _farthest(lengths: CapLengths, cap: Cap | None) -> float:
    """How far behind the shoulder seam the crown may be moved for this cap, mm; before it negative."""
    if cap is None:
        most = figure("crown.most_moved")
        return most if lengths.back > lengths.front else -most
    is_back = cap.back_lever < cap.front_lever
    return figure("crown.most_back") if is_back else 0.0 - figure("crown.most_before")


def _is_better(cap: Cap | None, than: Cap | None) -> bool:
    return cap is not None and (than is None or _lower(cap) > _lower(than))


def _lower(cap: Cap) -> float:
    return min(cap.front_lever, cap.back_lever)


def _is_far_enough(cap: Cap | None, is_back: bool) -> bool:
    """Whether the half for which the crown is moved lies well, or as well as the other one."""
    if cap is None:
        return False
    served, other = (cap.back_lever, cap.front_lever) if is_back else (cap.front_lever, cap.back_lever)
    return served >= min(LAID, other)
