"""Why an edge is so: the ledger read backward, how far each step moved it, and what moves it now."""

import math

import pytest

from notchbook.app.comparing.difference_words import difference_words
from notchbook.app.comparing.styles import compare_styles
from notchbook.app.demo import demo_form, demo_recipe
from notchbook.app.drafting import draft
from notchbook.app.why.explaining_names import line_moved, why_so
from notchbook.app.why.what_moves import movers
from notchbook.app.why.why_words import deed_words, mover_words, order_words, read_words
from notchbook.errors import InputError
from notchbook.recipe import Replay, add_step, change_step, move_step, remove_step, replay
from notchbook.units import LengthStyle

CM = LengthStyle("cm")


@pytest.fixture(scope="module")
def skirt() -> Replay:
    return replay(demo_recipe(demo_form()), demo_form())


def longer(run: Replay, amount: str = "50 mm") -> Replay:
    recipe = add_step(
        run.recipe,
        "change_length",
        {"amount": amount, "hems": ["skirt.front/hem", "skirt.back/hem"]},
        base=run.measures,
    )
    return replay(recipe, run.measures)


def test_an_edge_tells_the_step_that_made_it_and_what_it_read(skirt: Replay) -> None:
    why = why_so(skirt, "skirt.front/side_seam")
    (made,) = why.doings
    assert (made.record.id, made.deed, made.moved) == ("skirt-1", "made", None)
    reads = {read.key: read.measure for read in made.reads}
    assert reads["hip_girth"] == skirt.measures.find("hip_girth")
    assert reads["belly_depth"] is None
    words = read_words(made.reads, CM, skirt.measures.population)
    assert words[0].startswith("measured: ") and "hip girth 97.0 cm" in words[0]
    assert words[-1].startswith("asked for, not taken: ")
    assert order_words(made, CM).startswith("waist ease 1.5 cm")


def test_a_later_step_tells_by_how_much_it_moved_the_edge() -> None:
    run = longer(draft("skirt", demo_form()))
    why = why_so(run, "skirt.front/hem")
    assert [doing.record.id for doing in why.doings] == ["skirt-1", "change_length-1"]
    moved = why.doings[-1].moved
    assert moved == pytest.approx(50.0, abs=0.01)  # a straight skirt: the hem goes down by the amount
    assert "by up to" in deed_words(why.doings[-1], CM)


def test_an_edge_that_was_divided_remembers_where_it_came_from(skirt: Replay) -> None:
    why = why_so(skirt, "skirt.back/center_back/seam")
    assert [(doing.record.operation, doing.deed) for doing in why.doings][:2] == [
        ("skirt", "made"),
        ("vent", "divided"),
    ]
    assert why.doings[1].came_from == ("skirt.back/center_back",)


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("skirt.front", "piece"),
        ("skirt.front/waist_dart_center", "intake"),
        ("skirt/side_seam", "seam"),
        ("skirt.front/waist_side", "point"),
        ("skirt.front/hip_line", "line"),
        ("skirt.back/waist", "group"),
    ],
)
def test_everything_that_has_a_name_has_a_history(skirt: Replay, name: str, kind: str) -> None:
    why = why_so(skirt, name)
    assert (why.name, why.kind) == (name, kind)
    assert why.doings[0].record.id == "skirt-1" and why.doings[0].deed == "made"


def test_names_are_found_by_a_single_word_only_where_it_fits_one_thing(skirt: Replay) -> None:
    assert why_so(skirt, "center_front").name == "skirt.front/center_front"
    with pytest.raises(InputError) as several:
        why_so(skirt, "hip_line")
    assert several.value.code == "explain-name-ambiguous"
    with pytest.raises(InputError) as none:
        why_so(skirt, "skirt.front/hemm")
    assert none.value.code == "explain-name-unknown" and "skirt.front/hem" in none.value.next_step()


def test_what_moves_an_edge_is_tried_and_what_does_not_is_left_out(skirt: Replay) -> None:
    moving = {one.word: one for one in movers(skirt, why_so(skirt, "skirt.front/hem"))}
    # A hem of a straight skirt: a centimeter of length lowers it by one, of hip widens a quarter of one.
    assert moving["skirt-1.length"].moved == pytest.approx(10.0, abs=0.01)
    assert moving["hip_girth"].moved == pytest.approx(2.5, abs=0.1)
    assert "skirt-1.front_dart_length" not in moving
    assert mover_words(moving["skirt-1.length"], CM)[1:] == ("+1.0 cm", "1.0 cm")


def test_the_sides_have_histories_of_their_own() -> None:
    body = demo_form()
    hip = body.values["hip_depth"]
    sided = body.with_value("outside_leg", type(hip)(1040.0), "left").with_value(
        "outside_leg", type(hip)(1030.0), "right"
    )
    run = draft("skirt", sided)
    if run.left is None:
        pytest.skip("the skirt is drafted once for this body")
    name = next(one for one in run.pattern.edges if one.endswith("side_seam@left"))
    assert why_so(run, name).doings[0].record.id == "skirt-1"


def test_styles_are_compared_step_by_step_and_edge_by_edge(skirt: Replay) -> None:
    recipe = change_step(skirt.recipe, "skirt-1", {"length": "65 cm"}, base=skirt.measures)
    recipe = remove_step(recipe, "waistband-1")
    wider = skirt.measures.values["hip_girth"]
    body = skirt.measures.with_value("hip_girth", type(wider)(wider.value + 40.0))
    other = replay(recipe, body)
    found = compare_styles(skirt, other)
    assert [record.id for record in found.removed] == ["waistband-1"] and not found.added
    assert [(one.path, one.before, one.after) for one in found.fields] == [("length", "62 cm", "65 cm")]
    assert [one.key for one in found.measures] == ["hip_girth"]
    moved = {one.name: one.moved for one in found.moved}
    # The side end of the hem goes 30 mm down and a quarter of 40 mm outward; with the hip the drop of the
    # waist at the center changes by a few millimeters, and with it where the hem lies.
    assert moved["skirt.front/hem"] == pytest.approx(math.hypot(30.0, 10.0), abs=3.0)
    assert "waistband.band/upper" in found.gone or any(name.startswith("waistband") for name in found.gone)
    lines = list(difference_words(found, "cm"))
    assert "Draft skirt, length: 62 cm → 65 cm" in lines and any("taken out" in line for line in lines)


def test_a_style_against_itself_has_no_difference(skirt: Replay) -> None:
    assert compare_styles(skirt, skirt).is_none
    again = replay(
        change_step(skirt.recipe, "skirt-1", {"length": "620 mm"}, base=skirt.measures), skirt.measures
    )
    assert [one.path for one in compare_styles(skirt, again).fields] == ["length"]  # written otherwise


def test_a_step_at_another_place_is_told_once(skirt: Replay) -> None:
    moved = replay(move_step(skirt.recipe, "zip_opening-1", "vent-1"), skirt.measures)
    assert [record.id for record in compare_styles(skirt, moved).reordered] in (
        ["zip_opening-1"],
        ["vent-1"],
    )


def test_a_line_that_did_not_move_moved_by_nothing(skirt: Replay) -> None:
    for name in ("skirt.front/hem", "skirt.front/waist_side", "skirt.front/hip_line"):
        assert line_moved(skirt.pattern, skirt.pattern, name) == 0.0
    assert line_moved(skirt.pattern, skirt.pattern, "skirt.front/nothing") is None
