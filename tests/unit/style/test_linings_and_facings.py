"""Linings that end at facings over darts and panels: what the facing takes, the lining does not have."""

from functools import cache
from typing import Any

import pytest

from notchbook.app.examining import examine
from notchbook.pattern import Pattern
from notchbook.recipe import Replay
from support.edge_steps import BACK, FRONT, applied, area, bodice, changed, misfits, refusal, skirt
from support.style_lines import BACK_PRINCESS, FROM_SHOULDER, bodice_with, princess
from support.traced_steps import ARMHOLE, LINING, NECK, PARTS

FACINGS = ["all_in_one_facing.front/edge", "all_in_one_facing.back/edge"]


@cache
def with_dart(edge: str, start: str) -> Replay:
    """The bodice with its bust dart moved to the middle of an edge."""
    place = {"at": {"edge": f"{FRONT}/{edge}", "from_point": f"{FRONT}/{start}", "fraction": 0.5}}
    return applied(bodice(), "transfer_dart", darts=[f"{FRONT}/bust_dart"], places=[place])


@cache
def panels() -> Replay:
    """A bodice of panels, its princess seams from the shoulder, the back shoulder dart in one of them."""
    return bodice_with(
        ("princess_seam", "princess", princess(FROM_SHOULDER)),
        ("princess_seam", "back_princess", BACK_PRINCESS),
    )


def lining_walks(pattern: Pattern) -> dict[str, float]:
    return {name: off for name, off in misfits(pattern).items() if name.startswith("lining/")}


def of(pattern: Pattern, *slugs: str) -> float:
    """The area of all pieces of these steps, by an outside program, mm²."""
    return sum(area(piece) for name, piece in pattern.pieces.items() if name.split(".")[0] in slugs)


@pytest.mark.parametrize(
    ("edge", "start", "edges"),
    [
        ("neck", "neck_pit", NECK[:1]),
        ("shoulder", "shoulder_point", NECK[:1]),
        ("armhole", "shoulder_point", ARMHOLE[:1]),
    ],
)
def test_a_dart_that_is_closed_in_the_facing_is_open_and_shorter_in_the_lining(
    edge: str, start: str, edges: list[dict[str, Any]]
) -> None:
    done = applied(with_dart(edge, start), "facing", edges=edges, turn="0 mm", interfaced=False)
    pattern = changed(done, "lining", pieces=[FRONT], facings=["facing.front/edge"])
    together = of(pattern, "lining", "facing")
    assert together == pytest.approx(area(pattern.pieces[FRONT]), abs=40.0)
    (own,) = (dart for dart in pattern.pieces[FRONT].darts if dart.name.startswith("transfer_dart"))
    (dart,) = (dart for dart in pattern.pieces["lining.front"].darts if dart.name.endswith("bust_dart"))
    legs = [pattern.edges[name].length for name in (dart.first_leg, dart.second_leg)]
    assert legs[0] == pytest.approx(legs[1], abs=0.1)
    if edge != "shoulder":
        assert legs[0] < pattern.edges[own.first_leg].length - 40.0
    assert lining_walks(pattern) == pytest.approx(dict.fromkeys(lining_walks(pattern), 0.0), abs=0.1)
    assert pattern.seams["lining/front_facing"].ease == pytest.approx(0.0, abs=0.1)


def test_a_lining_of_panels_ends_at_the_all_in_one_facing_over_them() -> None:
    done = applied(panels(), "all_in_one_facing", parts=PARTS, turn="0 mm", interfaced=False)
    run = applied(done, "lining", pieces=list(panels().pattern.pieces), facings=FACINGS)
    assert run.suspended is None, run.suspended.error
    found = lining_walks(run.pattern)
    assert {"lining/front_facing", "lining/back_facing", "lining/front_style_line"} <= set(found)
    assert "lining/shoulder" not in found
    assert found == pytest.approx(dict.fromkeys(found, 0.0), abs=0.1)
    assert len(run.pattern.seams["lining/front_facing"].second) == 2
    front = [piece for name, piece in run.pattern.pieces.items() if name.startswith("princess.")]
    made = [run.pattern.pieces[f"lining.front_{word}"] for word in ("center", "side")]
    facing = run.pattern.pieces["all_in_one_facing.front"]
    assert sum(map(area, [*made, facing])) == pytest.approx(sum(map(area, front)), abs=20.0)
    stops = [one.code for one in examine(run).findings if one.severity == "stop" and "lining" in f"{one}"]
    assert stops == []


