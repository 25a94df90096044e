"""Running checks: broken is not failed, skipped is shown, the report is the same every time."""

import json
import sys
from collections.abc import Iterator
from dataclasses import replace
from types import ModuleType

import pytest

from notchbook.checks import (
    LIMITS,
    Check,
    Override,
    Profile,
    Subject,
    check,
    check_sources,
    load_check,
    profile_from_text,
    registry,
    run,
    run_checks,
    worst_seam,
)
from notchbook.errors import HouseFault, InputError
from notchbook.pattern import Allowance, Finding, Pattern, Severity, frozen_map
from support.faults_seams import longer_back
from support.hand_skirt import hand_skirt


@pytest.fixture
def long_back() -> Subject:
    """The hand-made skirt with one side seam 0.7 mm too long: two checks have something to say."""
    return Subject(longer_back(hand_skirt(), 0.7))


def breaking(subject: Subject) -> Iterator[Finding]:
    raise ZeroDivisionError("planted")
    yield


@pytest.fixture
def broken_dart_legs(monkeypatch: pytest.MonkeyPatch) -> Check:
    broken = replace(load_check("dart-legs"), rule=breaking)
    monkeypatch.setattr(
        run, "load_check", lambda check_id: broken if check_id == "dart-legs" else load_check(check_id)
    )
    return broken


def test_a_check_that_breaks_is_not_a_piece_that_fails(broken_dart_legs: Check) -> None:
    report = run_checks(Subject(hand_skirt()))
    assert [(broken.id, broken.error) for broken in report.broken] == [
        ("dart-legs", "ZeroDivisionError: planted")
    ]
    assert report.findings == ()
    assert "dart-legs" not in report.passed
    assert "dart-mouth" in report.passed
    assert report.stops
    assert "1 broke" in report.summary()


def test_skipped_checks_are_shown_with_the_reason() -> None:
    report = run_checks(Subject(hand_skirt()))
    assert [(skipped.id, skipped.reason) for skipped in report.skipped] == [
        ("expectations", "nothing was promised of this pattern")
    ]
    assert "1 skipped" in report.summary()


def test_every_check_is_accounted_for_once(long_back: Subject) -> None:
    report = run_checks(long_back)
    failed = {f.check for f in report.findings if f.severity is not Severity.NOTE}
    listed = [*report.passed, *failed, *(b.id for b in report.broken), *(s.id for s in report.skipped)]
    assert sorted(listed) == sorted(check_sources())


def test_a_refused_finish_is_told_once_and_the_others_wait() -> None:
    pattern = hand_skirt().with_allowances({"skirt.front/hem": Allowance("moonlight")})
    report = run_checks(Subject(pattern))
    assert [finding.code for finding in report.findings] == ["cut-ready-refused"]
    waiting = {skipped.id for skipped in report.skipped if "cut-ready" in skipped.reason}
    assert waiting == {i for i in check_sources() if "cut" in load_check(i).reads} - {"cut-ready"}
    assert report.broken == ()


def test_only_the_checks_asked_for_are_run(long_back: Subject) -> None:
    report = run_checks(long_back, only=("seam-walks", "dart-legs"))
    assert report.passed == ("dart-legs",)
    assert [finding.check for finding in report.findings] == ["seam-walks"]
    with pytest.raises(InputError) as refused:
        run_checks(long_back, only=("seam-walk",))
    assert "seam-walks" in refused.value.text() + refused.value.next_step()


def test_a_drag_runs_what_reads_the_touched_parts_and_makes_no_cut_pieces(long_back: Subject) -> None:
    report = run_checks(long_back, touched={"edges"})
    assert "seam-walks" in {finding.check for finding in report.findings}
    assert {"titles", "hem-flat"} <= {skipped.id for skipped in report.skipped}
    assert "cut_pieces" not in long_back.__dict__


