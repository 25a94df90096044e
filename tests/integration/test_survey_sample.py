"""The skirt on 200 bodies of the survey, drawn with a fixed seed, judged by outside code.

Source of the bodies: data/survey/ansur/SOURCE.md (public databases of the U.S. Army survey of 2012).
"""

from functools import cache

import numpy as np
import pytest

import survey
from make_bodies import Group, bodies
from notchbook.app.drafting import draft
from notchbook.app.eases.ease_rows import ease_table
from notchbook.body import MeasureSet
from notchbook.geometry import Cubic, Path, Point, Transform
from notchbook.recipe import definition
from outside import length, polyline, skirt_closures

CLOSURE = 0.01
"""mm; lengths along a sew line are promised to 0.01 mm, closures of a draft to 0.1 mm."""

JOBS = survey.sample(200)


@cache
def outcomes() -> tuple[survey.Outcome, ...]:
    """What came of the sample."""
    return tuple(survey.outcome(job) for job in JOBS)


def test_every_body_is_drafted_or_refused_with_a_code() -> None:
    assert len(outcomes()) == 200
    refused = [item for item in outcomes() if item.refused]
    assert all(item.facts for item in refused)
    assert len(refused) <= 2, [(item.id, item.level, item.refused) for item in refused]


def test_the_page_says_which_version_was_drafted() -> None:
    page = survey.page(survey.report(outcomes(), 1.0, 1))
    assert f"`skirt` {definition('skirt').version}" in page


def test_every_draft_closes_by_outside_measure() -> None:
    open_drafts = {item.id: item.worst for item in outcomes() if item.worst > CLOSURE}
    assert not open_drafts


def test_no_check_finds_what_would_spoil_cloth() -> None:
    """Only findings that are to be looked at: shapes at their limits, never a seam that does not meet."""
    allowed = {
        "side-rises",
        "side-leans-out",
        "hip-ease-raised",
        "dart-wide",
        "dart-large",
        "center-heights-disagree",
        "ease-unusual",
    }
    found = {flag for item in outcomes() for flag in item.flags}
    assert found <= allowed


def test_darts_and_side_rise_stay_within_what_hands_can_sew() -> None:
    """Darts of 40 to 50 mm at most (handbook practice); the side rise is usual at 8 to 13 mm, and a rise
    above 18 is told as a finding (patternmaker's review). The back rises to the side by what its center was
    lowered on purpose as well, which is no ear."""
    assert max(item.widest_dart for item in outcomes()) < 50.0
    told = [item for item in outcomes() if "side-rises" in item.flags]
    untold = [item for item in outcomes() if "side-rises" not in item.flags and not item.refused]
    assert max(item.rise for item in untold) <= 18.0 + 1e-6
    assert len(told) < 0.15 * len(outcomes())


def test_outside_code_sees_a_planted_fault_of_two_tenths() -> None:
    """Else the closures above could not fail."""
    _, body = JOBS[0]
    values = {"waist_girth": body.waist_girth, "hip_girth": body.hip_girth, "hip_depth": body.hip_depth}
    run = draft("skirt", MeasureSet.from_mm(body.id, values))
    asked = {row.measure: row.body + row.ease for row in ease_table(run)}
    waist, hip = asked["waist_girth"], asked["hip_girth"]
    assert max(map(abs, skirt_closures(run.pattern, waist, hip, body.hip_depth).values())) < CLOSURE
    larger = Transform(1.0 + 0.2 / waist, 0.0, 0.0, 1.0 + 0.2 / waist, 0.0, 0.0)
    grown = run.pattern.with_pieces(*(piece.transformed(larger) for piece in run.pattern.pieces.values()))
    assert skirt_closures(grown, waist, hip, body.hip_depth)["waist"] == pytest.approx(0.2, abs=1e-3)
    wrong = skirt_closures(run.pattern, waist + 0.2, hip - 0.2, body.hip_depth + 0.2)
    assert [round(wrong[name], 3) for name in ("waist", "hip", "side above hip")] == [-0.2, 0.2, -0.2]


def test_outside_length_of_known_curves() -> None:
    """A straight line of 3, 4, 5, and a quarter circle by its usual cubic: 2 pi / 4 within 3 parts in 10 000
    (handle 0.5523 of the radius; the figure is of common knowledge)."""
    assert length(polyline(Path.line(Point(0.0, 0.0), Point(3.0, 4.0)))) == pytest.approx(5.0, abs=1e-12)
    quarter = Cubic(Point(1.0, 0.0), Point(1.0, 0.5523), Point(0.5523, 1.0), Point(0.0, 1.0))
    assert length(polyline(Path.of(quarter))) == pytest.approx(np.pi / 2.0, rel=3e-4)


def test_the_bodies_are_those_of_the_source() -> None:
    """Counts of the source; women's stature 162.8 cm and hip 102.1, men's 175.6 and 102.0 in the whole
    survey, of which this is every second row (computed from the public databases)."""
    women, men = list(bodies("navel", ("women",))), list(bodies("navel", ("men",)))
    assert (len(women), len(men)) == (993, 2041)
    for group, stature, hip in ((women, 1628.0, 1021.0), (men, 1756.0, 1020.0)):
        assert np.mean([body.height for body in group]) == pytest.approx(stature, abs=5.0)
        assert np.mean([body.hip_girth for body in group]) == pytest.approx(hip, abs=5.0)


def test_the_natural_waist_lies_above_the_navel() -> None:
    """By 4.6 cm (standard deviation 1.7) in women and 3.5 (1.9) in men (computed from the whole survey)."""
    wanted: tuple[tuple[Group, float, float], ...] = (("women", 46.0, 17.0), ("men", 35.0, 19.0))
    for group, rise, deviation in wanted:
        navel, natural = (list(bodies(level, (group,))) for level in ("navel", "natural"))
        above = [high.hip_depth - low.hip_depth for low, high in zip(navel, natural, strict=True)]
        assert np.mean(above) == pytest.approx(rise, abs=2.0)
        assert np.std(above) == pytest.approx(deviation, abs=1.5)
