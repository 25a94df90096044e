"""What is read of a set for the look at an upper body, and that the step remembers it."""

from dataclasses import replace

from notchbook.blocks.upper_measures import UPPER_KEYS, read_upper
from notchbook.body import Measure, MeasureSet
from notchbook.recipe import StepContext


def _set(**values: Measure) -> MeasureSet:
    return MeasureSet("Invented", values, population="women")


def _context(measures: MeasureSet) -> StepContext:
    return StepContext(measures, "bodice", "bodice-1")


def test_taken_estimated_and_sure_values_are_told_apart() -> None:
    context = _context(
        _set(
            bust_girth=Measure(920.0),
            back_waist_length=Measure.of_readings((402.0, 404.0)),
            scye_depth=Measure.of_readings((200.0, 230.0)),
            front_waist_length=Measure(440.0, "estimated", error=16.0),
        )
    )
    read = read_upper(context)
    assert read.taken == {"bust_girth": 920.0, "back_waist_length": 403.0, "scye_depth": 215.0}
    assert read.sure == {"back_waist_length"}, "the two readings of the scye depth disagree"
    assert read.estimated["front_waist_length"].error == 16.0
    assert read.find("front_waist_length") == 440.0
    assert read.find("across_back") is None
    assert read.population == "women"


def test_the_step_runs_again_when_any_of_them_changes() -> None:
    context = _context(_set(bust_girth=Measure(920.0)))
    read_upper(context)
    assert set(context.reads) == {(key, "both") for key in UPPER_KEYS}


def test_sides_are_one_body_and_survey_records_have_no_population() -> None:
    sides = MeasureSet.from_mm("Invented", {"across_back@left": 340.0, "across_back@right": 350.0})
    assert read_upper(_context(sides)).taken == {"across_back": 345.0}
    survey = replace(_set(bust_girth=Measure(920.0)), taken_as="survey", waist_level="navel")
    assert read_upper(_context(survey)).population is None


def test_a_child_is_known_as_one() -> None:
    child = MeasureSet.from_mm("Invented", {"height": 1040.0, "bust_girth": 570.0})
    assert read_upper(_context(child)).is_child
