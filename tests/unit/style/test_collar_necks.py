"""Where a collar begins, where it passes over the shoulder, and how it is notched; measured from outside."""

import json
import math
from dataclasses import replace
from functools import cache
from typing import Any

import pytest
from shapely.geometry import Point as Spot

from notchbook.pattern import Mark, Pattern, Severity, locate, pattern_from_data, pattern_to_data
from notchbook.recipe import Replay, add_step, replay
from notchbook.style.collars.neck import NeckEdge, neck_of
from support.bodice_bodies import CHILD, bodice_run, body
from support.collar_steps import (
    BUTTON_STAND,
    NECK_LENGTH_EDGES,
    WITH_STAND,
    after,
    code_of,
    collared,
    length_of,
    line_of,
    on_stand,
    pattern_of,
    said,
)
from support.edge_steps import misfits, necks
from support.sleeve_styles import kimono, raglan
from support.traced_steps import NECK
from support.upper_patterns import drafted

LAP_TOP, PIT = "button_stand.front/lap_top", "bodice.front/neck_pit"
NAMES = ("shoulder", "center", "begins", "extension")


@cache
def v_necked(name: str = "medium-92") -> Replay:
    """A bodice with a V neck 8 cm deeper than the block's and a button stand 20 mm wide."""
    lowered = after(drafted(name, "bodice"), "change_neckline", necks=necks("v", "8 cm"), width="1 cm")
    done = after(lowered, "button_stand", **BUTTON_STAND)
    assert done.suspended is None, done.suspended.error
    return done


def written(run: Replay) -> dict[str, Any]:
    """What the last step has written down of its neck."""
    return {name: run.recipe.steps[-1].parameters[name] for name in NAMES}


def without(run: Replay, *names: str, **changes: Any) -> Replay:
    """The same recipe with some parameters of its last step never written down, others changed by hand."""
    *others, last = run.recipe.steps
    kept = {name: value for name, value in last.parameters.items() if name not in names} | changes
    return replay(run.recipe.with_steps((*others, replace(last, parameters=kept))), run.measures)


def on_v(operation: str, name: str = "medium-92", **parameters: Any) -> Replay:
    return after(v_necked(name), operation, **{"neck": WITH_STAND, **parameters})


def along(pattern: Pattern, edge: str, notch: str) -> float:
    """How far a notch lies along an edge by the outside program, mm from its start."""
    place = locate(pattern, pattern.notches[notch].place)
    spot = place.edge.path.point_at(place.distance)
    return float(line_of(pattern, edge).project(Spot(spot.x, spot.y)))


@pytest.mark.parametrize("name", ["small-80", "medium-92", "man-100"])
@pytest.mark.parametrize("operation", ["flat_collar", "roll_collar", "stand_collar", "hood"])
def test_on_a_v_neck_a_collar_begins_at_the_center(operation: str, name: str) -> None:
    """Front meets front at the center: the collar is as long as the neck from there to the nape. The upper
    end of a stand 20 mm wide is longer than that on a V (plane geometry)."""
    more = {"depth": "40 cm"} if operation == "hood" else {}
    pattern = pattern_of(on_v(operation, name, **more))
    assert length_of(v_necked(name).pattern, LAP_TOP) > 30.0
    piece = {"stand_collar": "stand", "hood": "hood"}.get(operation, "undercollar")
    neck = length_of(pattern, *NECK_LENGTH_EDGES)
    assert length_of(pattern, f"{operation}.{piece}/neck_edge") == pytest.approx(neck, abs=0.05)
    assert max(abs(off) for seam, off in misfits(pattern).items() if seam.startswith(operation)) < 0.05


def test_a_shirt_stand_is_notched_at_the_center_of_a_v_neck() -> None:
    """Sewn to the end of the button stand, its center lies as far in as the end of that stand is long."""
    pattern = pattern_of(on_v("shirt_collar", begins="end", center=PIT))
    edge = "shirt_collar.stand/neck_edge"
    lap = length_of(v_necked().pattern, LAP_TOP)
    whole = length_of(pattern, edge)
    assert whole == pytest.approx(lap + length_of(pattern, *NECK_LENGTH_EDGES), abs=0.05)
    assert whole - along(pattern, edge, f"{edge}/center_notch") == pytest.approx(lap, abs=0.05)


