"""Lower and stretch blocks on a few bodies of the survey, drawn with a fixed seed, judged by outside code.

Source of the bodies: data/survey/ansur/SOURCE.md (public databases of the U.S. Army survey of 2012). All
of it is run by `make survey`.
"""

from functools import cache

import survey_lower
from lower_judged import JUDGES
from notchbook.errors import catalogue
from notchbook.recipe import definition
from survey_lower import LINE, LINES, LowerOutcome
from survey_lower_page import page

JOBS = [
    *survey_lower.sample(16, [LINE["trousers"]]),
    *survey_lower.sample(len(LINES[1:]), LINES[1:]),
]


GIRTHS = ("bust_girth", "waist_girth", "hip_girth", "crotch_length", "front_crotch", "back_crotch")
"""What a draft must hold, however the rest gives way."""


@cache
def outcomes() -> tuple[LowerOutcome, ...]:
    return tuple(survey_lower.outcome(job) for job in JOBS)


def test_bodies_are_drafted_or_refused_with_a_code() -> None:
    refused = {(one.part, one.name): one.refused for one in outcomes() if one.refused}
    assert set(refused.values()) <= set(catalogue())
    assert len(refused) <= 2


def test_every_draft_closes_by_outside_measure() -> None:
    assert {(one.part, one.name): one.open for one in outcomes() if one.open} == {}
    assert max(one.worst for one in outcomes()) < 0.1


def test_what_was_drafted_is_what_was_asked_for() -> None:
    """Waist, hip and crotch within 1 mm of measure and ease, for all but one of ten. What else gives way in a
    stretch block (its shoulder, a leg over the heel) is told, which its own tests hold it to."""
    drafts = [one for one in outcomes() if not one.refused]
    exact = [
        one for one in drafts if not one.cure and not any(told.startswith(GIRTHS) for told in one.replaced)
    ]
    assert len(exact) >= 0.9 * len(drafts)


def test_figures_are_those_of_bodies() -> None:
    """A reference run on 500 surveyed women by other code had front extensions of 7.2 to 8.5, back extensions
    of 11.1 to 14.5 percent of the hip, drops of 12 to 31 mm (5 to 95 %); widened here to what may be sewn."""
    legs = [one.figures for one in outcomes() if one.part.startswith("trousers") and one.figures]
    assert all(4.0 <= one["front extension % hip"] <= 10.0 for one in legs)
    assert all(8.0 <= one["back extension % hip"] <= 16.0 for one in legs)
    assert all(0.0 <= one["back drop"] <= 40.0 for one in legs)
    assert all(one["back crotch"] > one["front crotch"] for one in legs)


def test_the_report_counts_every_body_once() -> None:
    found = survey_lower.report(outcomes(), 1.0, 1, (len(JOBS), len(survey_lower.survey_jobs())))
    keys = ("as_measured", "with_cure", "open", "refused")
    assert sum(sum(part[key] for key in keys) for part in found["parts"]) == len(JOBS)
    text = page(found)
    assert f"A seeded part: {len(JOBS)} of the" in text
    assert f"`trousers` {definition('trousers').version}" in text
    assert all(part["part"] in text for part in found["parts"])


def test_a_body_that_is_refused_is_counted_as_refused_with_its_code() -> None:
    """Else the counts of refusals could not fail."""
    measures = survey_lower.measures_of(JOBS[0]).with_value("crotch_length", 1200.0)
    refused = survey_lower.outcome(survey_lower.Job("trousers", "a part", "slipped", ("set", measures)))
    assert refused.refused in catalogue()
    assert survey_lower.line_summary("a part", [refused])["refused"] == 1


def test_every_block_has_a_line_and_every_line_a_judge() -> None:
    assert {line.block for line in LINES} == set(JUDGES)
