"""A princess seam: darts become one seam, each edge fair, the ease where it is said to be.

Outside: numpy and shapely measure the stored data; the figures of the ease (3 to 6 mm between notches 5 cm
above and below the bust point) are common practice.
"""

from typing import Any

import numpy as np
import pytest
from shapely.geometry import Point

from notchbook.app.examining import examine
from notchbook.body import MeasureSet
from notchbook.pattern import Pattern, Severity, pattern_to_data, sewn_length, walk_seam
from notchbook.recipe import Replay
from notchbook.style.lines.princess_panels import panel_title
from support.bodice_bodies import FULL_BUST, body
from support.skirt_judge import Points, polyline
from support.style_lines import (
    BACK,
    BACK_PRINCESS,
    EMPIRE,
    FROM_SHOULDER,
    FRONT,
    SMALL,
    WOMAN,
    bodice_with,
    code,
    good,
    judge,
    place,
    princess,
)

FULL = body(FULL_BUST)
BODIES = {"small": SMALL, "medium": WOMAN, "full": FULL}
CENTER, SIDE = "princess.front_center", "princess.front_side"
SEAM = "princess/front_style_line"


def from_armhole(measures: MeasureSet = WOMAN, **more: Any) -> Replay:
    return bodice_with(("princess_seam", "princess", princess(**more)), measures=measures)


def from_shoulder(measures: MeasureSet = WOMAN) -> Replay:
    return bodice_with(("princess_seam", "princess", princess(FROM_SHOULDER)), measures=measures)


DONE = {
    (name, way): made(measures)
    for name, measures in BODIES.items()
    for way, made in (("armhole", from_armhole), ("shoulder", from_shoulder))
}
ALL = pytest.mark.parametrize("done", DONE.values(), ids=["-".join(key) for key in DONE])


@ALL
def test_the_ease_lies_between_the_notches_and_nowhere_else(done: Replay) -> None:
    pattern = good(done)
    seam = pattern.seams[SEAM]
    walk = walk_seam(pattern, seam)
    assert seam.ease == pytest.approx(4.0)
    assert seam.ease_between == ("upper_bust_notch", "lower_bust_notch")
    assert walk.misfit == pytest.approx(0.0, abs=0.05)
    upper, lower = walk.stations
    assert (upper.second or 0.0) - (upper.first or 0.0) == pytest.approx(0.0, abs=0.05)
    within = (lower.second or 0.0) - (upper.second or 0.0) - (lower.first or 0.0) + (upper.first or 0.0)
    assert within == pytest.approx(4.0, abs=0.05)
    found = {finding.code for finding in examine(done, cut=False).findings}
    assert not {"notch-stretch-differs", "seam-second-longer", "seam-second-shorter"} & found


@ALL
def test_the_notches_stand_5_cm_above_and_below_the_bust_point(done: Replay) -> None:
    """Measured by numpy along the edge of the center panel, from where it comes nearest to the bust point."""
    pattern = good(done)
    line = _downward(pattern, CENTER)
    bust = _mark(pattern, "bust_point")
    along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(line, axis=0), axis=1))])
    nearest = along[np.linalg.norm(line - bust, axis=1).argmin()]
    upper, lower = (stop.first or 0.0 for stop in walk_seam(pattern, pattern.seams[SEAM]).stations)
    assert nearest - upper == pytest.approx(50.0, abs=1.5)
    assert lower - nearest == pytest.approx(50.0, abs=1.5)


@ALL
def test_both_edges_pass_the_bust_point_within_10_mm(done: Replay) -> None:
    pattern = good(done)
    bust = _mark(pattern, "bust_point")
    assert np.linalg.norm(_downward(pattern, CENTER) - bust, axis=1).min() < 3.0
    # The side panel's lower part lies still: the bust point is where it was.
    assert np.linalg.norm(_downward(pattern, SIDE) - bust, axis=1).min() < 10.0


@ALL
def test_both_edges_are_fair_by_another_code(done: Replay) -> None:
    """No corner (nowhere rounder than a radius of 45 mm), and the edge bends one way: numpy turns along the
    dense line."""
    for name in (CENTER, SIDE):
        turns = _turns(_downward(good(done), name))
        assert np.abs(turns).max() < np.degrees(2.0 / 45.0)
        minor = min(turns[turns > 0.0].sum(), -turns[turns < 0.0].sum())
        assert minor < 1.5


@ALL
def test_nothing_is_to_be_looked_at_but_what_the_block_says(done: Replay) -> None:
    plain = bodice_with(measures=done.measures)
    before = {f.code for f in examine(plain, cut=False).findings}
    after = {f.code for f in examine(done, cut=False).findings if f.severity is not Severity.NOTE}
    assert after <= before


