"""Linings of trousers whose fly is made after them: open behind it, sewn below.

That nobody gets into trousers whose lining is sewn shut behind the fly is a fact of plain handling, without a
source.
"""

from functools import cache

import pytest

from notchbook.app.examining import examine
from notchbook.checks import Subject, run_checks
from notchbook.finish.sewing import sewing_order
from notchbook.pattern import Pattern, Severity, walk_seam
from notchbook.recipe import Replay, replay
from support.closure_steps import FLY, FLY_BAND, lower_sets, outside_length, stepped
from support.edge_steps import trousers

PIECES = ("trousers.front", "trousers.back")
LINED = {"whole": PIECES, "front": PIECES[:1]}


@cache
def lined(which: str, hem: bool = False) -> Replay:
    """Trousers with a lining caught in at the waist, then a fly and a waistband."""
    pieces = LINED[which]
    asked = {
        "pieces": list(pieces),
        "caught": [f"{piece}/waist" for piece in pieces],
        "hems": [f"{piece}/hem" for piece in pieces] if hem else [],
    }
    return stepped(trousers(), ("lining", asked), ("fly", FLY), ("waistband", FLY_BAND))


def stops(pattern: Pattern) -> dict[str, float]:
    """How far below the waist a zip stops, mm, by the edge of its notch."""
    found = [one for one in pattern.notches.values() if one.purpose == "zip stop"]
    return {one.place.edge: one.place.amount for one in found}


def shut(pattern: Pattern) -> list[str]:
    """What the check of zips says of the pattern."""
    subject = Subject(pattern, None, is_block=False)
    return [one.code for one in run_checks(subject, ["opened-at-zips"]).findings]


@pytest.mark.parametrize("which", LINED)
def test_the_lining_is_open_behind_the_fly_and_sewn_below(which: str) -> None:
    pattern = lined(which).pattern
    at = stops(pattern)
    assert at["lining.front/crotch_seam"] == pytest.approx(at["trousers.front/crotch_seam/fly"], abs=1e-6)
    sewn = walk_seam(pattern, pattern.seams["lining/front_crotch_seam"])
    assert sewn.first == pytest.approx(outside_length(pattern, "lining.front/crotch_seam"), abs=0.01)
    assert shut(pattern) == []


def test_without_its_notch_the_lining_is_found_shut() -> None:
    pattern = lined("whole").pattern.with_notches(without=["fly.lining_front/zip_notch"])
    assert shut(pattern) == ["closed-behind-zip"]


def test_its_edges_are_turned_in_once_the_zip_is_in() -> None:
    pattern = lined("whole", hem=True).pattern
    told = [one.text for one in sewing_order(pattern).lines]
    (turned,) = (index for index, text in enumerate(told) if "above its zip notch" in text)
    zips = [index for index, text in enumerate(told) if "tape of the zip to the facing" in text]
    assert zips
    assert max(zips) < turned


def test_the_back_of_the_lining_is_closed_as_it_was() -> None:
    pattern = lined("whole").pattern
    assert "lining/back_crotch_seam" in pattern.seams
    assert "lining.back/crotch_seam" not in stops(pattern)


def test_sides_that_differ_are_both_open() -> None:
    done = replay(lined("whole").recipe, lower_sets()["uneven"])
    assert done.suspended is None, done.suspended.error
    open_ones = [edge for edge in stops(done.pattern) if edge.startswith("lining.front/crotch_seam")]
    assert sorted(open_ones) == ["lining.front/crotch_seam@left", "lining.front/crotch_seam@right"]
    assert shut(done.pattern) == []


def test_a_lining_of_its_own_is_nothing_to_look_at() -> None:
    """Its seams are as long as those of the cloth and notched alike, and nobody takes it for cloth."""
    told = examine(lined("whole", hem=True)).findings
    assert [one.code for one in told if one.severity is not Severity.NOTE] == []
