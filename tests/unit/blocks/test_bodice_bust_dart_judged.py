"""The bust dart is judged by its angle round the bust point, once; at the waist it has a limit of its own."""

from dataclasses import replace

import pytest

from notchbook.checks.limits import Limits
from notchbook.checks.profile import house_profile
from notchbook.checks.run import run_checks
from notchbook.checks.subject import Subject
from notchbook.pattern import Severity
from notchbook.recipe import Replay
from support.bodice_bodies import FULL_BUST, WOMAN, bodice_run, body

LIMITS = Limits()


def large(done: Replay, **limits: float) -> list[float]:
    """The angles of the bust darts that the check calls large."""
    profile = replace(house_profile(), limits=LIMITS.with_changes(limits))
    found = run_checks(Subject(done.pattern), ["dart-count"], profile).findings
    return [one.measured or 0.0 for one in found if one.code == "dart-large" and one.unit == "deg"]


def angle_of(done: Replay) -> float:
    """The angle that the draft says."""
    (seen,) = large(done, bust_dart_angle=1.0, combined_dart_angle=1.0)
    return seen


@pytest.mark.parametrize("place", ["side", "underarm", "shoulder", "armhole", "french", "center_front"])
def test_the_angle_is_the_same_wherever_it_opens_and_however_short_it_is(place: str) -> None:
    small, full = (
        angle_of(bodice_run(body(WOMAN, under_bust_girth=under), bust_dart=place)) for under in (800.0, 680.0)
    )
    assert small == pytest.approx(full, abs=0.05)
    assert small == pytest.approx(angle_of(bodice_run(body(WOMAN))), abs=0.05)


def test_a_dart_over_its_limit_is_large_and_its_cause_is_a_note() -> None:
    wide = bodice_run(body(WOMAN, front_waist_length=472.0, center_front_length=372.0))
    (angle,) = large(wide)
    assert angle > LIMITS.bust_dart_angle
    (said,) = [note for note in wide.notes if note.code == "bust-dart-wide"]
    assert said.severity is Severity.NOTE


def test_with_the_waist_in_it_the_dart_has_a_limit_of_its_own() -> None:
    combined = bodice_run(body(FULL_BUST), bust_dart="waist")
    (angle,) = large(combined, combined_dart_angle=20.0)
    assert LIMITS.bust_dart_angle < angle < LIMITS.combined_dart_angle
    assert large(combined) == []