@ALL
def test_waist_shoulder_and_side_keep_their_lengths(done: Replay) -> None:
    pattern, plain = good(done), good(bodice_with(measures=done.measures))
    for edge in ("waist", "shoulder", "side_seam", "armhole", "neck"):
        wanted = sewn_length(plain, f"{FRONT}/{edge}")
        assert sewn_length(pattern, f"{FRONT}/{edge}") == pytest.approx(wanted, abs=0.12), edge


@ALL
def test_edges_run_on_across_the_seam(done: Replay) -> None:
    """The angles at both ends of the seam make 180 degrees with the seam closed, within what no eye sees."""
    pattern = good(done)
    shapes = judge(pattern)
    for at in ("top", "bottom"):
        angles = []
        for name in (CENTER, SIDE):
            outline = pattern.pieces[name].outline
            index = next(i for i, edge in enumerate(outline) if edge.name.endswith("style_line"))
            face = outline[index]
            starts_low = face.path.start.y < face.path.end.y
            before, after = outline[index - 1], outline[(index + 1) % len(outline)]
            pair = (before, face) if starts_low is (at == "bottom") else (face, after)
            into, out = (shapes.edges[edge.name] for edge in pair)
            angles.append(_inside_angle(into, out))
        assert sum(angles) == pytest.approx(180.0, abs=3.0), at


def _inside_angle(into: Points, out: Points) -> float:
    back, on = into[-2] - into[-1], out[1] - out[0]
    return float(np.degrees(np.arctan2(on[0] * back[1] - on[1] * back[0], on @ back)) % 360.0)


@pytest.mark.parametrize("ease", [0.0, 3.0, 6.0])
def test_the_ease_is_what_was_asked(ease: float) -> None:
    pattern = good(from_armhole(ease=f"{ease} mm"))
    walk = walk_seam(pattern, pattern.seams[SEAM])
    assert walk.second - walk.first == pytest.approx(ease, abs=0.05)


def test_the_armhole_loses_nothing_and_the_side_dart_is_closed() -> None:
    pattern = good(from_armhole())
    assert pattern.pieces[SIDE].intakes == ()
    assert pattern.pieces[CENTER].intakes == ()
    members = pattern.groups[f"{FRONT}/side_seam"].members
    assert members == (f"{FRONT}/side_seam/above", f"{FRONT}/side_seam/below")
    for polygon in (judge(pattern).polygon(CENTER), judge(pattern).polygon(SIDE)):
        assert polygon.is_valid


def test_the_panels_have_the_cloth_of_the_front_but_for_what_its_darts_take_in() -> None:
    """Shapely: closing is rigid. Led on to the bust point, a dart takes in half its mouth times the way
    by which it grew, a triangle. Round at the bust point, the side edge is a few millimeters shorter and the
    panel is opened by as much, 150 mm deep: some 4 square centimeters more."""
    plain = judge(good(bodice_with()))
    bust = _mark(good(bodice_with()), "bust_point")
    taken = 0.0
    for _, first, second in plain.darts(FRONT):
        mouths, tip = (plain.edges[first][0], plain.edges[second][-1]), plain.edges[first][-1]
        taken += 0.5 * float(np.linalg.norm(mouths[0] - mouths[1]) * np.linalg.norm(tip - bust))
    shapes = judge(good(from_armhole(ease="0 mm")))
    both = shapes.polygon(CENTER).area + shapes.polygon(SIDE).area
    assert 0.0 <= both - (plain.polygon(FRONT).area - taken) <= 600.0


def test_the_pieces_are_called_and_cut_as_a_cutter_expects() -> None:
    pattern = good(from_armhole())
    assert (pattern.pieces[CENTER].title, pattern.pieces[CENTER].cut) == ("Center front", "fold")
    assert (pattern.pieces[SIDE].title, pattern.pieces[SIDE].cut) == ("Side front", "pair")
    assert pattern.groups[FRONT].members == (CENTER, SIDE)
    assert {notch.kind for notch in pattern.notches.values() if notch.seam == SEAM} == {"single"}


def test_legs_live_on_in_the_seam() -> None:
    pattern = good(from_armhole())
    dart = f"{FRONT}/waist_dart"
    assert pattern.fates[f"{dart}/center_leg"].into == (f"{CENTER}/style_line",)
    assert pattern.fates[f"{dart}/side_leg"].into == (f"{SIDE}/style_line",)
    assert pattern.fates[dart].kind == "removed"


