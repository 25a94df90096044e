"""The values without which the rest of a set agrees, even where they hide each other."""

from typing import Final

from notchbook.body.doubts.slips.explanations import explanations
from notchbook.body.doubts.slips.hypotheses import hypotheses
from notchbook.body.doubts.slips.hypothesis import Question
from notchbook.body.doubts.standing import Standing
from notchbook.body.doubts.together import Together
from notchbook.body.waist_drop import value_entry

MOST_BAD_VALUES: Final = 3
"""So many values of a set are taken for wrong at the most; with more the whole set is taken again."""

ONE_MORE_CAUSE: Final = 10.0
"""Squared distance that one more cause must save: e^5 times less likely than a set without it, about one
value of 150 (own judgment)."""

MOST_ROUNDS: Final = 4
"""After so many rounds values and what explains them agree, or never will."""

_Bad = list[tuple[str, ...]]


def bad_values(whole: Together, look_again: float, question: Question) -> _Bad:
    """The worst is left out and the rest judged again, until no value stands out; the worst first.

    Each entry holds the values that one cause explains. Where two values lie off together, the search begins
    with the two as well, and what leaves the rest in best agreement is taken. Refuses nothing; none when all
    fit.
    """
    search = _Search(whole, look_again, question)
    known = _impossible(whole)
    # A few are found by what they do to the rest; many would drag along whatever is expected.
    start: _Bad = [(key,) for key in known] if len(known) > MOST_BAD_VALUES else []
    found = search.from_start(start)
    pair = whole.best_pair() if found and not start else None
    if pair is not None:
        two: _Bad = [(key,) for key in pair[0]]
        if search.cost(two) < search.cost(found):
            found = min(found, search.from_start(two), key=search.cost)
    return found


class _Search:
    """Looks for the values without which the rest agrees; what explains a set is worked out once."""

    def __init__(self, whole: Together, look_again: float, question: Question) -> None:
        self.whole = whole
        self.look_again = look_again
        self.question = question
        self._likeliest: dict[frozenset[str], tuple[str, ...]] = {}

    def from_start(self, start: _Bad) -> _Bad:
        """The search from these values on, until values and what explains them agree."""
        bad, most = start, len(start) + MOST_BAD_VALUES
        for _ in range(MOST_ROUNDS):
            before = bad
            bad = self._explained(self._with_more(bad, most))
            bad = [keys for keys in bad if not self._fits_after_all(keys, bad)]
            if bad == before:
                break
        return bad

    def cost(self, bad: _Bad) -> float:
        """How badly the rest agrees, with what every cause and every value left out must save."""
        out = _keys_of(bad)
        return self.whole.keeping(out).distance + ONE_MORE_CAUSE * len(bad) + len(out)

    def _with_more(self, start: _Bad, most: int) -> _Bad:
        """The worst is left out as well, again and again, until no value stands out."""
        bad = list(start)
        while len(bad) < most:
            out = _keys_of(bad)
            kept = [one for one in self.whole.standings(out).values() if one.key not in out]
            if len(kept) < 2 or max(self._off(one) for one in kept) < self.look_again:
                break
            bad.append(self._likeliest_of(out))
        return bad

    def _explained(self, bad: _Bad) -> _Bad:
        """Each entry as the values that explain best what is off once all other entries are left out."""
        bad = list(bad)
        for place in range(len(bad)):
            out = _keys_of([*bad[:place], *bad[place + 1 :]])
            if len(self.whole.keys) - len(out) >= 2:
                bad[place] = self._likeliest_of(out)
        return bad

    def _likeliest_of(self, out: list[str]) -> tuple[str, ...]:
        """The values that would explain best what is off once these are left out."""
        names = frozenset(out)
        if names not in self._likeliest:
            self._likeliest[names] = explanations(hypotheses(self.whole, out, self.question))[0].keys
        return self._likeliest[names]

    def _fits_after_all(self, keys: tuple[str, ...], bad: _Bad) -> bool:
        """Whether values that were left out fit the rest once the others that were left out are gone."""
        others = _keys_of([other for other in bad if other != keys])
        if not others:
            return False
        standings = self.whole.standings(others)
        return all(self._off(standings[key]) < self.look_again for key in keys)

    def _off(self, one: Standing) -> float:
        """How far the value lies off as it was given; of left and right the worse."""
        return abs(self.question.as_given(one).z)


def _keys_of(bad: _Bad) -> list[str]:
    return [key for keys in bad for key in keys]


def _impossible(whole: Together) -> list[str]:
    """The values that no body has."""
    found = []
    for key, value in zip(whole.keys, whole.values.tolist(), strict=True):
        low, high = value_entry(key).possible
        if not low <= value <= high:
            found.append(key)
    return found
