"""Whether measures should be looked over before anything is estimated from them."""

from collections.abc import Sequence

from notchbook.body import MeasureSet, PopulationName, look_over, measure_entry, plain_key
from notchbook.errors import InputError
from notchbook.units import LengthStyle


def look_over_first(measures: MeasureSet) -> InputError | None:
    """The caution where looking over stops (``estimate-look-over-first``); None where it does not."""
    looked = look_over(measures, LengthStyle("cm"))
    if looked.level != "stop":
        return None
    keys = dict.fromkeys(plain_key(one.key) for one in looked.suspects())
    labels = ", ".join(measure_entry(key).label for key in keys)
    return InputError("estimate-look-over-first", labels=labels or "a value", where="")


def look_over_first_many(sets: Sequence[MeasureSet]) -> list[InputError | None]:
    """As :func:`look_over_first`, for many sets at once: quick where no value lies far off the others."""
    # Loaded here: sets that are held against nobody can do without numbers of a population.
    from notchbook.body.population import population

    found: list[InputError | None] = [None] * len(sets)
    by_name: dict[PopulationName, list[int]] = {}
    for place, one in enumerate(sets):
        if one.population is not None:
            by_name.setdefault(one.population, []).append(place)
    for name, places in by_name.items():
        against = population(name)
        records = against.scores_of_many([sets[place] for place in places])
        for place, scores in zip(places, records, strict=True):
            worst = max(scores, key=lambda one: abs(one.z), default=None)
            if worst is not None and abs(worst.z) >= against.stop_for(len(scores)) and len(scores) > 1:
                found[place] = look_over_first(sets[place])
    return found