def test_a_dart_in_the_shoulder_opens_the_seam_and_the_underarm_is_the_hinge() -> None:
    told = princess(bust_dart=None, upper_dart=f"{FRONT}/bust_dart", hinge=f"{FRONT}/underarm") | {
        "start": []
    }
    done = bodice_with(("princess_seam", "princess", told), bust_dart="shoulder")
    walk = walk_seam(good(done), good(done).seams[SEAM])
    assert walk.second - walk.first == pytest.approx(4.0, abs=0.05)
    plain = good(bodice_with(bust_dart="shoulder"))
    for edge in ("side_seam", "armhole"):
        assert sewn_length(good(done), f"{FRONT}/{edge}") == pytest.approx(
            sewn_length(plain, f"{FRONT}/{edge}"), abs=0.05
        )
    without = {**told, "hinge": None}
    assert code(bodice_with(("princess_seam", "princess", without), bust_dart="shoulder")) == (
        "princess-ease-needs-hinge"
    )


def test_a_back_seam_takes_in_shoulder_dart_and_waist_dart() -> None:
    done = bodice_with(("princess_seam", "princess", BACK_PRINCESS))
    pattern = good(done)
    walk = walk_seam(pattern, pattern.seams["princess/back_style_line"])
    assert walk.misfit == pytest.approx(0.0, abs=0.05)
    assert walk.ease == 0.0
    assert [dart.name for dart in pattern.pieces["princess.back_side"].intakes] == [f"{BACK}/waist_dart_side"]
    assert {notch.kind for notch in pattern.notches.values() if notch.seam == walk.seam} == {"double"}
    assert pattern.seams["bodice/shoulder"].ease == 0.0
    assert walk_seam(pattern, pattern.seams["bodice/shoulder"]).misfit == pytest.approx(0.0, abs=0.1)
    after = {f.code for f in examine(done, cut=False).findings if f.severity is not Severity.NOTE}
    assert after <= {f.code for f in examine(bodice_with(), cut=False).findings}


def test_a_seam_to_the_hem_takes_in_the_double_ended_dart() -> None:
    told = princess(
        waist_dart=None,
        inner_dart=f"{FRONT}/waist_dart",
        end=[place(f"{FRONT}/hem", f"{FRONT}/hem_center", 0.42)],
    )
    pattern = good(bodice_with(("princess_seam", "princess", told), length="hip"))
    assert pattern.pieces[CENTER].inner_darts == pattern.pieces[SIDE].inner_darts == ()
    walk = walk_seam(pattern, pattern.seams[SEAM])
    assert walk.second - walk.first == pytest.approx(4.0, abs=0.05)
    plain = good(bodice_with(length="hip"))
    assert sewn_length(pattern, f"{FRONT}/hem") == pytest.approx(sewn_length(plain, f"{FRONT}/hem"), abs=0.2)
    # Round over the bust, hollow at the waist, round over the hip: no S that was not meant.
    told_of = examine(bodice_with(("princess_seam", "princess", told), length="hip"), cut=False).findings
    assert not {"edge-wavers", "edge-kinked"} & {finding.code for finding in told_of}
    # The waist is taken in by the whole dart: the levels at the waist end at the edges of the panels.
    for name in (CENTER, SIDE):
        polygon = judge(pattern).polygon(name)
        assert polygon.is_valid
        for line in pattern.pieces[name].lines:
            if "waist_line" in line.name:
                ends = judge(pattern).lines[line.name][[0, -1]]
                assert max(polygon.exterior.distance(Point(*end)) for end in ends) < 0.5


def _wrong(**more: Any) -> str:
    return code(bodice_with(("princess_seam", "princess", princess(**more))))


REFUSED: dict[str, tuple[dict[str, Any], str]] = {
    "two beginnings": ({"upper_dart": f"{FRONT}/bust_dart"}, "princess-one-end"),
    "no end": ({"waist_dart": None}, "princess-one-end"),
    "no dart": (
        {
            "waist_dart": None,
            "end": [place(f"{FRONT}/waist", f"{FRONT}/waist_side", "3 cm", part=f"{FRONT}/waist/side")],
        },
        "princess-no-dart",
    ),
    "dart of the back": ({"waist_dart": f"{BACK}/waist_dart_center"}, "dart-on-other-piece"),
    "a point of the back": ({"bust_point": f"{BACK}/nape"}, "princess-point-elsewhere"),
    "a dart twice": ({"bust_dart": f"{FRONT}/waist_dart"}, "princess-dart-twice"),
    "a center that is cut": ({"center": f"{FRONT}/armhole"}, "princess-center-elsewhere"),
    "a place of the back": (
        {"start": place(f"{BACK}/armhole", f"{BACK}/shoulder_point", 0.5)},
        "line-between-pieces",
    ),
    "ease that no cloth takes": ({"ease": "60 mm"}, "princess-ease-unreachable"),
    "a dart that is gone": ({"waist_dart": f"{FRONT}/waist_dart_center"}, "name-lost"),
    "no inner dart": (
        {
            "waist_dart": None,
            "inner_dart": f"{FRONT}/waist_dart",
            "end": [place(f"{FRONT}/waist", f"{FRONT}/waist_side", "3 cm", part=f"{FRONT}/waist/side")],
        },
        "name-lost",
    ),
}


