"""Estimates that no longer follow, told beside what looking over found."""

from dataclasses import replace

from notchbook.body import Doubt, LookedOver, MeasureSet
from notchbook.body.doubts.rest_words import listed
from notchbook.body.estimate_method import is_own_estimate
from notchbook.body.quantity_words import estimate_text
from notchbook.errors import InputError
from notchbook.units import LengthStyle


def with_stale(looked: LookedOver, measures: MeasureSet, style: LengthStyle) -> LookedOver:
    """What was found, and one question for all estimates of the book that would come out otherwise now."""
    if looked.population is None or not any(map(is_own_estimate, measures.values.values())):
        return looked
    # Loaded here: most files hold no estimates.
    from notchbook.body.estimating.stale import stale_estimates

    stale = stale_estimates(measures)
    if not stale:
        return looked
    first, *more = (estimate_text(one.key, one.stored, style) for one in stale)
    words = listed([first[:1].upper() + first[1:], *more])
    follows = "no longer follows" if len(stale) == 1 else "no longer follow"
    problem = InputError("estimates-stale", values=words, follows=follows, where="")
    doubt = Doubt("check", tuple(one.key for one in stale), problem)
    return replace(looked, doubts=(*looked.doubts, doubt))