def test_an_extension_that_misses_the_center_is_told() -> None:
    done = on_v("roll_collar", extension="20 mm")
    assert "collar-center-off" in said(done)
    (note,) = [one for one in done.states[-1].notes if one.code == "collar-center-off"]
    assert note.severity is Severity.LOOK
    assert note.wanted == pytest.approx(length_of(v_necked().pattern, LAP_TOP), abs=0.05)
    assert "collar-center-off" not in said(on_v("roll_collar"))
    assert "collar-center-off" not in said(on_stand("roll_collar", extension="20 mm"))


@pytest.mark.parametrize(
    ("overlap", "begins", "sewn"),
    [("0 mm", "corner", 0.0), ("8 mm", "cut", 8.0), ("20 mm", "end", 20.0), ("26 mm", "beyond", 20.0)],
)
def test_how_a_stand_begins_is_written_down(overlap: str, begins: str, sewn: float) -> None:
    done = on_stand("stand_collar", overlap=overlap)
    assert written(done) == {"shoulder": None, "center": PIT, "begins": begins, "extension": None}
    pattern = pattern_of(done)
    neck = length_of(pattern, *NECK_LENGTH_EDGES)
    edge = "stand_collar.stand/neck_edge"
    assert length_of(pattern, edge) == pytest.approx(neck + sewn, abs=0.05)
    assert (f"{edge}/center_notch" in pattern.notches) == (sewn > 0.0)
    if sewn > 0.0:
        assert along(pattern, edge, f"{edge}/center_notch") == pytest.approx(neck, abs=0.05)


@pytest.mark.parametrize("name", ["medium-92", "small-80"])
def test_a_recipe_from_before_it_was_written_down_still_runs(name: str) -> None:
    """Older recipes have an extension in mm, or none, and nothing else of the neck."""
    old = on_stand("flat_collar", name, extension="12 mm")
    again = pattern_of(without(old, "center", "begins", "shoulder"))
    assert again == pattern_of(old)
    assert length_of(again, "flat_collar.collar/neck_edge") == pytest.approx(
        length_of(again, *NECK_LENGTH_EDGES) + 8.0, abs=0.05
    )
    bare = without(on_stand("flat_collar", name), *NAMES)
    assert pattern_of(bare) == pattern_of(on_stand("flat_collar", name))
    without_stand = without(collared("flat_collar", name), *NAMES, extension="0 mm")
    assert pattern_of(without_stand) == pattern_of(collared("flat_collar", name))


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("collar-begins-elsewhere", {"begins": "corner", "overlap": "9 mm"}),
        ("collar-begins-elsewhere", {"begins": "cut", "overlap": "0 mm"}),
        ("collar-begins-elsewhere", {"begins": "cut", "overlap": "20 mm"}),
        ("collar-begins-elsewhere", {"begins": "beyond", "overlap": "5 mm"}),
        ("collar-center-elsewhere", {"center": "bodice.front/waist_center"}),
        ("collar-center-unsaid", {"center": None, "begins": "end"}),
        ("collar-shoulder-elsewhere", {"shoulder": "bodice.front/underarm"}),
        ("collar-extension-long", {"begins": "cut", "center": None, "extension": "30 cm", "overlap": "0 mm"}),
        ("collar-below-nothing", {"center": None, "extension": "-1 mm"}),
    ],
)
def test_a_neck_that_was_said_wrongly_is_refused(code: str, changes: dict[str, Any]) -> None:
    assert code_of(without(on_stand("stand_collar", overlap="8 mm"), **changes)) == code


def test_a_neck_that_ends_before_the_shoulder_is_refused() -> None:
    assert code_of(collared("stand_collar", neck=NECK[:1])) == "collar-shoulder-unclear"
    named = collared("stand_collar", neck=NECK, shoulder="bodice.back/side_neck_point")
    assert pattern_of(named) == pattern_of(collared("stand_collar"))


