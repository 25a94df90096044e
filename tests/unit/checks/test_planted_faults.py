"""Every check finds the fault planted for it, measures it rightly, and is silent where there is none."""

import ast
import inspect
import re
from collections import Counter

import pytest

from notchbook.checks import Check, Subject, all_checks, check_sources, load_check, run_checks
from notchbook.errors import HouseFault
from notchbook.pattern import Severity
from support import (
    faults_children,
    faults_cut,
    faults_darts,
    faults_estimates,
    faults_gathers,
    faults_girths,
    faults_inner_darts,
    faults_leather,
    faults_openings,
    faults_outline,
    faults_seams,
    faults_sewing,
    faults_shapes,
    faults_suit,
    faults_trousers,
    faults_zips,
)
from support.faults import PLANTED, Planted
from support.faults_seams import PROMISES
from support.hand_skirt import hand_skirt
from support.hand_suit import hand_suit
from support.hand_trousers import hand_trousers
from support.hand_upper import hand_upper

FAULT_FILES = (
    faults_children,
    faults_cut,
    faults_darts,
    faults_estimates,
    faults_gathers,
    faults_girths,
    faults_inner_darts,
    faults_leather,
    faults_openings,
    faults_outline,
    faults_seams,
    faults_sewing,
    faults_shapes,
    faults_suit,
    faults_trousers,
    faults_zips,
)
FAULTS = [planted for planted in PLANTED if planted.code is not None]
HARMLESS = [planted for planted in PLANTED if planted.code is None]


@pytest.mark.parametrize("planted", FAULTS, ids=str)
def test_the_planted_fault_is_found(planted: Planted) -> None:
    found = list(load_check(planted.check).run(planted.make()))
    assert planted.code in [finding.code for finding in found]
    assert all(finding.check == planted.check and finding.suggestion for finding in found)
    if planted.measured is not None:
        amounts = [finding.measured for finding in found if finding.code == planted.code]
        assert any(
            amount is not None and abs(amount - planted.measured) <= planted.within for amount in amounts
        ), amounts


@pytest.mark.parametrize("planted", HARMLESS, ids=str)
def test_what_is_within_the_limit_passes(planted: Planted) -> None:
    found = list(load_check(planted.check).run(planted.make()))
    assert [finding for finding in found if finding.severity is not Severity.NOTE] == []


@pytest.mark.parametrize("check_id", check_sources())
def test_each_check_is_silent_on_the_clean_skirt(check_id: str) -> None:
    assert list(load_check(check_id).run(Subject(hand_skirt(), None, PROMISES))) == []


@pytest.mark.parametrize("check_id", faults_shapes.DRAWN)
def test_each_check_of_shapes_is_silent_on_the_clean_bodice_and_sleeve(check_id: str) -> None:
    assert list(load_check(check_id).run(Subject(hand_upper()))) == []


@pytest.mark.parametrize("check_id", faults_trousers.CHECKED)
def test_each_check_of_legs_is_silent_on_the_clean_trousers(check_id: str) -> None:
    assert list(load_check(check_id).run(Subject(hand_trousers()))) == []


@pytest.mark.parametrize("check_id", faults_suit.CHECKED)
def test_each_check_of_suits_is_silent_on_the_clean_suit(check_id: str) -> None:
    assert list(load_check(check_id).run(Subject(hand_suit()))) == []


def test_the_clean_skirt_passes_every_check() -> None:
    report = run_checks(Subject(hand_skirt(), None, PROMISES))
    assert (report.findings, report.broken, report.skipped, report.waived) == ((), (), (), ())
    assert report.passed == tuple(check_sources())


# ------------------------------------------------------------------ the registry itself


def untested_codes(checks: tuple[Check, ...], planted: list[Planted]) -> set[tuple[str, str]]:
    """Messages of checks for which no fault is planted."""
    wanted = {(check.id, code) for check in checks for code in check.messages}
    return wanted - {(one.check, one.code) for one in planted if one.code is not None}


def test_every_message_of_every_check_has_a_planted_fault() -> None:
    assert untested_codes(all_checks(), PLANTED) == set()


def test_a_check_without_a_planted_fault_is_seen() -> None:
    rest = [planted for planted in PLANTED if planted.check != "dart-legs"]
    codes = {"dart-legs-differ", "dart-part-legs-differ", "dart-ends-apart"}
    assert untested_codes(all_checks(), rest) == {("dart-legs", code) for code in codes}


def test_ids_and_codes_are_unique_and_files_are_named_like_their_checks() -> None:
    checks = all_checks()
    codes = Counter(code for check in checks for code in check.messages)
    assert [code for code, times in codes.items() if times > 1] == []
    for check in checks:
        assert check.rule.__module__ == f"notchbook.checks.rules.{check.id.replace('-', '_')}"
        assert all(re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)+", code) for code in check.messages)


def sentences(text: str) -> int:
    return len(re.findall(r"[.!?](?=\s|$)", text))


@pytest.mark.parametrize("check", all_checks(), ids=lambda check: check.id)
def test_every_check_gives_its_reason_and_what_to_do(check: Check) -> None:
    assert sentences(check.rationale) >= 3
    assert sentences(check.suggestion) >= 1
    assert check.title and not check.title.endswith(".")
    assert check.reads
    assert all(text.endswith((".", "}")) for text in check.messages.values())


def test_a_check_without_a_reason_is_refused() -> None:
    from notchbook.checks import check

    with pytest.raises(HouseFault, match="check-malformed"):
        check(
            id="bare",
            title="Bare",
            rationale="Because.",
            severity=Severity.LOOK,
            reads=("edges",),
            messages={"bare-a": "A."},
            suggestion="None.",
        )


def test_every_fault_in_the_files_is_registered() -> None:
    """A decorator forgotten over a planted fault would silently drop a test."""
    registered = {planted.name for planted in PLANTED}
    for module in FAULT_FILES:
        for node in ast.parse(inspect.getsource(module)).body:
            if isinstance(node, ast.FunctionDef) and ast.unparse(node.returns or node) == "Made":
                assert node.name in registered, node.name
