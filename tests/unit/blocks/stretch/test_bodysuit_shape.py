"""The bodysuit in numbers: crotch, leg opening, a covered seat."""

from dataclasses import replace

import numpy as np
import pytest
from numpy.typing import NDArray

from notchbook.blocks.stretch import (
    BodysuitGiven,
    BodysuitHalf,
    BodysuitPanel,
    StrapGiven,
    TorsoGiven,
    draft_bodysuit,
)
from notchbook.errors import DraftRefused
from notchbook.geometry import Path, Point, curve_between
from support.stretch_shapes import (
    ANGLE,
    SUIT,
    SUITS,
    TOLERANCE,
    between,
    end_heading,
    length,
    panel_area,
    points,
    start_heading,
)

COVER = (10.0, 20.0)
"""mm that the back leg line lies below its chord. Source: a patternmaker's review (common practice)."""


@pytest.fixture(scope="module", params=SUITS)
def drafted(request: pytest.FixtureRequest) -> tuple[BodysuitGiven, BodysuitHalf]:
    given = SUITS[request.param]
    return given, draft_bodysuit(given)


def lever(half: BodysuitHalf, name: str) -> float:
    return next(one.pulled for one in half.levers if one.name == name)


def below_chord(panel: BodysuitPanel) -> NDArray[np.float64]:
    """How far each place of the leg line lies outside of the straight way from side to crotch, mm."""
    rows = points(panel.leg)
    chord = rows[-1] - rows[0]
    offsets = rows - rows[0]
    across = chord[0] * offsets[:, 1] - chord[1] * offsets[:, 0]
    return np.asarray(across / np.hypot(*chord))


def test_the_crotch_is_as_long_and_wide_as_asked(drafted: tuple[BodysuitGiven, BodysuitHalf]) -> None:
    given, half = drafted
    for panel, wanted in ((half.front, given.crotch_front), (half.back, given.crotch_back)):
        assert -panel.crotch.end.y == pytest.approx(wanted, abs=TOLERANCE)
        assert panel.crotch.end.x == 0.0
        assert length(panel.crotch) == pytest.approx(given.crotch_width / 2, abs=TOLERANCE)


def test_the_leg_opening_is_as_long_as_asked(drafted: tuple[BodysuitGiven, BodysuitHalf]) -> None:
    given, half = drafted
    assert given.leg_opening is not None
    drawn = length(half.front.leg) + length(half.back.leg)
    assert drawn == pytest.approx(given.leg_opening, abs=TOLERANCE)
    assert drawn == pytest.approx(half.leg_opening, abs=TOLERANCE)


def test_the_back_covers_the_seat_and_only_the_front_is_scooped(
    drafted: tuple[BodysuitGiven, BodysuitHalf],
) -> None:
    _, half = drafted
    back = below_chord(half.back)
    assert COVER[0] <= back.max() <= COVER[1]
    assert back.min() > -7.0, "it turns in late"
    middle = slice(len(back) // 4, 2 * len(back) // 3)
    assert back[middle].min() > 0.0
    assert below_chord(half.front).min() < -20.0
    assert below_chord(half.front).max() < 1.0


def test_the_opening_runs_on_across_side_and_crotch(drafted: tuple[BodysuitGiven, BodysuitHalf]) -> None:
    _, half = drafted
    side = end_heading(half.front.side)
    at_side = [between(side, start_heading(panel.leg)) for panel in (half.front, half.back)]
    assert sum(at_side) == pytest.approx(-180.0, abs=ANGLE)
    at_crotch = [between(end_heading(panel.leg), -90.0) for panel in (half.front, half.back)]
    assert sum(at_crotch) == pytest.approx(0.0, abs=ANGLE)


def test_front_and_back_have_one_side_seam(drafted: tuple[BodysuitGiven, BodysuitHalf]) -> None:
    _, half = drafted
    assert half.front.side == half.back.side


def test_outlines_do_not_cross_themselves(drafted: tuple[BodysuitGiven, BodysuitHalf]) -> None:
    _, half = drafted
    assert panel_area(half.front).is_valid
    assert panel_area(half.back).is_valid


def test_a_given_height_is_kept() -> None:
    for height in (90.0, 130.0, 180.0):
        half = draft_bodysuit(replace(SUIT, leg_opening=None, leg_height=height))
        assert -half.front.side.end.y == pytest.approx(height, abs=1e-6)


def test_a_higher_leg_is_a_longer_opening() -> None:
    high, low = (
        draft_bodysuit(replace(SUIT, leg_opening=None, leg_height=height)) for height in (90.0, 180.0)
    )
    assert high.leg_opening > low.leg_opening + 20.0


def test_without_height_and_length_the_leg_is_a_classic_one() -> None:
    half = draft_bodysuit(replace(SUIT, leg_opening=None))
    assert -half.front.side.end.y == pytest.approx(0.85 * SUIT.torso.hip_depth, abs=1e-6)


@pytest.mark.parametrize("opening", [300.0, 900.0])
def test_an_opening_out_of_reach_is_drafted_at_the_limit_and_told(opening: float) -> None:
    half = draft_bodysuit(replace(SUIT, leg_opening=opening))
    leg = next(one for one in half.levers if one.name == "leg_height")
    assert leg.at_limit
    assert half.leg_opening != pytest.approx(opening, abs=1.0)


def test_a_swimsuit_with_straps_has_no_sleeve_and_a_cut_in_armhole() -> None:
    torso = replace(
        SUIT.torso, sleeve=None, strap=StrapGiven(35.0), front_neck_lower=60.0, back_neck_lower=120.0
    )
    half = draft_bodysuit(replace(SUIT, torso=torso))
    assert half.sleeve is None
    assert length(half.front.shoulder) == pytest.approx(35.0, abs=TOLERANCE)
    assert panel_area(half.back).is_valid


def test_the_trunk_loop_goes_over_shoulder_and_crotch() -> None:
    half = draft_bodysuit(SUIT)
    middle = (half.front.shoulder.start.y + half.front.shoulder.end.y) / 2
    straight = 2 * middle + SUIT.crotch_front + SUIT.crotch_back
    assert half.trunk_loop == pytest.approx(straight, abs=5.0), "the shoulder is drafted a little shorter"


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"crotch_front": 200.0}, "bodysuit-crotch-short"),
        ({"crotch_back": 150.0}, "bodysuit-crotch-short"),
        ({"crotch_width": 400.0}, "bodysuit-crotch-wide"),
    ],
)
def test_what_is_refused(changes: dict[str, float], code: str) -> None:
    with pytest.raises(DraftRefused) as caught:
        draft_bodysuit(replace(SUIT, **changes))  # type: ignore[arg-type]  # fields by name
    assert caught.value.code == code
    assert caught.value.text()


