"""Seams swung at the hem, to nothing at a place."""

import pytest

from notchbook.app.examining import examine
from notchbook.pattern import Pattern, Severity
from support.edge_steps import applied, changed, misfits, names_of, place, refusal, skirt, trousers

PLACES = [place(f"skirt.{side}/side_seam", f"skirt.{side}/waist_side", "24 cm") for side in ("front", "back")]


def hem_side_x(pattern: Pattern, side: str) -> float:
    return abs(pattern.pieces[f"skirt.{side}"].points[f"skirt.{side}/hem_side"].x)


@pytest.mark.parametrize(("amount", "out"), [("-3 cm", -30.0), ("5 cm", 50.0)])
def test_the_hem_moves_by_the_amount_and_the_seam_above_the_place_stays(amount: str, out: float) -> None:
    after = changed(skirt(), "taper", amount=amount, nothing_at=PLACES)
    for side in ("front", "back"):
        # The corner is then brought to where hem and seam are square, along the seam.
        moved = hem_side_x(after, side) - hem_side_x(skirt().pattern, side)
        assert moved == pytest.approx(out, abs=1.0)
        old, new = (pattern.edges[f"skirt.{side}/side_seam"] for pattern in (skirt().pattern, after))
        for distance in (50.0, 150.0, 239.0):
            runs_down = new.end.endswith("hem_side")
            places = [e.path.point_at(distance if runs_down else e.length - distance) for e in (old, new)]
            assert places[0].distance_to(places[1]) < 1e-6
    assert max(abs(off) for off in misfits(after).values()) < 0.01


@pytest.mark.parametrize("amount", ["-3 cm", "5 cm"])
def test_seam_and_hem_meet_square_and_nothing_is_found(amount: str) -> None:
    run = applied(skirt(), "taper", amount=amount, nothing_at=PLACES)
    for side in ("front", "back"):
        piece = run.pattern.pieces[f"skirt.{side}"]
        hem, seam = piece.edge(f"skirt.{side}/hem"), piece.edge(f"skirt.{side}/side_seam")
        first, second = (hem, seam) if hem.end == seam.start else (seam, hem)
        corner = first.path.tangent_at(first.length).dot(second.path.tangent_at(0.0))
        assert corner == pytest.approx(0.0, abs=1e-3)
    assert not [one for one in examine(run, cut=True).findings if one.severity is not Severity.NOTE]


def test_the_seam_keeps_its_length_but_for_the_rise_of_the_hem() -> None:
    after = changed(skirt(), "taper", amount="-3 cm", nothing_at=PLACES)
    lengths = [pattern.edges["skirt.front/side_seam"].length for pattern in (skirt().pattern, after)]
    # A pegged side must reach a little lower, so that the hem meets it square.
    assert 1.0 < lengths[1] - lengths[0] < 8.0


def test_four_seams_of_trousers() -> None:
    places = [
        place(f"trousers.{side}/{edge}", f"trousers.{side}/{top}", distance)
        for side in ("front", "back")
        for edge, top, distance in (("side_seam", "waist_side", "40 cm"), ("inseam", "crotch_point", "12 cm"))
    ]
    after = changed(trousers(), "taper", amount="-1.5 cm", nothing_at=places)
    assert max(abs(off) for off in misfits(after).values()) < 0.5
    hems = [pattern.edges["trousers.front/hem"].length for pattern in (trousers().pattern, after)]
    assert hems[1] - hems[0] == pytest.approx(-30.0, abs=1.0)


def test_nothing_by_nothing() -> None:
    after = changed(skirt(), "taper", amount="0 cm", nothing_at=PLACES)
    assert after.pieces == skirt().pattern.pieces
    assert names_of(after) == names_of(skirt().pattern)


def test_refusals() -> None:
    at_hem = [place("skirt.front/side_seam", "skirt.front/hem_side", "0 cm")]
    assert refusal(skirt(), "taper", amount="1 cm", nothing_at=at_hem) == "taper-at-hem"
    assert refusal(skirt(), "taper", amount="60 cm", nothing_at=PLACES) == "taper-too-much"
    waist = [place("skirt.front/waist/center", "skirt.front/waist_center", "2 cm")]
    assert refusal(skirt(), "taper", amount="1 cm", nothing_at=waist) == "taper-no-hem"
