"""Where panels meet at the waist: seam on seam, or a notch where one comes to lie. Bodies are invented."""

from typing import Any

import pytest

from notchbook.app.drafting import draft_recipe
from notchbook.app.examining import examine
from notchbook.pattern import Pattern, Severity, locate, walk_seam
from notchbook.pattern.sewn import run_of
from notchbook.recipe import Replay, add_step, replay
from support.style_lines import WOMAN, code, good, place

BODICE, SKIRT = "dress.bodice_front", "dress.skirt_front"

PRINCESS: dict[str, Any] = {
    "center": f"{BODICE}/center_front",
    "start": [place(f"{BODICE}/armhole", f"{BODICE}/shoulder_point", 0.5)],
    "waist_dart": f"{BODICE}/waist_dart",
    "bust_point": f"{BODICE}/bust_point",
    "closed_dart": f"{BODICE}/bust_dart",
}
PANELS: dict[str, Any] = {
    "center": f"{SKIRT}/center_front",
    "upper_dart": f"{SKIRT}/waist_dart",
    "end": [place(f"{SKIRT}/hem", f"{SKIRT}/hem_center", 0.4)],
}
"""The dart of the skirt led on to the hem as a seam."""

NOTCHES = ("panel_notches", "waist_notches", {"seam": "dress/front_waist"})


def dress(*steps: tuple[str, str, dict[str, Any]]) -> Replay:
    recipe = draft_recipe("dress", WOMAN, {"front_darts": 1})
    for operation, slug, parameters in steps:
        recipe = add_step(recipe, operation, parameters, base=WOMAN, slug=slug)
    return replay(recipe, WOMAN)


def panel_notches(pattern: Pattern) -> list[str]:
    return [name for name, notch in pattern.notches.items() if notch.purpose == "panel"]


def test_panels_of_bodice_and_skirt_meet_at_the_waist() -> None:
    done = dress(("princess_seam", "princess", PRINCESS), ("princess_seam", "panels", PANELS), NOTCHES)
    pattern = good(done)
    seam = pattern.seams["dress/front_waist"]
    ends = []
    for uses in (seam.first, seam.second):
        steps = run_of(pattern, uses)
        assert len({pattern.carriers[step.edge.name] for step in steps}) == 2
        ends.append(steps[0].edge.length)
    assert ends[0] == pytest.approx(ends[1], abs=0.5)
    assert panel_notches(pattern) == []
    assert abs(walk_seam(pattern, seam).misfit) < 0.5
    assert [note for note in done.notes if note.code == "panels-miss"] == []


WITHOUT_DART: dict[str, Any] = {
    "first_role": "center",
    "second_role": "side",
    "lines": [
        {
            "start": place(f"{BODICE}/neck", f"{BODICE}/neck_pit", 0.5),
            "end": place(f"{BODICE}/waist", f"{BODICE}/waist_center", "4 cm", part=f"{BODICE}/waist/center"),
        }
    ],
}
"""A panel from neck to waist that takes no dart in."""


def test_on_a_whole_skirt_a_notch_shows_where_the_bodice_seam_comes_to_lie() -> None:
    done = dress(("cut_style_line", "panel", WITHOUT_DART), NOTCHES)
    pattern = good(done)
    (name,) = panel_notches(pattern)
    assert name == "waist_notches.skirt_front/bodice_front_center_seam_notch"
    found = locate(pattern, pattern.notches[name].place)
    assert (found.piece, pattern.notches[name].kind) == (SKIRT, "single")
    assert found.distance == pytest.approx(40.0, abs=0.1) or found.edge.length - found.distance == (
        pytest.approx(40.0, abs=0.1)
    )
    assert [f.code for f in examine(done).findings if f.severity is Severity.STOP and "notch" in f.code] == []


def test_where_a_dart_opens_on_the_joint_no_second_notch_is_cut() -> None:
    # Fact of the trade: the two legs of a dart are notched by themselves; a third notch would be looked for.
    pattern = good(dress(("princess_seam", "princess", PRINCESS), NOTCHES))
    assert panel_notches(pattern) == []


def test_where_a_notch_stands_on_the_joint_it_stays_the_only_one() -> None:
    flare = {
        "intake": f"{SKIRT}/waist_dart",
        "hem": f"{SKIRT}/hem",
        "still": f"{SKIRT}/center_front",
    }
    pattern = good(dress(("princess_seam", "princess", PRINCESS), ("dart_to_flare", "flare", flare), NOTCHES))
    assert f"{SKIRT}/waist/waist_dart_notch" in pattern.notches
    assert panel_notches(pattern) == []


def test_panels_that_nearly_meet_are_said_with_how_far_they_miss() -> None:
    off = {
        "lines": [
            {
                "start": place(
                    f"{SKIRT}/waist", f"{SKIRT}/waist_center", "74 mm", part=f"{SKIRT}/waist/center"
                ),
                "end": place(f"{SKIRT}/hem", f"{SKIRT}/hem_center", "90 mm"),
            }
        ],
        "first_role": "center",
        "second_role": "side",
    }
    done = dress(("princess_seam", "princess", PRINCESS), ("cut_style_line", "panels", off), NOTCHES)
    (said,) = [note for note in done.notes if note.code == "panels-miss"]
    pattern = good(done)
    joint = pattern.edges[f"{BODICE}/waist/center"].length
    assert said.measured == pytest.approx(abs(joint - 74.0), abs=0.1)
    assert panel_notches(pattern) == []


def test_a_seam_that_is_not_there_is_lost() -> None:
    assert code(dress(("panel_notches", "n", {"seam": "dress/middle"}))) == "name-lost"
