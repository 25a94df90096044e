"""A name is Found, Ambiguous or Lost; never the nearest thing."""

import pytest

from notchbook.errors import NameLost
from notchbook.pattern import (
    Ambiguous,
    Fate,
    Found,
    Group,
    Lost,
    Pattern,
    frozen_map,
    require,
    require_one,
    resolve,
)
from notchbook.pattern.resolve import Wanted
from support.hand_skirt import hand_skirt

WAIST = ("skirt.back/waist/side_side", "skirt.back/waist/middle", "skirt.back/waist/center_side")


def grouped(**groups: tuple[str, ...]) -> Pattern:
    """The skirt with more groups, named ``skirt.back/<word>``."""
    pattern = hand_skirt()
    more = {f"skirt.back/{word}": Group(members, "cut_1") for word, members in groups.items()}
    return Pattern(
        pieces=pattern.pieces,
        seams=pattern.seams,
        notches=pattern.notches,
        groups=frozen_map({**pattern.groups, **more}),
        fates=frozen_map(
            {
                "skirt.back/vent": Fate("removed", (), "plain_1", "the vent was taken out"),
                "skirt.back/yoke_seam": Fate("merged", ("skirt.back/hem",), "join_2", "joined"),
            }
        ),
    )


@pytest.mark.parametrize(
    ("name", "wanted"),
    [
        ("skirt.back/hem", "edge"),
        ("skirt.back/hem", "run"),
        ("skirt.back", "piece"),
        ("skirt.back/hem_side", "point"),
        ("skirt.back/side_dart", "intake"),
        ("skirt/side_seam", "seam"),
        ("skirt.back/side_seam/hip", "notch"),
    ],
)
def test_a_living_name_is_found(name: str, wanted: Wanted) -> None:
    answer = resolve(hand_skirt(), name, wanted)
    assert answer == Found(name, (name,))
    assert require_one(hand_skirt(), name, wanted) == name


@pytest.mark.parametrize(
    ("name", "wanted", "reason"),
    [
        ("skirt.back/hem", "piece", "it names an edge, and a piece is needed"),
        ("skirt.back/hem_side", "edge", "it names a point, and an edge is needed"),
        ("skirt.back", "intake", "it names a piece, and an intake is needed"),
        ("skirt.back/waist", "point", "it names a group of edges"),
    ],
)
def test_a_name_of_another_kind_is_lost(name: str, wanted: Wanted, reason: str) -> None:
    assert resolve(hand_skirt(), name, wanted) == Lost(name, (), "", reason)


def test_a_split_edge_is_a_run_but_not_one_edge() -> None:
    pattern = hand_skirt()
    assert resolve(pattern, "skirt.back/waist") == Found("skirt.back/waist", WAIST)
    assert resolve(pattern, "skirt.back/waist", "edge") == Ambiguous("skirt.back/waist", WAIST, "skirt")
    with pytest.raises(NameLost) as refused:
        require_one(pattern, "skirt.back/waist")
    assert refused.value.code == "name-ambiguous"
    assert "skirt.back/waist/middle" in refused.value.text()


def test_groups_within_groups_are_expanded_in_order() -> None:
    pattern = grouped(round=("skirt.back/hem", "skirt.back/waist"))
    assert require(pattern, "skirt.back/round") == ("skirt.back/hem", *WAIST)


def test_a_group_that_lost_a_part_is_lost_and_says_by_whom() -> None:
    pattern = grouped(round=("skirt.back/hem", "skirt.back/vent"))
    answer = resolve(pattern, "skirt.back/round")
    assert isinstance(answer, Lost)
    assert (answer.candidates, answer.by) == (("skirt.back/hem",), "plain_1")
    assert "the vent was taken out" in answer.reason


def test_an_empty_group_is_lost() -> None:
    assert isinstance(resolve(grouped(round=()), "skirt.back/round"), Lost)


def test_a_group_within_itself_is_lost_and_not_endless() -> None:
    pattern = grouped(one=("skirt.back/other",), other=("skirt.back/one", "skirt.back/hem"))
    assert isinstance(resolve(pattern, "skirt.back/one"), Lost)


def test_a_name_that_is_gone_tells_its_fate() -> None:
    pattern = grouped()
    removed, merged = resolve(pattern, "skirt.back/vent"), resolve(pattern, "skirt.back/yoke_seam")
    assert removed == Lost("skirt.back/vent", (), "plain_1", "the vent was taken out")
    assert merged == Lost("skirt.back/yoke_seam", ("skirt.back/hem",), "join_2", "joined")
    with pytest.raises(NameLost) as refused:
        require(pattern, "skirt.back/yoke_seam")
    assert refused.value.code == "name-lost"
    assert "join_2" in refused.value.next_step()


def test_a_name_that_never_was_is_lost() -> None:
    answer = resolve(hand_skirt(), "skirt.back/peplum")
    assert answer == Lost("skirt.back/peplum", (), "", "nothing of this pattern ever had this name")
    with pytest.raises(NameLost) as refused:
        require(hand_skirt(), "skirt.back/peplum")
    assert str(refused.value)


def test_where_the_sides_differ_a_plain_name_is_lost_with_both_as_candidates() -> None:
    pattern = hand_skirt()
    left = pattern.pieces["skirt.back"].renamed(lambda name: f"{name}@left")
    right = pattern.pieces["skirt.back"].renamed(lambda name: f"{name}@right")
    sided = pattern.with_pieces(left, right, without=("skirt.back",))
    answer = resolve(sided, "skirt.back/hem")
    assert isinstance(answer, Lost)
    assert answer.candidates == ("skirt.back/hem@left", "skirt.back/hem@right")
    assert resolve(sided, "skirt.back/hem@left") == Found("skirt.back/hem@left", ("skirt.back/hem@left",))
