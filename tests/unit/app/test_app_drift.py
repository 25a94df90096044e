"""Drift of a stored style: what would be drawn otherwise today is said, what would not is silent."""

from dataclasses import replace
from pathlib import Path

import pytest

from notchbook.app.demo import demo_client, demo_form, demo_recipe
from notchbook.app.drafting import completed
from notchbook.app.drift import LEAST_DRIFT, drift_findings, redrawn_steps
from notchbook.app.papers import cut_ready, job_of
from notchbook.app.style_file import StyleFile, examine_style, read_style, run_style, write_style
from notchbook.geometry import Transform
from notchbook.pattern import Pattern, Severity
from notchbook.recipe import Replay, definition
from notchbook.recipe import replay as run_again


@pytest.fixture(scope="module")
def run() -> Replay:
    return completed(run_again(demo_recipe(demo_form()), demo_form()))


def _moved(pattern: Pattern, piece: str, dx: float) -> Pattern:
    return pattern.with_pieces(pattern.pieces[piece].transformed(Transform.translation(dx, 0.0)))


def test_a_style_just_written_has_not_drifted(run: Replay, tmp_path: Path) -> None:
    write_style(run, tmp_path / "style.json")
    style = read_style(tmp_path / "style.json")
    report = examine_style(style, run_style(style))
    assert [finding.check for finding in report.findings if finding.check == "drift"] == []


def test_a_shift_of_two_tenths_is_found_with_its_amount(run: Replay) -> None:
    found = drift_findings(_moved(run.pattern, "skirt.front", 0.2), run.pattern)
    assert {finding.code for finding in found} == {"drift-moved"}
    assert max(finding.measured or 0.0 for finding in found) == pytest.approx(0.2, abs=1e-6)


def test_a_shift_below_the_limit_is_silent(run: Replay) -> None:
    assert drift_findings(_moved(run.pattern, "skirt.front", LEAST_DRIFT / 2.0), run.pattern) == ()


def test_pieces_gone_and_new_are_named(run: Replay) -> None:
    without = run.pattern.with_pieces(without=("waistband.band",))
    assert {finding.code for finding in drift_findings(without, run.pattern)} == {"drift-new"}
    assert {finding.code for finding in drift_findings(run.pattern, without)} == {"drift-gone"}


def test_another_body_is_no_drift(run: Replay) -> None:
    moved = replace(StyleFile(run.recipe, demo_form(), None), pattern=_moved(run.pattern, "skirt.back", 5.0))
    other = run_style(moved, demo_client())
    assert not any(finding.check == "drift" for finding in examine_style(moved, other).findings)
    own = run_style(moved)
    assert any(finding.check == "drift" for finding in examine_style(moved, own).findings)


def _written(operation: str, version: int) -> dict[str, object]:
    return {"steps": [{"id": f"{operation}-1", "operation": operation, "version": version, "title": ""}]}


def test_a_block_of_an_older_version_that_takes_the_new_shape_is_told() -> None:
    (finding,) = redrawn_steps(_written("trousers", 1))
    assert finding.code == "step-redrawn"
    assert finding.severity is Severity.LOOK


def test_one_that_keeps_its_lines_or_is_of_now_is_not() -> None:
    assert redrawn_steps(_written("skirt", 1)) == ()
    assert redrawn_steps(_written("trousers", definition("trousers").version)) == ()


def test_papers_tell_what_has_drifted(run: Replay) -> None:
    told = drift_findings(_moved(run.pattern, "skirt.front", 0.2), run.pattern)
    ready = cut_ready(replace(job_of(run, "2026-03-31"), drift=told))
    assert told[0] in ready.report.findings
