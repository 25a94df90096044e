"""Every closure that a block promises can fail: drafted from other numbers than were asked, it does.

The numbers are falsified between the step and the code that draws, as a fault in that code would; what is
promised must not follow them.
"""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from notchbook.blocks.bodice_pieces.below_waist import HipGiven, HipHalf, draft_to_hip
from notchbook.blocks.joined.skirt_to_waist import SkirtGiven, draft_skirt
from notchbook.blocks.set_in.draft import draft_sleeve
from notchbook.blocks.set_in.given import SleeveGiven
from notchbook.blocks.set_in.shapes import SleeveHalf
from notchbook.blocks.upper import draft_bodice
from notchbook.blocks.upper.given import BodiceGiven
from notchbook.blocks.upper.shapes import BodiceHalf
from notchbook.body import MeasureSet
from notchbook.checks.promised import promised
from notchbook.recipe import Replay
from support.bodice_bodies import CHILD, FULL_BUST, MAN, WOMAN, bodice_run, body
from support.joined_blocks import drafted
from support.sleeve_bodies import sleeve_run, woman

AGREES = 0.1
"""mm: the house's limit for closures."""

BODICE = "notchbook.blocks.bodice_pieces.two_sides.kept_bodice"
TO_HIP = "notchbook.blocks.bodice_pieces.two_sides.draft_to_hip"
SKIRT = "notchbook.blocks.dress.draft_skirt"
SLEEVE = "notchbook.blocks.sleeve.draft_sleeve"
"""Where the steps call the code that draws."""

Patch = pytest.MonkeyPatch


def broken(run: Replay) -> set[str]:
    """The promises that the finished pattern does not keep, without the name of their block."""
    assert run.suspended is None, str(run.suspended)
    found = ((promise, promised(run.pattern, promise)) for promise in run.expectations)
    return {
        promise.name.rpartition("/")[2]
        for promise, (measured, gone) in found
        if gone or abs(measured - promise.wanted) > AGREES
    }


def falsified_bodice(patch: Patch, change: Callable[[BodiceGiven], BodiceGiven]) -> None:
    patch.setattr(BODICE, lambda given: draft_bodice(change(given)))


def falsified_half(patch: Patch, change: Callable[[BodiceHalf], BodiceHalf]) -> None:
    patch.setattr(BODICE, lambda given: change(draft_bodice(given)))


def more(field: str, by: float) -> Callable[[Any], Any]:
    return lambda given: replace(given, **{field: getattr(given, field) + by})


def more_bust(field: str, by: float) -> Callable[[BodiceGiven], BodiceGiven]:
    return lambda given: replace(given, bust_shape=more(field, by)(given.bust_shape))


WITH_UPPER_BUST = body(WOMAN, upper_bust_girth=885.0)
MEASURED_MAN = body(MAN, "men", center_front_length=385.0)


