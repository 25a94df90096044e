"""Findings in the reader's unit: words, and amounts as what they mean."""

from dataclasses import replace

import pytest

from notchbook.app.curing import say_solved
from notchbook.app.finding_words import amounts_in, in_words, message_in, suggestion_in
from notchbook.app.offered_cure import OfferedCure
from notchbook.errors import DraftRefused
from notchbook.pattern import Contradiction, Cure, Finding, Measured, Severity, worded
from notchbook.units import LengthStyle

CM = LengthStyle("cm")


def found(code: str, measured: float | None, wanted: float | None = None, unit: str = "mm") -> Finding:
    return Finding("a-check", code, Severity.LOOK, "Something.", measured=measured, wanted=wanted, unit=unit)


@pytest.mark.parametrize(
    ("finding", "words"),
    [
        (found("closure-large", 768.0, 750.0), "1.8 cm too large: 76.8 cm for 75.0 cm"),
        (found("seam-second-shorter", 240.0, 246.0), "6 mm shorter: 24.0 cm for 24.6 cm"),
        (found("seam-eased", 6.0), "6 mm eased in"),
        (found("seam-stretched", 6.0), "6 mm stretched on"),
        (found("measure-gave-way", -15.4, 0.0), "1.5 cm less"),
        (found("front-neck-raised", 18.3, 0.0), "1.8 cm higher"),
        (found("front-neck-lowered", 18.3, 0.0), "1.8 cm lower"),
        (found("bust-dart-wide", 29.5, 27.0, "deg"), "29.5°, at most 27.0°"),
        (found("dart-small", 3.0, 6.0), "3 mm, at least 6 mm"),
        (found("junction-peak", 183.0, 180.0, "deg"), "183.0°, wanted 180.0°"),
        (found("edge-bumpy", 4.0, 0.0, "deg"), "4.0°"),
        (found("measured-value-replaced", 446.0, 412.0), "41.2 cm instead of 44.6 cm"),
        (found("number-wrong", 3.0, 4.0, ""), "3, wanted 4"),
        (found("dart-large", 40.02, 40.0), "4.0 cm"),
        (found("sleeve-pitch", 3.1, None, "deg"), ""),
        (found("pleats-laid", 428.0, 248.0), ""),
        (found("hook-beside-bar", 15.0, 21.0), ""),
        (found("two-piece-elbow-ease", 2.0), ""),
        (found("outline-crosses", None), ""),
    ],
)
def test_an_amount_says_what_it_means(finding: Finding, words: str) -> None:
    assert amounts_in(finding, CM) == words


def test_an_estimate_keeps_its_spread() -> None:
    estimate = replace(found("estimates-rested-on", 203.0, 210.0), error=18.0)
    assert amounts_in(estimate, CM) == "20.3 ± 1.8 cm, now 21.0 cm"
    assert amounts_in(replace(estimate, wanted=None), CM) == "20.3 ± 1.8 cm"


def test_a_contradiction_is_told_in_its_own_line() -> None:
    told = Contradiction("bust_girth", "waist_girth", "waist_girth", 700.0, 240.0, "bust_girth")
    assert amounts_in(replace(found("measures-contradict", 940.0, 700.0), contradiction=told), CM) == ""


def test_lengths_in_the_words_are_the_reader_s() -> None:
    note = worded(
        "sleeve",
        "sleeve-arm-too-thin",
        Severity.LOOK,
        Measured(1.0),
        biceps=300.0,
        armhole=440.0,
        narrowest=325.4,
        wider_by=25.4,
    )
    assert suggestion_in(note, CM).startswith("Give the sleeve 2.5 cm more ease")
    assert message_in(note, CM).startswith("A sleeve 30.0 cm wide")
    assert suggestion_in(note, LengthStyle("in")).startswith('Give the sleeve 1" more ease')
    longer = replace(note, suggestion=f"{note.suggestion} (The wearer's right.)")
    assert suggestion_in(longer, CM).endswith("armhole. (The wearer's right.)")
    reworded = replace(note, message="Other words.", suggestion="Other advice.")
    assert message_in(reworded, CM) == "Other words."
    assert suggestion_in(reworded, CM) == "Other advice."
    assert message_in(found("dart-small", 3.0), CM) == "Something."


def test_a_refusal_names_the_amount_that_heals() -> None:
    cure = Cure("bodice", "armhole_lowered", 28.7, "lower the armhole", added=True)
    error = DraftRefused("sleeve-arm-too-full", lower_by=28.7, arm=28.0, cures=(cure,))
    word = error.code
    offered = OfferedCure(
        word, word, "bodice-1", "armhole_lowered", "30 mm", "lower the armhole", raised_by=30.0
    )
    say_solved(error, (offered,))
    assert error.next_step(in_words(CM)).startswith("Lower the armhole by 3.0 cm")
    assert offered.words(CM) == "Lower the armhole by 3.0 cm"
    assert error.facts["arm"] == 28.0
    assert error.facts["offered"] == (offered,)


def test_a_refusal_keeps_its_amount_where_nothing_heals() -> None:
    cure = Cure("bodice", "armhole_lowered", 28.7, "lower the armhole", added=True)
    error = DraftRefused("sleeve-arm-too-full", lower_by=28.7, cures=(cure,))
    say_solved(error, ())
    assert (error.facts["lower_by"], error.facts["offered"]) == (28.7, ())