def test_a_profile_leaves_out_and_changes_limits_with_reasons(long_back: Subject) -> None:
    profile = profile_from_text(
        """
        name = "leather"
        [limits.seam_walk]
        value = 1.0
        reason = "leather is taped, and taped edges are trimmed"
        [left_out.dart-count]
        reason = "leather darts are cut open and seamed"
        """
    )
    report = run_checks(long_back, profile=profile)
    assert "seam-walks" in report.passed
    assert [s.reason for s in report.skipped if s.id == "dart-count"] == [
        "leather darts are cut open and seamed"
    ]
    assert profile.limits.seam_walk == 1.0
    assert profile.limits.dart_legs == LIMITS.dart_legs
    assert profile.limit_reasons["seam_walk"].startswith("leather is taped")


def test_an_override_waives_or_lowers_a_finding_and_says_why(long_back: Subject) -> None:
    reason = "the hem is leveled on the body"
    waived = Profile("waived", overrides=(Override("seam-second-longer", None, reason),))
    report = run_checks(long_back, profile=waived)
    assert [(w.finding.code, w.reason) for w in report.waived] == [("seam-second-longer", reason)]
    assert "seam-walks" in report.passed
    lowered = Profile("lowered", overrides=(Override("seam-second-longer", Severity.LOOK, reason),))
    report = run_checks(long_back, only=("seam-walks",), profile=lowered)
    assert [finding.severity for finding in report.findings] == [Severity.LOOK]
    assert not report.stops


def test_an_override_with_names_holds_there_alone(long_back: Subject) -> None:
    here = Override("seam-second-longer", None, "leveled", ("skirt/side_seam",))
    elsewhere = Override("seam-second-longer", None, "leveled", ("skirt/center_back",))
    assert run_checks(long_back, profile=Profile("here", overrides=(here,))).waived
    assert not run_checks(long_back, profile=Profile("elsewhere", overrides=(elsewhere,))).waived


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("name = ", "profile-unusable"),
        ("limits = 3", "profile-unusable"),
        ("[limits.seam_walk]\nvalue = 1.0", "profile-unusable"),
        ("[limits.seam_walk]\nvalue = '1'\nreason = 'x'", "profile-unusable"),
        ("[limits.seam_walk]\nvalue = -1.0\nreason = 'x'", "limit-unusable"),
        ("[limits.seam_walk]\nvalue = nan\nreason = 'x'", "limit-unusable"),
        ("[limits.seam_walk]\nvalue = 1e9\nreason = 'x'", "limit-unusable"),
        ("[limits.seam_work]\nvalue = 1.0\nreason = 'x'", "limit-unknown"),
        ("[left_out.seam-walk]\nreason = 'x'", "check-unknown"),
        ("[left_out.seam-walks]\nreason = ' '", "profile-unusable"),
        ("[overrides.seam-second-longer]\nseverity = 'loud'\nreason = 'x'", "profile-unusable"),
        ("[overrides.seam-second-longer]\nseverity = 'look'", "profile-unusable"),
        ("[overrides.seam-second-longer]\nnames = 'all'\nreason = 'x'", "profile-unusable"),
    ],
)
def test_a_profile_that_cannot_be_used_is_refused(text: str, code: str) -> None:
    with pytest.raises(InputError) as refused:
        profile_from_text(text)
    assert refused.value.code == code
    assert refused.value.text() and refused.value.next_step()


def shuffled(pattern: Pattern) -> Pattern:
    """The same pattern with its seams, notches and allowances kept in another order."""
    return replace(
        pattern,
        seams=frozen_map(list(pattern.seams.items())[::-1]),
        notches=frozen_map(list(pattern.notches.items())[::-1]),
        allowances=frozen_map(list(pattern.allowances.items())[::-1]),
    )