@pytest.mark.parametrize(
    ("change", "closure"),
    [
        (more("bust", 12.0), "bust_girth"),
        (more("waist", 12.0), "waist_girth"),
        (more("neck", 6.0), "neck_base_girth"),
        (more("across_back", 16.0), "across_back"),
        (more("across_chest", 16.0), "across_chest"),
        (more("back_length", 10.0), "back_waist_length"),
        (more("scye_depth", 20.0), "scye_depth"),
        (more("shoulder", 6.0), "shoulder_length"),
        (more("upper_bust", -30.0), "upper_bust_girth"),
        (more_bust("center_front", -8.0), "center_front_length"),
        (more_bust("front_length", 8.0), "front_waist_length"),
        (more_bust("neck_to_bust_point", 8.0), "neck_to_bust_point"),
        (more_bust("point_width", 10.0), "bust_point_width"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_a_bodice_from_other_numbers_breaks_its_promise(
    monkeypatch: Patch, change: Callable[[BodiceGiven], BodiceGiven], closure: str
) -> None:
    falsified_bodice(monkeypatch, change)
    assert closure in broken(bodice_run(WITH_UPPER_BUST))


@pytest.mark.parametrize(
    ("change", "closure"),
    [
        (more("back_length", 10.0), "back_waist_length"),
        (more("scye_depth", 15.0), "scye_depth"),
        (more("center_front", 6.0), "center_front_length"),
        (more("across_back", 16.0), "across_back"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_a_bodice_without_bust_shaping_breaks_its_promise(
    monkeypatch: Patch, change: Callable[[BodiceGiven], BodiceGiven], closure: str
) -> None:
    falsified_bodice(monkeypatch, change)
    assert closure in broken(bodice_run(MEASURED_MAN))


@pytest.mark.parametrize("which", ["back", "front"])
def test_a_width_drawn_elsewhere_than_its_lever_says_breaks_the_promise(
    monkeypatch: Patch, which: str
) -> None:
    def wider(half: BodiceHalf) -> BodiceHalf:
        panel = getattr(half, which)
        return replace(half, **{which: replace(panel, across=replace(panel.across, x=panel.across.x + 8.0))})

    falsified_half(monkeypatch, wider)
    assert {"back": "across_back", "front": "across_chest"}[which] in broken(bodice_run(body()))


@pytest.mark.parametrize("block", ["bodice", "torso", "dress"])
def test_a_hip_from_another_girth_breaks_its_promise(monkeypatch: Patch, block: str) -> None:
    parameters = {"bodice": {"length": "hip"}, "torso": {}, "dress": {"waist_seam": "none"}}[block]

    def falsified(given: BodiceGiven, hip: HipGiven) -> HipHalf:
        return draft_to_hip(given, replace(hip, hip=hip.hip + 20.0))

    monkeypatch.setattr(TO_HIP, falsified)
    assert "hip_girth" in broken(drafted(block, body(), **parameters))


def test_a_skirt_of_a_dress_from_another_hip_breaks_its_promise(monkeypatch: Patch) -> None:
    def falsified(given: SkirtGiven) -> Any:
        return draft_skirt(replace(given, hip=given.hip + 20.0))

    monkeypatch.setattr(SKIRT, falsified)
    assert "hip_girth" in broken(drafted("dress", body()))


FULL_ELBOW = woman(elbow_girth=330.0)
"""So full at the elbow that it decides how the sleeve narrows."""


def falsified_sleeve(patch: Patch, change: Callable[[SleeveGiven], SleeveGiven]) -> None:
    patch.setattr(SLEEVE, lambda given: draft_sleeve(change(given)))


@pytest.mark.parametrize(
    ("measures", "parameters", "change", "closure"),
    [
        (None, {}, more("biceps", 12.0), "upper_arm_girth"),
        (None, {}, more("hem", 15.0), "wrist_girth"),
        (None, {"length": "short"}, more("hem", 15.0), "hem_girth"),
        (None, {"length": "three_quarter"}, more("hem", 15.0), "hem_girth"),
        (None, {}, more("length", 12.0), "arm_length"),
        (None, {"length": "short"}, more("length", 12.0), "sleeve_length"),
        (None, {"own_length": "300 mm"}, more("length", 12.0), "sleeve_length"),
        (None, {"length": "cap"}, more("below_underarm", 6.0), "sleeve_length"),
        (None, {}, more("cap_ease", 6.0), "cap_front_length"),
        (None, {}, more("cap_ease", 6.0), "cap_back_length"),
        (None, {}, more("hem", 15.0), "elbow_girth"),
        (FULL_ELBOW, {}, more("elbow", 8.0), "elbow_girth"),
        (FULL_ELBOW, {"elbow": "dart"}, more("elbow", 8.0), "elbow_girth"),
        (FULL_ELBOW, {"elbow": "ease"}, more("elbow", 8.0), "elbow_girth"),
        (None, {"keep": "cap_height", "cap_height": "135 mm"}, more("cap_height", 6.0), "cap_height"),
    ],
)
def test_a_sleeve_from_other_numbers_breaks_its_promise(
    monkeypatch: Patch,
    measures: MeasureSet | None,
    parameters: dict[str, Any],
    change: Callable[[SleeveGiven], SleeveGiven],
    closure: str,
) -> None:
    assert broken(sleeve_run(measures, **parameters)) == set()
    falsified_sleeve(monkeypatch, change)
    assert closure in broken(sleeve_run(measures, **parameters))


def test_a_sleeve_narrower_than_asked_breaks_its_promise_whatever_its_lever_says(monkeypatch: Patch) -> None:
    def narrowed(given: SleeveGiven) -> SleeveHalf:
        half = draft_sleeve(replace(given, biceps=given.biceps - 12.0))
        levers = tuple(
            replace(lever, pulled=-12.0) if lever.name == "biceps_widened" else lever for lever in half.levers
        )
        return replace(half, levers=levers)

    monkeypatch.setattr(SLEEVE, narrowed)
    assert "upper_arm_girth" in broken(sleeve_run())


def test_a_sleeve_with_a_hem_drawn_wider_than_its_lever_says_breaks_its_promise(monkeypatch: Patch) -> None:
    def wider(given: SleeveGiven) -> SleeveHalf:
        half = draft_sleeve(replace(given, hem=given.hem + 5.0))
        return replace(half, levers=draft_sleeve(given).levers)

    monkeypatch.setattr(SLEEVE, wider)
    assert "wrist_girth" in broken(sleeve_run())


@pytest.mark.parametrize(
    "measures",
    [
        WITH_UPPER_BUST,
        MEASURED_MAN,
        body(MAN, "men"),
        body(CHILD, None),
        body(FULL_BUST, center_front_length=330.0),
        body(WOMAN, across_back=400.0, shoulder_length=110.0),
        body(WOMAN, across_back=310.0),
        body(WOMAN, waist_girth=960.0),
    ],
    ids=["full", "man", "man, no front", "child", "deep neck", "wide back", "narrow back", "full waist"],
)
def test_real_bodices_keep_every_promise(measures: MeasureSet) -> None:
    assert broken(bodice_run(measures)) == set()
    assert broken(bodice_run(measures, length="hip")) == set()


@pytest.mark.parametrize("measures", [body(), body(MAN, "men"), body(WOMAN, waist_girth=1010.0)])
@pytest.mark.parametrize("waist_seam", ["seam", "none"])
def test_real_dresses_keep_every_promise(measures: MeasureSet, waist_seam: str) -> None:
    assert broken(drafted("dress", measures, waist_seam=waist_seam)) == set()


@pytest.mark.parametrize("measures", [None, FULL_ELBOW])
@pytest.mark.parametrize("elbow", ["none", "dart", "ease"])
def test_real_sleeves_keep_every_promise(measures: MeasureSet | None, elbow: str) -> None:
    assert broken(sleeve_run(measures, elbow=elbow)) == set()


def test_a_body_with_two_sides_keeps_every_promise() -> None:
    uneven = body(FULL_BUST)
    for key, value in (("shoulder_slope", 29.0), ("shoulder_length", 129.0), ("scye_depth", 208.0)):
        uneven = uneven.with_value(key, value, "left")
    assert broken(bodice_run(uneven)) == set()
    for key, value in (("front_waist_length", 470.0), ("hip_depth", 206.0)):
        uneven = uneven.with_value(key, value, "left")
    assert broken(bodice_run(uneven, length="hip")) == set()
