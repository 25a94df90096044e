"""Jackets and coats drafted from the body: larger by zones, the armhole with them, every length as asked."""

from functools import cache
from math import radians, sin

import pytest

from notchbook.app.drafting import draft
from notchbook.app.eases.ease_rows import ease_table
from notchbook.app.examining import examine
from notchbook.blocks.sleeve_pieces.sewn_armhole import sewn_armhole
from notchbook.blocks.upper.slope_drop import raised_slope
from notchbook.errors import DraftRefused
from notchbook.pattern import Severity
from notchbook.recipe import Replay
from support.jackets import measures_of

LAYERS = ("fitted", "unlined_jacket", "jacket", "coat")


@cache
def drafted(silhouette: str, body: str = "medium-92") -> Replay:
    return draft("bodice", measures_of(body), {"silhouette": silhouette, "length": "hip"})


def place(run: Replay, word: str) -> tuple[float, float]:
    """A point of the front from the waist at the center, x outward, mm."""
    points = run.pattern.pieces["bodice.front"].points
    point, center = points[f"bodice.front/{word}"], points["bodice.front/waist_center"]
    return abs(point.x - center.x), point.y - center.y


def armhole(run: Replay) -> float:
    given = sewn_armhole(run.pattern, "bodice").given
    return given.front.length + given.back.length


def test_each_layer_is_wider_and_its_armhole_deeper_and_longer() -> None:
    runs = [drafted(silhouette) for silhouette in LAYERS]
    lengths = [armhole(run) for run in runs]
    depths = [place(run, "underarm")[1] for run in runs]
    tips = [place(run, "shoulder_point") for run in runs]
    necks = [place(run, "side_neck_point")[0] for run in runs]
    assert lengths == sorted(lengths) and lengths[-1] - lengths[0] > 50.0
    assert depths == sorted(depths, reverse=True)
    assert tips == sorted(tips) and [y for _, y in tips] == sorted(y for _, y in tips)
    assert necks == sorted(necks)


@pytest.mark.parametrize("body", ["medium-92", "large-116", "man-100", "child-116"])
def test_every_length_of_a_jacket_comes_out_as_asked(body: str) -> None:
    run = drafted("jacket", body)
    assert [(row.measure, row.miss) for row in ease_table(run) if row.miss > 0.05] == []
    assert [one.code for one in examine(run).findings if one.severity is Severity.STOP] == []


def test_the_armhole_grows_in_proportion_to_the_ease() -> None:
    """Of the whole ease that is added the armhole takes more than back or front: 40 to 60 in a hundred.
    German proportional drafting gives 2 of 4.5 parts to the armhole (handbook, from memory)."""
    rows = [{row.measure: row.ease for row in ease_table(drafted(one))} for one in ("fitted", "jacket")]
    bust, back, chest = (rows[1][key] - rows[0][key] for key in ("bust_girth", "across_back", "across_chest"))
    assert 0.4 <= (bust - back - chest) / bust <= 0.6


def test_own_amounts_at_the_shoulder_are_drafted_as_asked() -> None:
    asked = {"shoulder_longer": "20 mm", "shoulder_raised": "0 mm", "neck_lowered": "0 mm", "length": "hip"}
    run = draft("bodice", measures_of("medium-92"), {"silhouette": "jacket", **asked})
    (row,) = [row for row in ease_table(run) if row.measure == "shoulder_length"]
    assert row.ease == pytest.approx(20.0, abs=0.01)
    codes = [(one.code, one.where) for one in run.states[-1].notes if one.code == "ease-unusual"]
    assert codes == [("ease-unusual", "bodice.front/shoulder")] * 2  # longer than usual, and no rise at all


@pytest.mark.parametrize(("length", "slope", "raised"), [(125.0, 18.0, 10.0), (140.0, 12.0, 25.0)])
def test_a_raised_shoulder_lies_higher_by_so_much_at_its_end(
    length: float, slope: float, raised: float
) -> None:
    """Plain trigonometry: the drop of a seam is its length times the sine of its slope."""
    drops = [length * sin(radians(one)) for one in (slope, raised_slope(length, slope, raised))]
    assert drops[0] - drops[1] == pytest.approx(raised, abs=1e-9)


def test_a_shoulder_is_not_raised_above_its_neck() -> None:
    with pytest.raises(DraftRefused) as caught:
        draft("bodice", measures_of("medium-92"), {"shoulder_raised": "80 mm"})
    assert caught.value.code == "bodice-shoulder-raised"
    assert caught.value.text() and caught.value.next_step()


def pit(lowered: str) -> float:
    """How high the pit lies over the waist on the whole front of a woman whose left neck would be too deep,
    mm."""
    body = measures_of("medium-92")
    for key in ("neck_to_bust_point", "front_waist_length"):
        body = body.with_value(key, body.value(key) + 35.0, "left")
    run = draft("bodice", body, {"silhouette": "jacket", "length": "hip", "neck_lowered": lowered})
    return run.pattern.pieces["bodice.front"].points["bodice.front/neck_pit"].y  # the waist is drafted at 0


def test_the_two_sides_of_a_jacket_meet_at_the_neck_pit_and_it_is_lowered_once() -> None:
    """It begins higher than measured, at the height that serves both sides."""
    assert pit("0 mm") > measures_of("medium-92").value("center_front_length") + 1.0
    assert pit("0 mm") - pit("9 mm") == pytest.approx(9.0, abs=1.0)  # its width gives way a little


def test_the_hem_of_a_jacket_is_turned_as_deep_as_a_jackets() -> None:
    classes = [
        drafted(one).pattern.allowances["bodice.front/hem"].allowance_class for one in ("fitted", "jacket")
    ]
    assert classes == ["hem_top", "hem_jacket"]
