"""A full arm: a little of its ease gives way, before the armhole must be lowered."""

from dataclasses import replace

import pytest

from notchbook.blocks.set_in.crown import crowned_cap
from notchbook.blocks.set_in.draft import draft_sleeve
from notchbook.blocks.set_in.full_arm import with_room
from notchbook.blocks.set_in.given import SleeveGiven
from notchbook.blocks.set_in.levers import half_width
from notchbook.blocks.set_in.room import draft_cap
from notchbook.errors import DraftRefused
from support.armholes import armhole, dense, sleeve


def share(given: SleeveGiven) -> float:
    return draft_sleeve(given).cap_height / given.armhole.girth


def lowering(given: SleeveGiven) -> float:
    """By how much the armhole must be lowered for a sleeve that is refused, mm."""
    with pytest.raises(DraftRefused, match="sleeve-arm-too-full") as refused:
        draft_sleeve(given)
    amount = refused.value.facts["lower_by"]
    assert isinstance(amount, float)
    return amount


def test_a_usual_arm_keeps_its_ease() -> None:
    assert with_room(sleeve(), 10.0) == sleeve()


def test_a_low_cap_takes_as_little_ease_as_lifts_it() -> None:
    full = sleeve(biceps=358.0)
    assert share(full) < 0.26
    given = with_room(full, 10.0)
    assert 0.0 < given.gave_way < 10.0
    assert given.biceps == full.biceps - given.gave_way
    assert share(given) >= 0.26
    assert share(replace(full, biceps=given.biceps + 2.0)) < 0.26


def test_a_boxy_cap_takes_less_ease_too() -> None:
    boxy = sleeve(armhole(wider=-15.0, higher=10.0), biceps=330.0)
    given = with_room(boxy, 10.0)
    wide = {one.biceps: half_width(draft_cap(one)[0]) / one.biceps for one in (boxy, given)}
    assert wide[given.biceps] <= 0.72 < wide[boxy.biceps]


def test_nothing_gives_way_where_it_would_not_heal_or_is_not_allowed() -> None:
    boxy = sleeve(armhole(wider=-22.0, higher=10.0), biceps=345.0)
    assert with_room(boxy, 4.0).gave_way in (0.0, 4.0)
    assert with_room(sleeve(biceps=358.0), 0.0).gave_way == 0.0
    kept = replace(sleeve(biceps=358.0), keep="cap_height", cap_height=110.0)
    assert with_room(kept, 10.0) == kept


def test_an_arm_without_room_gives_all_so_that_the_armhole_need_be_lowered_less() -> None:
    full = sleeve(biceps=385.0)
    given = with_room(full, 10.0)
    assert given.gave_way == 10.0
    assert lowering(given) < lowering(full)


def test_a_cap_that_leaves_its_armhole_is_refused_with_its_cure() -> None:
    narrow = sleeve(armhole(wider=-24.0, higher=10.0), biceps=340.0)
    cap, _ = crowned_cap(narrow)
    assert cap is not None
    assert cap.height > 0.25 * narrow.armhole.girth
    assert cap.front.laid_gap(60.0) > 3.0  # a patternmaker's review: 3 mm in front, 4 behind
    assert lowering(narrow) > 0.0
    asked = draft_sleeve(replace(narrow, pitch=3.0))  # who sets the pitch takes what it does to the cap
    assert asked.front_gap > 3.0


@pytest.mark.parametrize("biceps", [310.0, 335.0, 350.0])
def test_the_line_drawn_is_the_line_that_was_solved(biceps: float) -> None:
    """The cap was judged on the solved line: the drawn one may not stray by the margin kept."""
    given = sleeve(biceps=biceps)
    cap, _ = draft_cap(given)
    drawn = dense(draft_sleeve(given).cap_front)
    for place in range(5, 80, 5):
        x, y, _ = cap.front.at(float(place))
        off = min(
            ((cap.front_width - x) - px) ** 2 + (y - py) ** 2 for px, py in ((p[0], p[1]) for p in drawn)
        )
        assert off**0.5 < 0.15
