"""Cords and ties on children's clothing: what stops the papers, what is looked at, and where the neck is.

EN 14682, from memory: no cords or ties at hood and neck to 7 years or 134 cm; no free ends there for older
children to 14 years (girls to 176 cm, boys to 182 cm); elsewhere free ends are limited. The local rules come
first. All bodies are invented.
"""

from typing import Any

import pytest

from notchbook.app.drafting import draft
from notchbook.body import Measure
from notchbook.pattern import Place, Severity, locate
from notchbook.recipe import Replay
from notchbook.style.closures.figures import CHILD_TIE_FREE, NEAR_NECK, OLDER_CHILD_HEIGHT
from notchbook.style.closures.neck_zone import lies_at_neck
from notchbook.style.collars.figures import CORD_FREE_HEIGHT
from support.bodice_bodies import CHILD, WOMAN, bodice_run, body, without
from support.edge_steps import applied, notes, place
from support.traced_steps import NECK
from upper_sheets import bodies

AT_NECK = place("bodice.front/neck", "bodice.front/neck_pit", "1 cm")
AT_WAIST = place("bodice.front/waist", "bodice.front/waist_side", "1 cm")

STOPPED = ("tie-at-child-neck", Severity.STOP)
OLDER = ("tie-at-older-neck", Severity.LOOK)
UNMEASURED = ("tie-at-unmeasured-neck", Severity.LOOK)
ELSEWHERE = ("tie-of-child", Severity.LOOK)


def child(**more: float) -> Replay:
    """The bodice of an invented child."""
    return bodice_run(body(CHILD, None, **more), wearer="children")


def said(base: Replay, *places: dict[str, str], **more: Any) -> list[tuple[str, Severity]]:
    """What is told of ties caught at these places."""
    done = applied(base, "tie", places=list(places), **more)
    assert done.suspended is None, done.suspended.error
    return [(one.code, one.severity) for one in done.states[-1].notes]


@pytest.mark.parametrize("places", [(AT_NECK, AT_WAIST), (AT_WAIST, AT_NECK)])
def test_one_tie_at_the_neck_is_enough(places: tuple[dict[str, str], ...]) -> None:
    """Of several ties of one step it counts wherever it stands in the list."""
    assert said(child(height=1160.0), *places) == [STOPPED]


@pytest.mark.parametrize(
    ("height", "found"),
    [
        (1000.0, STOPPED),
        (1339.9, STOPPED),
        (1340.0, STOPPED),
        (1340.1, OLDER),
        (1500.0, OLDER),
        (1820.0, OLDER),
    ],
)
def test_to_134_cm_a_tie_at_the_neck_stops_the_papers_and_above_it_is_looked_at(
    height: float, found: tuple[str, Severity]
) -> None:
    assert said(child(height=height), AT_NECK) == [found]


def test_of_an_older_child_the_free_ends_are_told_with_their_length() -> None:
    done = applied(child(height=1400.0), "tie", places=[AT_NECK], length="45 cm")
    (note,) = done.states[-1].notes
    assert "450.0 mm" in note.message
    assert "free ends" in note.message


def test_a_child_whose_height_was_not_taken_is_looked_at() -> None:
    bare = bodice_run(body(without(CHILD, "height"), None), wearer="children")
    assert said(bare, AT_NECK) == [UNMEASURED]
    assert said(bare, AT_WAIST) == [ELSEWHERE]
    hooded = applied(bare, "hood", neck=NECK, drawstring=True)
    assert [one.severity for one in hooded.states[-1].notes if one.code == "hood-cord"] == [Severity.LOOK]


@pytest.mark.parametrize(("height", "found"), [(1300.0, STOPPED), (1400.0, UNMEASURED)])
def test_an_estimated_height_lets_no_tie_pass(height: float, found: tuple[str, Severity]) -> None:
    estimate = Measure(height, "estimated", error=40.0, method="by eye")
    measures = body(without(CHILD, "height"), None).with_value("height", estimate)
    assert said(bodice_run(measures, wearer="children"), AT_NECK) == [found]


