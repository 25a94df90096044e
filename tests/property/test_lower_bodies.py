"""Plausible and impossible bodies: lower and stretch blocks that close by another code, or a coded refusal.

A few of each kind; `make survey` draws 5,000 of each.
"""

from types import SimpleNamespace
from typing import Final

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from lower_judged import JUDGES, Judged
from make_bodies import Group
from make_lower_bodies import LOWER_KEYS, STRETCH_KEYS
from notchbook.app.examining import examine
from notchbook.body import MeasureSet
from notchbook.errors import InputError, StepRefused, catalogue
from notchbook.pattern import Finding, Severity
from notchbook.recipe import Replay
from support.asked_of_lower import not_as_told
from support.bodice_judge import Closure
from survey_lower import LINE, drafted
from upper_random import LEAST_SHARE, MOST_SHARE, ODD_SHARES, implausible_body, keys_of, plausible_body

GROUPS: Final[tuple[Group, ...]] = ("women", "men")

SKIRTS: Final = ("skirt", "circle skirt, half", "gored skirt")
STRETCH: Final = ("stretch_torso 50/50", "bodysuit 50/50", "leggings 50/50")


def verdict(line: str, measures: MeasureSet) -> list[str]:
    """What another code finds wrong and the program does not say; nothing where it refuses in words."""
    try:
        run, _ = drafted(LINE[line], measures)
    except (InputError, StepRefused) as error:  # anything else is a fault of the program
        assert error.code in catalogue()
        assert error.text()
        return []
    silent = [f"{key} gave way {by:+.1f} without a word" for key, by in not_as_told(run, 1.0).items()]
    found = JUDGES[LINE[line].block](run).open
    stopped = about_stops(run) if found else set()
    return [*(one for one in found if not any(word in as_words(one) for word in stopped)), *silent]


def about_stops(run: Replay) -> set[str]:
    """What the checks that stop the papers speak of, as the outside judge calls it."""
    stops = [one for one in examine(run, cut=False).findings if one.severity is Severity.STOP]
    named = {name for one in stops for name in (one.where or one.piece, *one.names) if name}
    return {as_words(name.rpartition("/")[2].partition("@")[0]) for name in named}


def as_words(name: str) -> str:
    """A name as it is said."""
    return name.replace("_", " ")


def deviations(keys: tuple[str, ...]) -> st.SearchStrategy[list[float]]:
    """Standard deviations along each axis of the population; for men the last ones are not used."""
    count = len(keys_of("women", keys))
    return st.lists(st.floats(-2.0, 2.0), min_size=count, max_size=count)


def shares(keys: tuple[str, ...]) -> st.SearchStrategy[list[float]]:
    """Shares of the mean, each its own: such that most are drafted, or far from anybody."""
    count = len(keys_of("women", keys))
    ranges = (ODD_SHARES, (LEAST_SHARE, MOST_SHARE))
    return st.one_of(*(st.lists(st.floats(*r), min_size=count, max_size=count) for r in ranges))


def plausible(drawn: list[float], group: Group, keys: tuple[str, ...]) -> MeasureSet:
    """The body of the group at these deviations."""
    return plausible_body(drawn[: len(keys_of(group, keys))], group, keys)


def implausible(drawn: list[float], group: Group, keys: tuple[str, ...]) -> MeasureSet:
    """The body of the group with these shares."""
    return implausible_body(drawn[: len(keys_of(group, keys))], group, keys)


SLOW: Final = [HealthCheck.too_slow]


@settings(max_examples=60, suppress_health_check=SLOW)
@given(deviations(LOWER_KEYS), st.sampled_from(GROUPS))
def test_the_trousers_of_a_plausible_body_close_or_are_refused_in_words(
    drawn: list[float], group: Group
) -> None:
    assert verdict("trousers", plausible(drawn, group, LOWER_KEYS)) == []


@settings(max_examples=40, suppress_health_check=SLOW)
@given(shares(LOWER_KEYS), st.sampled_from(GROUPS))
def test_the_trousers_of_an_impossible_body_are_refused_in_words_or_close(
    drawn: list[float], group: Group
) -> None:
    assert verdict("trousers", implausible(drawn, group, LOWER_KEYS)) == []


@settings(max_examples=120, suppress_health_check=SLOW)
@given(deviations(LOWER_KEYS), st.sampled_from(GROUPS), st.sampled_from(SKIRTS))
def test_every_skirt_of_a_plausible_body_closes(drawn: list[float], group: Group, line: str) -> None:
    assert verdict(line, plausible(drawn, group, LOWER_KEYS)) == []


@settings(max_examples=120, suppress_health_check=SLOW)
@given(shares(LOWER_KEYS), st.sampled_from(GROUPS), st.sampled_from(SKIRTS))
def test_every_skirt_of_an_impossible_body_closes_or_is_refused_in_words(
    drawn: list[float], group: Group, line: str
) -> None:
    assert verdict(line, implausible(drawn, group, LOWER_KEYS)) == []


@settings(max_examples=30, suppress_health_check=SLOW)
@given(deviations(STRETCH_KEYS), st.sampled_from(GROUPS), st.sampled_from(STRETCH))
def test_every_stretch_block_of_a_plausible_body_closes(drawn: list[float], group: Group, line: str) -> None:
    assert verdict(line, plausible(drawn, group, STRETCH_KEYS)) == []


@settings(max_examples=45, suppress_health_check=SLOW)
@given(shares(STRETCH_KEYS), st.sampled_from(GROUPS), st.sampled_from(STRETCH))
def test_every_stretch_block_of_an_impossible_body_closes_or_is_refused_in_words(
    drawn: list[float], group: Group, line: str
) -> None:
    assert verdict(line, implausible(drawn, group, STRETCH_KEYS)) == []


@pytest.mark.parametrize("line", ["trousers", *SKIRTS, *STRETCH])
def test_the_mean_woman_is_drafted(line: str) -> None:
    """Else the verdicts above could all be refusals."""
    keys = LINE[line].keys
    run, taken = drafted(LINE[line], plausible([0.0] * len(keys_of("women", keys)), "women", keys))
    assert not taken
    assert JUDGES[LINE[line].block](run).open == ()


def test_a_stop_excuses_only_the_closure_it_speaks_of(monkeypatch: pytest.MonkeyPatch) -> None:
    """Two closures are open, a check stops the papers for one of them."""
    broken = Judged((Closure("hip_girth", 890.0, 882.0, 0.1), Closure("knee_girth", 345.0, 340.0, 0.1)))
    stop = Finding("closed", "closure-large", Severity.STOP, "Told.", where="leggings/hip_girth")
    monkeypatch.setitem(JUDGES, "leggings", lambda run: broken)
    monkeypatch.setitem(globals(), "examine", lambda run, cut: SimpleNamespace(findings=(stop,)))
    mean = plausible([0.0] * len(keys_of("women", STRETCH_KEYS)), "women", STRETCH_KEYS)
    assert verdict("leggings 50/50", mean) == ["knee_girth +5.00"]
