"""Hems that are curved, and how hems are finished."""

import pytest

from notchbook.app.examining import examine
from notchbook.pattern import Allowance, Severity
from support.edge_steps import applied, changed, misfits, names_of, notes, refusal, skirt, trousers


def hems(front: str, back: str, front_side: str, back_side: str = "") -> list[dict[str, str]]:
    ends = {"front": (front, front_side), "back": (back, back_side or front_side)}
    return [
        {
            "edge": f"skirt.{side}/hem",
            "from_point": f"skirt.{side}/hem_center",
            "start": start,
            "end": end,
        }
        for side, (start, end) in ends.items()
    ]


@pytest.mark.parametrize(
    ("front", "back", "side"),
    [("0 cm", "0 cm", "-8 cm"), ("-15 cm", "10 cm", "-4 cm")],
    ids=["tail", "high-low"],
)
def test_centers_and_sides_move_as_asked_and_the_hem_is_square_to_both(
    front: str, back: str, side: str
) -> None:
    after = changed(skirt(), "curve_hem", hems=hems(front, back, side))
    mm = {text: float(text.split()[0]) * 10.0 for text in (front, back, side)}
    for piece, center, asked in (("front", "center_front", front), ("back", "center_back", back)):
        for edge, wanted in ((center, mm[asked]), ("side_seam", mm[side])):
            name = f"skirt.{piece}/{edge}"
            grown = after.edges[name].length - skirt().pattern.edges[name].length
            assert grown == pytest.approx(wanted, abs=1e-6), name
        hem = after.edges[f"skirt.{piece}/hem"].path
        for distance in (0.0, hem.length):
            assert hem.tangent_at(distance).y == pytest.approx(0.0, abs=1e-6)
    assert max(abs(off) for off in misfits(after).values()) < 0.01


def test_no_check_stops_a_curved_hem() -> None:
    run = applied(skirt(), "curve_hem", hems=hems("0 cm", "0 cm", "-6 cm"))
    assert not [one for one in examine(run, cut=True).findings if one.severity is Severity.STOP]


def test_a_hem_through_a_point() -> None:
    one = {**hems("0 cm", "0 cm", "-8 cm")[0], "points": [{"along": 0.5, "out": "-20 mm"}]}
    old = skirt().pattern.edges["skirt.front/hem"]
    after = changed(skirt(), "curve_hem", hems=[one])
    middle = old.path.point_at(old.length / 2.0)
    gap = after.edges["skirt.front/hem"].path.nearest(middle).gap
    assert gap == pytest.approx(20.0, abs=2.0)


def test_sides_that_move_unlike_are_told() -> None:
    assert notes(skirt(), "curve_hem", hems=hems("0 cm", "0 cm", "-8 cm", "-6 cm")) == {"seam-put-out"}


def test_nothing_by_nothing() -> None:
    after = changed(skirt(), "curve_hem", hems=hems("0 cm", "0 cm", "0 cm"))
    assert after.pieces == skirt().pattern.pieces
    assert names_of(after) == names_of(skirt().pattern)


def test_refusals() -> None:
    assert refusal(skirt(), "curve_hem", hems=hems("-80 cm", "0 cm", "0 cm")) == "hem-beyond-edge"
    swapped = {**hems("0 cm", "0 cm", "-8 cm")[0]}
    points = [{"along": 0.6, "out": "1 mm"}, {"along": 0.2, "out": "1 mm"}]
    assert refusal(skirt(), "curve_hem", hems=[{**swapped, "points": points}]) == "edge-points-order"


def test_a_hem_that_is_set_moves_no_line_and_mirrors_its_corners() -> None:
    after = changed(trousers(), "set_hem", hems=["trousers.front/hem"], depth="4 cm", turn_under="1 cm")
    assert after.allowances["trousers.front/hem"] == Allowance("hem", 50.0)
    corners = {name.rsplit("/", 1)[1]: style for name, style in after.corners.items()}
    assert corners == {"hem_side": "folded", "hem_inseam": "folded"}
    assert after.pieces == trousers().pattern.pieces


def test_a_hem_by_a_row_of_the_house_table() -> None:
    after = changed(trousers(), "set_hem", hems=["trousers.front/hem"], hem_class="hem_trousers_tapered")
    assert after.allowances["trousers.front/hem"] == Allowance("hem_trousers_tapered", None)
    nothing = refusal(trousers(), "set_hem", hems=["trousers.front/hem"], depth="0 cm")
    assert nothing == "amount-not-positive"
