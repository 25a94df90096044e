"""What sleeves and pockets cannot be is refused in the words of the step, not found later or told in code."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from notchbook.pattern import Severity
from notchbook.recipe import Replay, add_step, replay
from support.closure_steps import BACK_OPENING, STAND
from support.edge_steps import applied, bodice, refusal, skirt, trousers
from support.pockets import IN_SEAM, PATCH, SLANT, WELT
from support.sleeve_styles import (
    BISHOP,
    PLACKET,
    SLEEVE,
    kimono,
    plain,
    sleeve_style,
    stopped_with,
    two_piece,
)
from support.traced_steps import NECK

GUSSETED = {"angle": 20, "depth": "4 cm", "gusset": "9 cm"}
LOOPS = {"edge": "bodice.front/center_front", "top": "bodice.front/neck_pit", "length": "20 cm"}
CUT_ON: dict[str, Any] = {"top": {"bust_dart": "shoulder"}, "length": "none"}


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"gusset": "0.01 mm"}, "kimono-gusset-small"),
        ({"gusset": "10 mm"}, "kimono-gusset-small"),
        ({"gusset": "20 mm"}, "kimono-gusset-small"),
        ({"gusset": "30 cm"}, "kimono-gusset-large"),
        ({"gusset": "10000 cm"}, "kimono-gusset-large"),
        ({"hem": "200 cm"}, "kimono-crosses"),
        ({"hem": "200 cm", "gusset": None}, "kimono-crosses"),
    ],
)
def test_a_cut_on_sleeve_that_cannot_be_drawn_is_refused(changes: dict[str, Any], code: str) -> None:
    step = ("kimono_sleeve", "kimono", {**GUSSETED, **changes})
    assert stopped_with(sleeve_style([step], **CUT_ON)) == code


def test_a_gusset_just_large_enough_is_drawn() -> None:
    """Nothing of what can be sewn is refused with it: 25 mm leave a slash of more than 20."""
    done = sleeve_style([("kimono_sleeve", "kimono", {**GUSSETED, "gusset": "25 mm"})], **CUT_ON)
    assert done.suspended is None, str(done.suspended)
    slash = done.pattern.pieces["bodice.front"].line("kimono.front/slash_line").path
    assert slash.length > 15.0


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"hind_arm_hem": "200 cm"}, "two-piece-hem-narrow"),
        ({"hind_arm_hem": "20 cm"}, "two-piece-hem-narrow"),
        ({"bend": "200 cm"}, "two-piece-crosses"),
        ({"bend_reach": "0.01 mm"}, "two-piece-crosses"),
        ({"bend": "-1 mm"}, "amount-negative"),
        ({"forearm_shift": "-30 mm"}, "amount-negative"),
        ({"hind_arm_shift": "-30 mm"}, "amount-negative"),
        ({"hind_arm_hem": "-1 mm"}, "amount-negative"),
    ],
)
def test_a_two_piece_sleeve_that_cannot_be_drawn_is_refused(changes: dict[str, Any], code: str) -> None:
    assert stopped_with(sleeve_style([("two_piece_sleeve", "arm", changes)])) == code


@pytest.mark.parametrize(
    ("operation", "field", "length"),
    [
        ("puff_sleeve", "cap_height", "short"),
        ("bishop_sleeve", "drop", "long"),
        ("leg_of_mutton_sleeve", "cap_height", "long"),
        ("raglan_sleeve", "above", "long"),
    ],
)
def test_no_sleeve_is_higher_or_lower_by_less_than_nothing(operation: str, field: str, length: str) -> None:
    step = (operation, "shaped", {field: "-30 mm"})
    assert stopped_with(sleeve_style([step], top={"back_shoulder": "ease"}, length=length)) == (
        "amount-negative"
    )


@pytest.mark.parametrize("field", ["pleat", "raised", "sleeve_raised", "shorter"])
def test_no_lining_has_less_than_no_room(field: str) -> None:
    asked = {
        "pieces": ["bodice.front", "bodice.back", SLEEVE],
        "centers": ["bodice.back/center_back"],
        "armholes": [
            {"edge": f"bodice.{which}/armhole", "underarm": f"bodice.{which}/underarm"}
            for which in ("front", "back")
        ],
        "hems": [f"{SLEEVE}/hem"],
    }
    assert refusal(plain(), "lining", **asked, **{field: "-30 mm"}) == "amount-negative"


UNUSUAL: list[tuple[str, str, str, dict[str, Any]]] = [
    ("puff_sleeve", "short", "cap_height", {"cap_height": "8 cm"}),
    ("leg_of_mutton_sleeve", "long", "cap_height", {"cap_height": "12 cm"}),
    ("bishop_sleeve", "long", "drop", {"drop": "10 cm"}),
    ("cap_sleeve", "long", "length", {"length": "13 cm"}),
    ("two_piece_sleeve", "long", "forearm_shift", {"forearm_shift": "35 mm"}),
    ("two_piece_sleeve", "long", "hind_arm_shift", {"hind_arm_shift": "35 mm"}),
    ("two_piece_sleeve", "long", "bend", {"bend": "5 mm"}),
    ("raglan_sleeve", "long", "front_neck", {"front_neck": "1 cm"}),
    ("raglan_sleeve", "long", "back_neck", {"back_neck": "5 cm"}),
    ("raglan_sleeve", "long", "above", {"above": "45 mm"}),
    ("sleeve_placket", "long", "length", {"length": "1 cm"}),
    ("sleeve_placket", "long", "strip_width", {"strip_width": "1 mm"}),
    ("sleeve_placket", "long", "tower_width", {"kind": "tower", "tower_width": "60 mm"}),
    ("cuff", "long", "depth", {"depth": "5 mm"}),
]


@pytest.mark.parametrize(("operation", "length", "field", "asked"), UNUSUAL, ids=lambda one: str(one))
def test_an_unusual_amount_is_told_and_drawn(
    operation: str, length: str, field: str, asked: dict[str, Any]
) -> None:
    """Outside of what the table of figures has from the trade; what the step takes by itself lies within."""
    top = {"back_shoulder": "ease"}
    for given, wanted in ((asked, [field.replace("_", " ")]), ({}, [])):
        done = sleeve_style([(operation, "shaped", given)], top=top, length=length, fabric="shirting")
        assert done.suspended is None, str(done.suspended)
        told = [note for note in done.notes if note.code == "amount-unusual"]
        assert [dict(note.facts)["field"] for note in told] == wanted
        assert all(note.severity is Severity.LOOK for note in told)


def test_unusual_buttons_and_laps_of_a_cuff_are_told_where_it_has_them() -> None:
    asked = {"button": "2 mm", "overlap": "90 mm"}
    tower = ("sleeve_placket", "placket", {"kind": "tower"})
    said = []
    for before in ([PLACKET], [tower], []):
        done = sleeve_style([BISHOP, *before, ("cuff", "cuff", asked)])
        notes = [note for note in done.notes if note.code == "amount-unusual"]
        said.append([dict(note.facts)["field"] for note in notes])
    assert said == [["button", "overlap"], ["button"], []]


def test_a_hem_of_a_cut_on_sleeve_far_from_the_wrist_is_told() -> None:
    for hem, wanted in (("20 cm", ["hem over the wrist"]), ("26 cm", [])):
        done = sleeve_style([("kimono_sleeve", "kimono", {"hem": hem})], **CUT_ON)
        notes = [note for note in done.notes if note.code == "amount-unusual"]
        assert [dict(note.facts)["field"] for note in notes] == wanted


@pytest.mark.parametrize("operation", ["puff_sleeve", "leg_of_mutton_sleeve"])
def test_a_cap_that_would_swell_over_its_sleeve_is_refused(operation: str) -> None:
    step = (operation, "shaped", {"cap_height": "10000 cm"})
    assert stopped_with(sleeve_style([step])) == "sleeve-cap-crosses"


def test_a_raglan_in_one_piece_whose_shoulders_lap_is_refused() -> None:
    """The sides of the dart between them would cross; parted, the same sleeve is sewn."""
    for shoulder, code in (("dart", "raglan-dart-laps"), ("seam", None)):
        step = ("raglan_sleeve", "raglan", {"shoulder": shoulder, "above": "0 mm"})
        done = sleeve_style([step], top={"back_shoulder": "ease"}, fabric="shirting")
        assert (stopped_with(done) if done.suspended else None) == code


def test_a_slanted_opening_does_not_bow_toward_the_side() -> None:
    assert refusal(trousers(), "slant_pocket", **SLANT, bow="-30 mm") == "amount-negative"


@pytest.mark.parametrize("flap", [False, True])
def test_a_slit_too_short_for_its_holes_and_corners_is_refused(flap: bool) -> None:
    assert refusal(trousers(), "welt_pocket", **{**WELT, "opening": "1 mm"}, flap=flap) == (
        "pocket-opening-small"
    )


def test_a_flap_narrower_than_its_turns_is_refused() -> None:
    thin = {"width": "1 mm", "bottom": "square", "flap": True, "flap_wider": "0 mm"}
    assert refusal(skirt(), "patch_pocket", **{**PATCH, **thin}) == "pocket-flap-small"


@pytest.mark.parametrize(("facing", "code"), [("0.01 mm", "pocket-facing-narrow"), ("10 mm", None)])
def test_a_strip_on_a_bag_that_covers_nothing_is_refused(facing: str, code: str | None) -> None:
    done = applied(trousers(), "pocket_bag", **IN_SEAM, facing=facing)
    assert (stopped_with(done) if done.suspended else None) == code


def test_what_was_drawn_before_still_is() -> None:
    """The limits refuse none of the styles that the other tests look at."""
    assert two_piece().suspended is None
    assert kimono().suspended is None
    assert applied(trousers(), "welt_pocket", **{**WELT, "opening": "3 cm"}).suspended is None


def opened_front() -> Replay:
    return applied(bodice(), "center_seam", center="bodice.front/center_front")


@pytest.mark.parametrize(
    ("base", "operation", "asked", "count", "code"),
    [
        (bodice, "button_stand", STAND, "number", "buttons-uncounted"),
        (opened_front, "button_loops", LOOPS, "number", "buttons-uncounted"),
        (skirt, "belt_loops", {"edges": BACK_OPENING}, "each_side", "loops-uncounted"),
    ],
)
def test_a_recipe_that_lost_its_count_is_refused(
    base: Callable[[], Replay], operation: str, asked: dict[str, Any], count: str, code: str
) -> None:
    """The count is written down when the step is added; a file that was edited by hand may lack it."""
    done = applied(base(), operation, **asked)
    assert done.suspended is None, str(done.suspended)
    *others, last = done.recipe.steps
    assert last.parameters[count] is not None
    bare = replace(last, parameters={**last.parameters, count: None})
    assert stopped_with(replay(done.recipe.with_steps((*others, bare)), done.measures)) == code


def test_a_zip_lets_the_head_through_a_closed_neck() -> None:
    """A neck of two closed centers is smaller than this head; a zip at the center back opens it."""
    zipped = {"edge": "bodice.back/center_back", "from_point": "bodice.back/nape", "length": "20 cm"}
    head = bodice().measures.with_value("head_girth", 560.0)
    said = []
    seamed = {"center": "bodice.back/center_back"}
    for steps in ((), (("center_seam", seamed), ("zip_opening", zipped))):
        recipe = bodice().recipe
        for operation, asked in (*steps, ("flat_collar", {"neck": NECK})):
            recipe = add_step(recipe, operation, asked, base=bodice().measures, slug=operation)
        done = replay(recipe, head)
        assert done.suspended is None, str(done.suspended)
        said.append("collar-under-head" in {note.code for note in done.notes})
    assert said == [True, False]