@cache
def back_panels() -> Replay:
    """A back with a seam from its neck to its waist, beside the dart."""
    ends = {
        "start": {"edge": "bodice.back/neck", "from_point": "bodice.back/nape", "distance": "4 cm"},
        "end": {
            "edge": "bodice.back/waist/center",
            "from_point": "bodice.back/waist_center",
            "distance": "4 cm",
        },
    }
    done = after(drafted("medium-92", "bodice"), "cut_style_line", lines=[{**ends, "darts": []}])
    assert done.suspended is None, done.suspended.error
    return done


def _ends(pattern: Pattern, edge: str) -> tuple[str, str]:
    return pattern.edges[edge].start, pattern.edges[edge].end


@pytest.mark.parametrize("parted", [False, True])
def test_a_back_neck_in_two_parts_lies_behind_the_shoulder(parted: bool) -> None:
    """The shoulder is where front meets back, however many edges of the back are named after it."""
    run = back_panels()
    members = run.pattern.groups["bodice.back/neck"].members
    side_neck = "bodice.back/side_neck_point"
    outer = next(name for name in members if side_neck in _ends(run.pattern, name))
    (inner,) = set(members) - {outer}
    (corner,) = set(_ends(run.pattern, inner)) - {"bodice.back/nape"}
    single = [
        {"edge": outer, "starts_at": side_neck},
        {"edge": inner, "starts_at": corner},
    ]
    neck = [NECK[0], *single] if parted else NECK
    done = after(run, "stand_collar", neck=neck)
    pattern = pattern_of(done)
    edge = "stand_collar.stand/neck_edge"
    back = sum(length_of(pattern, name) for name in members)
    assert along(pattern, edge, f"{edge}/shoulder_notch") == pytest.approx(back, abs=0.05)
    assert along(pattern, edge, f"{edge}/seam_notch") == pytest.approx(40.0, abs=0.05)
    assert length_of(pattern, edge) == pytest.approx(length_of(pattern, "bodice.front/neck") + back, abs=0.05)


@pytest.mark.parametrize(
    ("mark", "asked"),
    [("bodice.front/shoulder_mark", "bodice.front/shoulder_mark"), ("yoke/side_neck_point", None)],
)
def test_the_shoulder_is_found_by_a_mark_within_an_edge(mark: str, asked: str | None) -> None:
    """A neck in one edge, as of a yoke over the shoulder, says by its mark where the back begins."""
    pattern = drafted("medium-92", "bodice").pattern
    front = pattern.pieces["bodice.front"]
    spot = pattern.edges["bodice.front/neck"].path.point_at(50.0)
    marked = replace(front, marks=(*front.marks, Mark(mark, spot, "datum")))
    named = (NeckEdge(**NECK[0]),)
    neck = neck_of(pattern.with_pieces(marked), named, asked)
    whole = length_of(pattern, "bodice.front/neck")
    forward = pattern.edges["bodice.front/neck"].start == NECK[0]["starts_at"]
    assert neck.front == pytest.approx(50.0 if forward else whole - 50.0, abs=0.05)
    assert neck.length == pytest.approx(whole, abs=0.05)
    assert neck.behind == ()


def test_without_a_side_neck_point_the_shoulder_is_where_front_meets_back() -> None:
    """The same pattern with another name at the corner of the shoulder."""
    pattern = drafted("medium-92", "bodice").pattern
    known, other = (json.dumps(thing) for thing in (pattern_to_data(pattern), NECK))
    renamed = pattern_from_data(json.loads(known.replace("side_neck_point", "neck_corner")))
    named = tuple(NeckEdge(**one) for one in json.loads(other.replace("side_neck_point", "neck_corner")))
    neck = neck_of(renamed, named)
    assert neck.front == pytest.approx(length_of(pattern, "bodice.front/neck"), abs=0.05)
    assert [use.edge for use in neck.behind] == ["bodice.back/neck"]


