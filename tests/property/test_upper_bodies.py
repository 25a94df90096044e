"""Plausible and impossible bodies: bodice and sleeve that close by another code, or a refusal in words.

A few of each kind, 300 of them plausible; `make survey` draws 5,000 of each. 600 plausible ones close as
numbers in test_upper_core.py. Cures are solved in many rounds: few of the impossible bodies take them.
"""

from hypothesis import example, given, settings
from hypothesis import strategies as st

from make_bodies import Group
from notchbook.app.curing import draft_taking
from notchbook.app.examining import examine
from notchbook.body import MeasureSet
from notchbook.errors import InputError, StepRefused, catalogue
from notchbook.pattern import Severity, pattern_to_data
from support.bodice_judge import misses
from support.upper_patterns import wanted_of
from survey_bodice import CURES
from upper_random import LEAST_SHARE, MOST_SHARE, implausible_body, keys_of, plausible_body
from upper_sheets import SETTINGS


def verdict(measures: MeasureSet, block: str = "sleeve", cures: tuple[str, ...] = CURES) -> list[str]:
    """What another code finds wrong and the program does not say; nothing where it refuses in words.

    The cures are those of sleeves: a bodice alone is asked for none.
    """
    assert block == "sleeve" or all(word.startswith("sleeve-") for word in CURES)
    try:
        run, _ = draft_taking(block, measures, *((SETTINGS, cures) if block == "sleeve" else ({}, ())))
    except (InputError, StepRefused) as error:  # anything else is a fault of the program
        assert error.code in catalogue()
        assert error.text()
        return []
    found = misses(pattern_to_data(run.pattern), wanted_of(run))
    if not found:
        return []
    said = examine(run, cut=False).findings
    if any(finding.severity is Severity.STOP for finding in said):
        return []
    if any(finding.code == "cap-off-armhole" for finding in said):
        return [miss for miss in found if "cap laid in" not in miss]
    return found


def deviations(group: Group, most: float) -> st.SearchStrategy[list[float]]:
    """Standard deviations along each axis of the population."""
    count = len(keys_of(group))
    return st.lists(st.floats(-most, most), min_size=count, max_size=count)


def shares(group: Group) -> st.SearchStrategy[list[float]]:
    """Shares of the mean, each its own."""
    count = len(keys_of(group))
    return st.lists(st.floats(LEAST_SHARE, MOST_SHARE), min_size=count, max_size=count)


@settings(max_examples=200)
@given(deviations("women", 2.0))
@example([0.0] * len(keys_of("women")))
def test_the_bodice_of_a_plausible_woman_closes_or_is_refused_in_words(drawn: list[float]) -> None:
    assert verdict(plausible_body(drawn, "women"), "bodice") == []


@settings(max_examples=73)
@given(deviations("men", 2.0))
@example([0.0] * len(keys_of("men")))
def test_the_bodice_of_a_plausible_man_closes_or_is_refused_in_words(drawn: list[float]) -> None:
    assert verdict(plausible_body(drawn, "men"), "bodice") == []


@settings(max_examples=20)
@given(deviations("women", 2.0))
@example([0.0] * len(keys_of("women")))
def test_bodice_and_sleeve_of_a_plausible_woman_close_or_are_refused_in_words(drawn: list[float]) -> None:
    assert verdict(plausible_body(drawn, "women")) == []


@settings(max_examples=7)
@given(deviations("men", 2.0))
@example([0.0] * len(keys_of("men")))
def test_bodice_and_sleeve_of_a_plausible_man_close_or_are_refused_in_words(drawn: list[float]) -> None:
    assert verdict(plausible_body(drawn, "men")) == []


@settings(max_examples=90)
@given(shares("women"))
def test_an_impossible_woman_is_refused_in_words_or_closes(drawn: list[float]) -> None:
    assert verdict(implausible_body(drawn, "women"), cures=()) == []


@settings(max_examples=30)
@given(shares("men"))
def test_an_impossible_man_is_refused_in_words_or_closes(drawn: list[float]) -> None:
    assert verdict(implausible_body(drawn, "men"), cures=()) == []


@settings(max_examples=15)
@given(shares("women"))
def test_an_impossible_woman_who_takes_what_is_offered_is_refused_in_words_or_closes(
    drawn: list[float],
) -> None:
    assert verdict(implausible_body(drawn, "women")) == []


@settings(max_examples=5)
@given(shares("men"))
def test_an_impossible_man_who_takes_what_is_offered_is_refused_in_words_or_closes(
    drawn: list[float],
) -> None:
    assert verdict(implausible_body(drawn, "men")) == []