@pytest.mark.parametrize("height", [1230.0, 1400.0, None])
def test_elsewhere_a_tie_of_a_child_is_looked_at_whatever_its_height(height: float | None) -> None:
    values = without(CHILD, "height") if height is None else {**CHILD, "height": height}
    assert said(bodice_run(body(values, None), wearer="children"), AT_WAIST) == [ELSEWHERE]


def test_of_a_grown_body_nothing_is_told() -> None:
    for values in (WOMAN, {**WOMAN, "height": 1680.0}, without(WOMAN, "height")):
        assert said(bodice_run(body(values)), AT_NECK, AT_WAIST) == []


@pytest.mark.parametrize(
    ("edge", "point", "distance", "found"),
    [
        ("bodice.back/neck", "bodice.back/nape", "0 mm", STOPPED),
        ("bodice.front/center_front", "bodice.front/neck_pit", "29 mm", STOPPED),
        ("bodice.front/center_front", "bodice.front/neck_pit", "35 mm", ELSEWHERE),
        ("bodice.front/shoulder", "bodice.front/side_neck_point", "2 cm", STOPPED),
        ("bodice.front/shoulder", "bodice.front/shoulder_point", "1 cm", ELSEWHERE),
        ("bodice.front/armhole", "bodice.front/underarm", "1 cm", ELSEWHERE),
    ],
)
def test_the_neck_is_its_edges_and_what_lies_within_3_cm_of_them(
    edge: str, point: str, distance: str, found: tuple[str, Severity]
) -> None:
    assert said(child(), place(edge, point, distance)) == [found]


@pytest.mark.parametrize(
    ("operation", "edge", "point"),
    [
        ("hood", "hood.hood/face", "hood.hood/face_top"),
        ("hood", "hood.hood/head_seam", "hood.hood/face_top"),
        ("stand_collar", "stand_collar.stand/upper", "stand_collar.stand/upper_center"),
        ("stand_collar", "stand_collar.inner_stand/upper", "stand_collar.inner_stand/upper_center"),
    ],
)
def test_what_is_sewn_to_the_neck_belongs_to_it_whatever_its_edges_are_called(
    operation: str, edge: str, point: str
) -> None:
    done = applied(child(), operation, neck=NECK)
    assert done.suspended is None, done.suspended.error
    assert said(done, place(edge, point, "1 cm")) == [STOPPED]


def test_a_hood_that_nothing_is_sewn_to_yet_is_one_all_the_same() -> None:
    pattern = applied(child(), "hood", neck=NECK).pattern
    loose = pattern.with_seams(without=[name for name in pattern.seams if name.startswith("hood/")])
    face = locate(loose, Place("hood.hood/face", "hood.hood/face_top", 10.0))
    side = locate(loose, Place("bodice.front/side_seam", "bodice.front/underarm", 10.0))
    assert (lies_at_neck(loose, face), lies_at_neck(loose, side)) == (True, False)


@pytest.mark.parametrize(
    ("name", "edge", "code"),
    [
        ("child-116", "neck", "tie-at-child-neck"),
        ("child-116", "hem", "tie-of-child"),
        ("man-100", "neck", None),
    ],
)
def test_ties_on_a_childs_garment_are_cautioned(name: str, edge: str, code: str | None) -> None:
    measures = next(made for known, _, made in bodies() if known == name)
    torso = draft("torso", measures, {})
    at = place(f"torso.front/{edge}", f"torso.front/{'neck_pit' if edge == 'neck' else 'hem_center'}", "1 cm")
    assert notes(torso, "tie", places=[at]) == ({code} if code else set())


def test_figures_of_cords_are_told_as_from_memory() -> None:
    """No copy of the standard was at hand: none of its figures may stand as read from it."""
    assert {one.grade for one in (CORD_FREE_HEIGHT, CHILD_TIE_FREE, OLDER_CHILD_HEIGHT)} == {"memory"}
    assert NEAR_NECK.grade == "own judgment"
