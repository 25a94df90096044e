"""The values without which the rest of a set agrees, even where they hide each other."""

from collections.abc import Sequence
from typing import Final

from notchbook.body.doubts.slips.explanations import explanations
from notchbook.body.doubts.slips.hypotheses import hypotheses
from notchbook.body.doubts.slips.hypothesis import Question
from notchbook.body.doubts.together import Together
from notchbook.body.measure_table import measure_entry

MOST_BAD_VALUES: Final = 3
"""So many values of a set are taken for wrong at the most; with more the whole set is taken again."""


def bad_values(whole: Together, look_again: float, question: Question) -> list[tuple[str, ...]]:
    """The worst is left out and the rest judged again, until no value stands out; the worst first.

    Each entry holds the values that one cause explains. Refuses nothing; none when all fit.
    """
    known = _impossible(whole)
    # A few are found by what they do to the rest; many would drag along whatever is expected.
    bad: list[tuple[str, ...]] = [(key,) for key in known] if len(known) > MOST_BAD_VALUES else []
    most = len(bad) + MOST_BAD_VALUES
    while len(bad) < most:
        out = [key for keys in bad for key in keys]
        kept = [one for one in whole.standings(out).values() if one.key not in out]
        if len(kept) < 2 or max(abs(one.z) for one in kept) < look_again:
            break
        bad.append(explanations(hypotheses(whole, out, question))[0].keys)
    return [keys for keys in bad if not _fits_after_all(whole, keys, bad, look_again)]


def _impossible(whole: Together) -> list[str]:
    """The values that no body has."""
    found = []
    for key, value in zip(whole.keys, whole.values.tolist(), strict=False):
        low, high = measure_entry(key).possible
        if not low <= value <= high:
            found.append(key)
    return found


def _fits_after_all(
    whole: Together, keys: tuple[str, ...], bad: Sequence[tuple[str, ...]], look_again: float
) -> bool:
    """Whether a value that was left out fits the rest once the others that were left out are gone."""
    others = [key for other in bad if other != keys for key in other]
    if not others:
        return False
    standings = whole.standings(others)
    return all(abs(standings[key].z) < look_again for key in keys)