def test_the_report_is_the_same_every_time(long_back: Subject) -> None:
    first = json.dumps(run_checks(long_back).to_data())
    again = json.dumps(run_checks(Subject(shuffled(long_back.pattern))).to_data())
    assert first == again
    data = json.loads(first)
    assert [f["severity"] for f in data["findings"]] == ["stop", "stop"]
    assert data["worst_seam"] == {"seam": "skirt/side_seam", "misfit": 0.7, "walked": 2}
    walked = next(f for f in data["findings"] if f["check"] == "seam-walks")
    assert walked["measured"] - walked["wanted"] == pytest.approx(0.7, abs=1e-4)


def test_the_gravest_finding_comes_first(long_back: Subject) -> None:
    pattern = replace(long_back.pattern, allowances=frozen_map())
    severities = [finding.severity for finding in run_checks(Subject(pattern)).findings]
    order = [Severity.STOP, Severity.LOOK, Severity.NOTE]
    assert len(set(severities)) > 1
    assert severities == sorted(severities, key=order.index)


def test_the_worst_seam_is_named(long_back: Subject) -> None:
    worst = worst_seam(long_back.pattern)
    assert worst is not None
    assert (worst.seam, worst.walked) == ("skirt/side_seam", 2)
    assert worst.misfit == pytest.approx(0.7, abs=1e-4)
    assert worst_seam(replace(long_back.pattern, seams=frozen_map())) is None
    assert "2 seams walked, worst skirt, side seam at 0.70 mm" in run_checks(long_back).summary()


def test_a_lost_seam_does_not_break_the_other_checks() -> None:
    pattern = hand_skirt()
    back = pattern.pieces["skirt.back"].renamed(lambda n: n.replace("back", "rear"))
    report = run_checks(Subject(pattern.with_pieces(back, without=("skirt.back",))))
    assert "name-dead-seam" in {finding.code for finding in report.findings}
    assert report.broken == ()


class FakeEntryPoint:
    """An entry point as a package that adds a check would declare it."""

    def __init__(self, name: str, value: str) -> None:
        self.name = name
        self.value = value


@check(
    id="from-elsewhere",
    title="A check that another package adds",
    rationale="It stands for one. It finds nothing. It is found by its entry point.",
    severity=Severity.NOTE,
    reads=("pieces",),
    messages={"elsewhere-none": "Nothing."},
    suggestion="Nothing to do.",
)
def from_elsewhere(subject: Subject) -> Iterator[Finding]:
    yield from ()


@pytest.fixture
def fresh_registry() -> Iterator[None]:
    registry.check_sources.cache_clear()
    registry.load_check.cache_clear()
    yield
    registry.check_sources.cache_clear()
    registry.load_check.cache_clear()


def test_a_package_cannot_take_an_id_that_is_taken(
    monkeypatch: pytest.MonkeyPatch, fresh_registry: None
) -> None:
    points = [FakeEntryPoint("seam-walks", "another_package:walks")]
    monkeypatch.setattr(registry, "entry_points", lambda group: points)
    with pytest.raises(HouseFault, match="check-twice"):
        check_sources()


def test_a_package_adds_a_check_by_an_entry_point(
    monkeypatch: pytest.MonkeyPatch, fresh_registry: None
) -> None:
    points = [FakeEntryPoint("from-elsewhere", "another_package:from_elsewhere")]
    package = ModuleType("another_package")
    package.__dict__["from_elsewhere"] = from_elsewhere
    monkeypatch.setitem(sys.modules, "another_package", package)
    monkeypatch.setattr(registry, "entry_points", lambda group: points)
    assert "from-elsewhere" in check_sources()
    assert load_check("from-elsewhere") is from_elsewhere


def test_an_entry_point_to_something_else_is_a_broken_check(
    monkeypatch: pytest.MonkeyPatch, fresh_registry: None
) -> None:
    points = [FakeEntryPoint("misnamed", "notchbook.checks.rules.dart_legs:dart_legs")]
    monkeypatch.setattr(registry, "entry_points", lambda group: points)
    report = run_checks(Subject(hand_skirt()), only=("misnamed",))
    assert [broken.id for broken in report.broken] == ["misnamed"]
