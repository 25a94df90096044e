"""Every block on bodies whose left differs in one measure: drafted whole, and both sides close.

Closures are measured on each side by numpy and shapely alone (see ``support.one_side`` and the judges),
against what was asked of that side.
"""

import pytest

from notchbook.app.examining import examine, subject_of
from notchbook.checks import closures
from notchbook.pattern import Pattern, Severity, pattern_from_data, pattern_to_data
from notchbook.pattern.names import split_side
from notchbook.recipe import Replay
from support.skirt_judge import moved_end
from support.two_sided import BLOCKS, GRID, broken_outlines, drafted, misses, two_sided

AGREES: dict[str, list[str]] = {"right": [], "left": []}


def of_one_side(pattern: Pattern) -> set[str]:
    """The names of edges that belong to one of the wearer's sides."""
    return {name for name in pattern.edges if split_side(name)[1] != "both"}


@pytest.mark.parametrize(("name", "key"), GRID)
def test_both_sides_close(name: str, key: str) -> None:
    done = drafted(name, two_sided(name, key))
    assert done.left is not None
    sided = of_one_side(done.pattern)
    assert {split_side(edge)[1] for edge in sided} == {"left", "right"}
    data = pattern_to_data(done.pattern)
    assert broken_outlines(data) == []
    assert misses(name, done, data) == AGREES


def still_open(done: Replay) -> set[str]:
    """What the house's own closures find open, and its checks stop, under names without their side."""
    found = {one.name for one in closures(subject_of(done)) if not one.agrees}
    found |= {f"{one.code}: {one.where}" for one in examine(done).findings if one.severity is Severity.STOP}
    return {name.replace("@left", "").replace("@right", "") for name in found}


@pytest.mark.parametrize(("name", "key"), [(name, block.reads[-1]) for name, block in BLOCKS.items()])
def test_the_house_finds_no_more_than_on_bodies_alike(name: str, key: str) -> None:
    """Neither side shows what it would not show on a body of which both sides are like it."""
    measures = two_sided(name, key, turn=-1.0)
    alike = (measures.without(key, "left"), measures.with_value(key, measures.value(key, "left")))
    known = {one for body in alike for one in still_open(drafted(name, body))}
    assert still_open(drafted(name, measures)) <= known


@pytest.mark.parametrize("name", BLOCKS)
def test_all_measures_together(name: str) -> None:
    done = drafted(name, two_sided(name, *BLOCKS[name].reads))
    assert broken_outlines(pattern_to_data(done.pattern)) == []
    assert misses(name, done) == AGREES


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("name", BLOCKS)
def test_an_edge_that_is_moved_on_one_side_is_seen_on_that_side(name: str, side: str) -> None:
    """A planted fault: the waist (of a block cut close: shoulder, leg opening) ends 0.3 mm farther out."""
    done = drafted(name, two_sided(name, *BLOCKS[name].reads))
    data = pattern_to_data(done.pattern)
    moved = next(
        thing["name"]
        for piece in data["pieces"]
        for thing in (*piece["outline"], *piece["lines"])
        if f"/{BLOCKS[name].girth}" in thing["name"] and thing["name"].endswith(f"@{side}")
    )
    found = misses(name, done, moved_end(data, moved, 0.3, 0.0))
    other = "left" if side == "right" else "right"
    assert found[side] != []
    assert found[other] == []


def test_the_judge_sees_a_side_that_was_asked_for_something_else() -> None:
    """Judged by the measures of a body that is alike on both sides, the left does not close."""
    done = drafted("skirt", two_sided("skirt", "hip_girth"))
    found = misses("skirt", drafted("skirt", BLOCKS["skirt"].body()), pattern_to_data(done.pattern))
    assert found["right"] == []
    assert found["left"] == ["hip"]


def test_a_whole_pattern_keeps_in_its_file() -> None:
    done = drafted("dress", two_sided("dress", "shoulder_slope", "hip_depth"))
    data = pattern_to_data(done.pattern)
    assert pattern_to_data(pattern_from_data(data)) == data