def test_the_named_shoulder_goes_before_the_change_of_pieces() -> None:
    """A point within the front that was named as the shoulder is the shoulder, whatever the pieces say."""
    run = yoked("4 cm", "woman")
    seam = run.pattern.edges["bodice.front/neck/below"]
    corner = next(name for name in (seam.start, seam.end) if name != PIT)
    pattern = pattern_of(after(run, "stand_collar", neck=NECK, shoulder=corner))
    edge = "stand_collar.stand/neck_edge"
    whole, front = length_of(pattern, edge), length_of(pattern, "bodice.front/neck/below")
    assert along(pattern, edge, f"{edge}/shoulder_notch") == pytest.approx(whole - front, abs=0.05)


@cache
def yoked(lower: str, wearer: str) -> Replay:
    """A back yoke cut off the front so far below the shoulder, on a grown body or a small one."""
    given: dict[str, Any] = {"back_shoulder": "ease", "back_shoulder_amount": "0 mm"}
    if wearer == "child":
        block = bodice_run(body(CHILD, None, neck_base_girth=230.0), wearer="children", **given)
    else:
        block = bodice_run(body(), **given)
    ends = {
        name: {"edge": f"bodice.front/{edge}", "from_point": f"bodice.front/{point}", "distance": lower}
        for name, edge, point in (("start", "neck", "side_neck_point"), ("end", "armhole", "shoulder_point"))
    }
    cut = after(block, "cut_style_line", lines=[{**ends, "darts": []}])
    join = {"first_edge": "bodice.back/shoulder", "second_edge": "bodice.front/shoulder"}
    done = after(cut, "join_pieces", **join)
    assert done.suspended is None, done.suspended.error
    return done


@pytest.mark.parametrize(
    ("lower", "wearer"),
    [("2 cm", "woman"), ("4 cm", "woman"), ("6 cm", "woman"), ("2 cm", "child"), ("4 cm", "child")],
)
def test_the_front_neck_is_notched_on_every_body_clear_of_other_marks(lower: str, wearer: str) -> None:
    """A name that some sizes have and others lack cannot be graded; two marks side by side read as a double
    notch. 10 mm is own judgment."""
    pattern = pattern_of(after(yoked(lower, wearer), "stand_collar", neck=NECK))
    edge = "stand_collar.stand/neck_edge"
    marks = {name: along(pattern, edge, name) for name in pattern.notches if name.startswith(f"{edge}/")}
    balance = marks.pop(f"{edge}/balance_notch")
    assert f"{edge}/shoulder_notch" in marks and f"{edge}/seam_notch" in marks
    assert min(abs(balance - one) for one in marks.values()) > 10.0
    assert balance > max(marks.values()), "it lies on the front neck"
    assert "stand_collar/neck/balance_notch" in pattern.notches


def lapped(run: Replay) -> float:
    """The shoulder by which 60 mm of lap swing the front of a flat collar: half the lap over it is the sine
    of half the swing (plane geometry)."""
    ends: list[float] = []
    for lap in ("0 mm", "60 mm"):
        pattern = pattern_of(after(run, "flat_collar", neck=NECK, overlap=lap))
        path = pattern.edges["flat_collar.undercollar/neck_edge"].path
        ends.append(path.tangent_at(path.length).direction())
    return 30.0 / math.sin(math.radians(ends[1] - ends[0]) / 2.0)


def test_the_tips_lap_on_the_shoulder_alone() -> None:
    """Not on the seam down a cut-on sleeve; over a yoke, where no seam tells, on 12 cm (common practice, no
    source)."""
    assert lapped(yoked("4 cm", "woman")) == pytest.approx(120.0, abs=0.2)
    for run in (kimono(), raglan()):
        shoulder = run.measures.value("shoulder_length")
        assert lapped(run) == pytest.approx(shoulder, abs=0.2)


def test_a_step_added_again_says_the_same() -> None:
    """What was looked up is looked up again when the step is changed, on the base body."""
    done = on_stand("shirt_collar", overlap="8 mm")
    parameters = {**done.recipe.steps[-1].parameters, "begins": None, "overlap": "20 mm"}
    again = add_step(done.recipe, "shirt_collar", parameters, base=done.measures, slug="other")
    assert again.steps[-1].parameters["begins"] == "end"