@pytest.mark.parametrize(("told", "wanted"), REFUSED.values(), ids=list(REFUSED))
def test_what_contradicts_itself_is_refused_in_words(told: dict[str, Any], wanted: str) -> None:
    assert _wrong(**told) == wanted


def test_a_center_on_several_pieces_is_not_chosen_for_her() -> None:
    """A line under the bust leaves a center front on either piece: which one has the seam must be said."""
    stopped = bodice_with(("cut_style_line", "under", EMPIRE), ("princess_seam", "princess", princess()))
    assert code(stopped) == "name-ambiguous"


def test_a_dart_that_aims_elsewhere_is_refused() -> None:
    """The second waist dart of a front does not aim at the bust point."""
    told = princess(waist_dart=f"{FRONT}/waist_dart_side")
    assert code(bodice_with(("princess_seam", "princess", told), front_darts=2)) == "dart-aims-elsewhere"


def _mark(pattern: Pattern, word: str) -> Points:
    piece = next(p for p in pattern.pieces.values() if f"{FRONT}/{word}" in p.points)
    point = piece.points[f"{FRONT}/{word}"]
    return np.array([point.x, point.y])


def _downward(pattern: Pattern, piece: str) -> Points:
    data = pattern_to_data(pattern)
    outline = next(one["outline"] for one in data["pieces"] if one["name"] == piece)
    line = polyline(next(edge["path"] for edge in outline if edge["name"] == f"{piece}/style_line"))
    return line if line[0][1] > line[-1][1] else line[::-1]


def _turns(line: Points) -> Points:
    """Degrees turned at places 2 mm apart."""
    along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(line, axis=0), axis=1))])
    places = np.arange(0.0, along[-1], 2.0)
    spread = np.column_stack([np.interp(places, along, line[:, axis]) for axis in (0, 1)])
    steps = np.diff(spread, axis=0)
    angles = np.unwrap(np.arctan2(steps[:, 1], steps[:, 0]))
    return np.degrees(np.diff(angles))


EASED_SHOULDER = (
    "convert_dart",
    "eased",
    {"darts": [f"{BACK}/shoulder_dart"], "into": "ease", "beside": "3 cm"},
)
BACK_FROM_ARMHOLE = {
    "center": f"{BACK}/center_back",
    "start": [place(f"{BACK}/armhole", f"{BACK}/shoulder_point", 0.45)],
    "waist_dart": f"{BACK}/waist_dart",
}


def test_an_eased_shoulder_goes_on_with_its_panel() -> None:
    back = ("princess_seam", "princess", BACK_FROM_ARMHOLE)
    pattern = good(bodice_with(EASED_SHOULDER, back, back_darts=1))
    assert [one.name for one in pattern.pieces["princess.back_center"].intakes] == [f"{BACK}/shoulder_dart"]
    assert pattern.pieces["princess.back_side"].intakes == ()
    alone = good(bodice_with(EASED_SHOULDER, back_darts=1))
    shoulder = f"{BACK}/shoulder"
    assert sewn_length(pattern, shoulder) == pytest.approx(sewn_length(alone, shoulder), abs=1e-6)


def test_a_seam_through_an_eased_shoulder_is_refused() -> None:
    on = place(f"{BACK}/shoulder", f"{BACK}/side_neck_point", "4 cm", part=f"{BACK}/shoulder/center/eased")
    through = ("princess_seam", "princess", {**BACK_FROM_ARMHOLE, "start": [on]})
    assert code(bodice_with(EASED_SHOULDER, through, back_darts=1)) == "line-through-fullness"


@pytest.mark.parametrize("measures", BODIES.values(), ids=BODIES)
def test_a_back_seam_has_no_corner_at_the_point_of_the_dart(measures: MeasureSet) -> None:
    back = ("princess_seam", "princess", BACK_FROM_ARMHOLE)
    done = bodice_with(back, measures=measures, back_darts=1, back_shoulder="ease")
    good(done)
    unfair = [
        f"{found.code} {found.where}"
        for found in examine(done).findings
        if found.check == "fair-edges" and "style_line" in (found.where or "")
    ]
    assert unfair == []


@pytest.mark.parametrize(
    ("title", "role", "called"),
    [
        ("Front", "side", "Side front"),
        ("Bodice front", "side", "Bodice side front"),
        ("Bodice back", "center", "Bodice center back"),
        ("Front yoke", "side", "Side front yoke"),
    ],
)
def test_a_panel_is_called_as_the_trade_calls_it(title: str, role: str, called: str) -> None:
    # Common practice, no source: the role stands before front or back.
    assert panel_title(title, role) == called