def test_the_front_ends_in_no_spike_at_the_side(drafted: tuple[BodysuitGiven, BodysuitHalf]) -> None:
    """Own judgment: a corner of less than 30 degrees cannot be sewn flat."""
    given, half = drafted
    high = draft_bodysuit(replace(given, leg_opening=None, leg_height=0.35 * given.torso.hip_depth))
    for one in (half, high):
        corner = 180.0 - abs(between(end_heading(one.front.side), start_heading(one.front.leg)))
        assert corner > 29.5


def quickest_before_the_join(path: Path) -> float:
    """The radius of the quickest bend in the last third of a leg line, mm, each over 10 mm."""
    rows = points(path, 400)
    steps = np.diff(rows, axis=0)
    steps = steps[np.hypot(*steps.T) > 1e-9]
    along = np.cumsum(np.hypot(*steps.T))
    heading = np.unwrap(np.arctan2(steps[:, 1], steps[:, 0]))
    places = np.arange(2.0 / 3.0 * along[-1], along[-1] - 10.0, 1.0)
    turns = np.interp(places + 10.0, along, heading) - np.interp(places, along, heading)
    return float(10.0 / np.abs(turns).max())


def test_the_back_leg_bends_softly_behind_the_join(drafted: tuple[BodysuitGiven, BodysuitHalf]) -> None:
    """A patternmaker's review: the bend is spread over 5 cm and more of a grown-up's leg line, a quarter of
    it on a child. Drawn with less than a sixth of the line as its radius it was a hook."""
    _, half = drafted
    assert quickest_before_the_join(half.back.leg) > 0.175 * length(half.back.leg)


def test_a_hook_behind_the_join_is_seen() -> None:
    hook = Path.of(curve_between(Point(130.0, 90.0), 222.0, Point(0.0, 0.0), 244.0, 1.1, 0.67))
    assert quickest_before_the_join(hook) < 0.175 * 2.0 * length(hook)


def strip(half: BodysuitHalf) -> float:
    """The front at its narrowest between the legs, the whole, mm."""
    return float(2.0 * points(half.front.leg, 200)[:, 0].min())


def test_a_front_with_room_stays_wide_between_the_legs() -> None:
    """A man's front is no narrow strip (a patternmaker's review; the share is own judgment)."""
    mans = replace(SUITS["man"], crotch_width=95.0, crotch_front=315.0, has_front_room=True)
    assert strip(draft_bodysuit(mans)) > 0.85 * mans.crotch_width
    plain = draft_bodysuit(replace(mans, has_front_room=False))
    assert strip(plain) < 0.85 * mans.crotch_width, "and the ruler sees one that does not"


def scooped(torso: TorsoGiven, back_lower: float) -> TorsoGiven:
    """The neck of a swimsuit with straps, its back lowered by this share of the back length."""
    front = 0.22 * torso.back_length
    strap = StrapGiven(35.0, may_move=True)
    return replace(
        torso,
        sleeve=None,
        strap=strap,
        front_neck_lower=front,
        back_neck_lower=back_lower * torso.back_length,
    )


def half_way_up(neck: Path) -> float:
    """How far a neck has risen half way to its shoulder, over its whole rise: a U 0.2, a V 0.5."""
    rows = points(neck, 200)
    return float(
        np.interp(rows[-1, 0] / 2.0, rows[:, 0], rows[:, 1] - rows[0, 1]) / (rows[-1, 1] - rows[0, 1])
    )


@pytest.mark.parametrize("name", SUITS)
def test_the_back_neck_of_a_suit_is_a_shallow_u(name: str) -> None:
    """Level at the center, then up to the shoulder (a patternmaker's review)."""
    given = SUITS[name]
    neck = draft_bodysuit(replace(given, torso=scooped(given.torso, 0.26))).back.neck
    assert half_way_up(neck) < 0.26
    assert neck.point_at(0.1 * neck.length).y - neck.start.y < 0.03 * (neck.end.y - neck.start.y)


def test_a_neck_that_is_nearly_a_v_is_seen() -> None:
    steep = Path.of(curve_between(Point(0.0, 0.0), 0.0, Point(106.0, 118.0), 58.0))
    assert half_way_up(steep) > 0.28
