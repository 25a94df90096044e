"""The names of the bodice: the same on every body, and those that other steps rely on."""

import pytest

from notchbook.pattern.vocabulary import words_of
from notchbook.recipe import replay
from support.bodice_bodies import CHILD, FULL_BUST, MAN, WOMAN, bodice, bodice_recipe, body

PLACES = ("side", "underarm", "shoulder", "armhole", "french", "center_front", "waist")

FRONT = [
    "center_front", "neck", "shoulder", "armhole", "side_seam/above", "bust_dart/upper_leg",
    "bust_dart/lower_leg", "side_seam/below", "waist/side", "waist_dart/side_leg", "waist_dart/center_leg",
    "waist/center",
]  # fmt: skip
BACK = [
    "waist/center", "waist_dart_center/center_leg", "waist_dart_center/side_leg", "waist/middle",
    "waist_dart_side/center_leg", "waist_dart_side/side_leg", "waist/side", "side_seam", "armhole",
    "shoulder/side", "shoulder_dart/side_leg", "shoulder_dart/center_leg", "shoulder/center", "neck",
    "center_back",
]  # fmt: skip


def test_the_edges_of_the_ordinary_bodice() -> None:
    pieces = bodice(body()).pieces
    for name, wanted in (("bodice.front", FRONT), ("bodice.back", BACK)):
        assert [edge.name.removeprefix(f"{name}/") for edge in pieces[name].outline] == wanted
        assert pieces[name].cut == "fold"


def test_the_points_that_others_rely_on() -> None:
    pieces = bodice(body()).pieces
    common = {"side_neck_point", "shoulder_point", "underarm", "waist_side", "waist_center"}
    front = {name.removeprefix("bodice.front/") for name in pieces["bodice.front"].points}
    back = {name.removeprefix("bodice.back/") for name in pieces["bodice.back"].points}
    assert common | {"neck_pit", "bust_point"} <= front
    assert common | {"nape"} <= back


def test_the_wearers_right_lies_left_in_front_and_right_behind() -> None:
    pieces = bodice(body()).pieces
    assert pieces["bodice.front"].bounds.max_x == pytest.approx(0.0, abs=1e-9)
    assert pieces["bodice.back"].bounds.min_x == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(
    ("place", "edge", "parts", "legs"),
    [
        ("side", "side_seam", ("above", "below"), ("upper", "lower")),
        ("underarm", "side_seam", ("above", "below"), ("upper", "lower")),
        ("french", "side_seam", ("above", "below"), ("upper", "lower")),
        ("armhole", "armhole", ("above", "below"), ("upper", "lower")),
        ("shoulder", "shoulder", ("center", "side"), ("center", "side")),
        ("center_front", "center_front", ("below", "above"), ("lower", "upper")),
        ("waist", "waist", ("side", "center"), ("side", "center")),
    ],
)
def test_the_bust_dart_divides_its_edge(
    place: str, edge: str, parts: tuple[str, str], legs: tuple[str, str]
) -> None:
    pattern = bodice(body(), bust_dart=place)
    whole = f"bodice.front/{edge}"
    assert pattern.groups[whole].members == tuple(f"{whole}/{part}" for part in parts)
    intake = pattern.intakes["bodice.front/bust_dart"]
    assert intake.mouth == whole
    assert (intake.first_leg, intake.second_leg) == tuple(f"bodice.front/bust_dart/{leg}_leg" for leg in legs)
    mouths = {f"bodice.front/bust_dart/{leg}_mouth" for leg in legs}
    assert mouths <= set(pattern.pieces["bodice.front"].points)


def test_the_names_are_the_same_on_another_body_with_the_same_recipe() -> None:
    recipe = bodice_recipe(body(FULL_BUST), contour="dart")
    flat = body(front_waist_length=408.0, center_front_length=330.0)
    one, other = replay(recipe, body(FULL_BUST)).pattern, replay(recipe, flat).pattern
    assert list(one.index) == list(other.index)
    assert other.pieces["bodice.front"].edge("bodice.front/bust_dart/upper_leg").length > 0.0


def test_center_front_dart_makes_the_front_a_pair_with_a_seam() -> None:
    pattern = bodice(body(), bust_dart="center_front")
    assert pattern.pieces["bodice.front"].cut == "pair"
    seam = pattern.seams["bodice/center_front"]
    assert [use.side for use in (*seam.first, *seam.second)] == ["right", "left"]
    assert "bodice/center_front" not in bodice(body()).seams


def test_seams_and_notches() -> None:
    pattern = bodice(body())
    assert set(pattern.seams) == {"bodice/shoulder", "bodice/side_seam"}
    kinds = {name: (notch.kind, notch.seam) for name, notch in pattern.notches.items()}
    assert kinds["bodice.front/balance_notch"] == ("single", None)
    assert kinds["bodice.back/balance_notch"] == ("double", None)
    assert (
        kinds["bodice.front/side_notch"] == kinds["bodice.back/side_notch"] == ("single", "bodice/side_seam")
    )


def test_every_word_is_in_the_vocabulary() -> None:
    patterns = [bodice(body(), bust_dart=place, contour="dart", front_darts=2) for place in PLACES]
    patterns.append(bodice(body(), length="hip"))
    patterns += [bodice(body(MAN, "men")), bodice(body(CHILD, None))]
    names = {name for pattern in patterns for name in pattern.index}
    words = {word for name in names for word in name.split("/")[1:]}
    assert sorted(word for word in words if not words_of(word)) == []


def test_without_bust_shaping_there_is_no_dart_in_front() -> None:
    for measures in (body(MAN, "men"), body(CHILD, None), body(WOMAN)):
        assert bodice(measures, bust_shaping="none").pieces["bodice.front"].intakes == ()