def test_a_dart_whose_point_lies_under_the_facing_is_gone_from_the_lining() -> None:
    """And one that opens in the side seam above the end of the facing is cut by its free edge."""
    done = applied(bodice("small-80"), "all_in_one_facing", parts=PARTS, turn="0 mm", interfaced=False)
    pattern = changed(done, "lining", pieces=[FRONT, BACK], facings=FACINGS)
    darts = {dart.name for dart in pattern.pieces["lining.back"].darts}
    assert "lining.back/shoulder_dart" not in darts
    assert "lining.front/bust_dart" in {dart.name for dart in pattern.pieces["lining.front"].darts}
    assert area(pattern.pieces["lining.front"]) + area(
        pattern.pieces["all_in_one_facing.front"]
    ) == pytest.approx(area(pattern.pieces[FRONT]), abs=5.0)
    assert abs(pattern.seams["lining/back_facing"].ease) < 6.0
    assert lining_walks(pattern) == pytest.approx(dict.fromkeys(lining_walks(pattern), 0.0), abs=0.1)


def test_a_facing_joined_over_the_shoulder_bounds_front_and_back_and_a_center_seam_gets_its_pleat() -> None:
    opened = applied(bodice(), "center_seam", center=f"{BACK}/center_back")
    done = applied(opened, "facing", edges=NECK, joined=True, interfaced=False)
    pattern = changed(
        done,
        "lining",
        pieces=[FRONT, BACK],
        facings=["facing.joined/edge"],
        centers=[f"{BACK}/center_back"],
        pleat="25 mm",
    )
    assert lining_walks(pattern) == pytest.approx(dict.fromkeys(lining_walks(pattern), 0.0), abs=0.1)
    edges = [use.edge for use in pattern.seams["lining/joined_facing"].second]
    assert [edge.split("/")[0] for edge in edges] == ["lining.front", "lining.back"]
    center = pattern.edges["lining.back/center_back"].path
    old = pattern.pieces["lining.back"].line("lining.back/pleat_line").path
    assert center.start.distance_to(old.start) == pytest.approx(25.0)
    assert pattern.seams["lining/center_back"].first[0].starts_at == "lining.back/pleat_edge_back_center_back"


def test_lines_end_at_the_facing() -> None:
    done = applied(panels(), "all_in_one_facing", parts=PARTS, interfaced=False)
    pattern = changed(done, "lining", pieces=list(panels().pattern.pieces), facings=FACINGS)
    for name, piece in pattern.pieces.items():
        if name.startswith("lining."):
            places = [
                line.path.point_at(line.path.length * share) for line in piece.lines for share in (0.02, 0.98)
            ]
            assert all(piece.sew_line.contains(place) for place in places), name


def test_a_neck_facing_over_a_shoulder_princess_seam_bounds_the_panel_beside_too() -> None:
    """It faces the center panel alone and covers a corner of the side panel."""
    done = applied(panels(), "facing", edges=NECK, depth="8 cm", turn="0 mm", interfaced=False)
    facings = ["facing.front_center/edge", "facing.back_center/edge"]
    pattern = changed(done, "lining", pieces=list(panels().pattern.pieces), facings=facings)
    assert lining_walks(pattern) == pytest.approx(dict.fromkeys(lining_walks(pattern), 0.0), abs=0.1)
    assert "lining/shoulder" in lining_walks(pattern)
    made = ["lining.front_center", "lining.front_side", "facing.front_center"]
    whole = ["princess.front_center", "princess.front_side"]
    areas = [sum(area(pattern.pieces[name]) for name in names) for names in (made, whole)]
    assert areas[0] == pytest.approx(areas[1], abs=5.0)


def test_a_skirt_lining_ends_at_the_waist_facing_with_its_darts_open() -> None:
    waist = [
        {"edge": "skirt.front/waist", "starts_at": "skirt.front/waist_center"},
        {"edge": "skirt.back/waist", "starts_at": "skirt.back/waist_side"},
    ]
    done = applied(skirt(), "facing", edges=waist, turn="0 mm", interfaced=False)
    facings = ["facing.front/edge", "facing.back/edge"]
    pattern = changed(done, "lining", pieces=["skirt.front", "skirt.back"], facings=facings)
    assert lining_walks(pattern) == pytest.approx(dict.fromkeys(lining_walks(pattern), 0.0), abs=0.1)
    together = of(pattern, "lining", "facing")
    assert together == pytest.approx(of(pattern, "skirt"), abs=80.0)
    darts = [len(pattern.pieces[f"{slug}.back"].darts) for slug in ("skirt", "lining")]
    assert darts[0] == darts[1] > 0


def test_an_armhole_that_is_raised_within_the_facing_is_refused() -> None:
    done = applied(bodice(), "all_in_one_facing", parts=PARTS, interfaced=False)
    asked = {"pieces": [FRONT, BACK], "facings": FACINGS, "armholes": LINING["armholes"]}
    assert refusal(done, "lining", **asked) == "lining-facing-shaped"
