"""What a pattern rests on: the estimates that move a line, and whether they still follow."""

from notchbook.app.bodies.resting_on_estimates import rested_on
from notchbook.app.drafting import draft
from notchbook.app.examining import examine
from notchbook.body import Measure, MeasureSet
from notchbook.body.estimating.estimating import estimate, with_estimates
from notchbook.recipe import Replay, estimated_reads
from notchbook.units import LengthStyle
from support.bodies import four_measures


def codes(run: Replay) -> set[str]:
    return {finding.code for finding in examine(run, cut=False).findings if finding.check == "estimates"}


def filled() -> MeasureSet:
    return with_estimates(four_measures(hip_depth=205.0), ["outside_leg"])


def test_an_estimate_that_moves_no_line_is_not_rested_on() -> None:
    """An outside leg alone only judges how long the skirt is: the pages are the same without it."""
    run = draft("skirt", filled())
    assert list(estimated_reads(run)) == ["outside_leg"]
    assert rested_on(run) == {}
    assert codes(run) == set()


def test_one_that_moves_a_line_is() -> None:
    """Beside a height of the waist in front it places the waist at the center."""
    run = draft("skirt", filled().with_value("front_waist_to_floor", filled().value("outside_leg") - 8.0))
    assert list(rested_on(run)) == ["outside_leg"]
    needed = draft("skirt", with_estimates(four_measures(), ["hip_depth"]))
    assert list(rested_on(needed)) == ["hip_depth"]
    assert codes(needed) == {"estimates-rested-on"}


def test_one_that_no_longer_follows_is_said_with_what_it_would_be() -> None:
    more = with_estimates(four_measures(), ["hip_depth"]).with_value("height", 1800.0)
    run = draft("skirt", more)
    told = rested_on(run)["hip_depth"]
    now = estimate(more, ["hip_depth"]).found["hip_depth"]
    assert told.is_stale
    assert told.now == now.measure()
    assert f"now {now.value / 10:.1f}" in told.words("hip_depth", LengthStyle("cm"), "women")
    (finding,) = [one for one in examine(run, cut=False).findings if one.check == "estimates"]
    assert (finding.code, finding.wanted) == ("estimates-rested-on-stale", now.value)


def test_one_that_cannot_be_worked_out_any_more_is_stale_without_a_value() -> None:
    more = with_estimates(four_measures(), ["hip_depth"])
    alone = MeasureSet(more.name, more.values)
    told = rested_on(draft("skirt", alone))["hip_depth"]
    assert (told.is_stale, told.now) == (True, None)
    assert "nothing is known now" in told.words("hip_depth", LengthStyle("cm"), None)


def test_her_own_estimate_never_goes_stale() -> None:
    hers = four_measures().with_value("hip_depth", Measure(205.0, "estimated", 12.0, "by eye"))
    assert not rested_on(draft("skirt", hers))["hip_depth"].is_stale
