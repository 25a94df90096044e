"""Cut and joined again the piece is what it was: its shape, and every name still means what it meant."""

from typing import Any

import pytest

from notchbook.geometry import assert_paths_close
from notchbook.pattern import Pattern, Piece, require, require_one, sewn_length
from notchbook.recipe import recipe_from_data, recipe_to_data, replay
from support.style_lines import SKIRT_BACK, SKIRT_FRONT, code, good, place, skirt_with
from support.yoke_skirt import FORM_A

PLAIN = good(skirt_with(measures=FORM_A))
JOIN: dict[str, Any] = {
    "first_edge": "cut.front_below/style_line",
    "second_edge": "cut.front_above/style_line",
    "word": "front",
}


def line(**more: Any) -> dict[str, Any]:
    told = {
        "start": place(f"{SKIRT_FRONT}/side_seam", f"{SKIRT_FRONT}/waist_side", "16 cm"),
        "end": place(f"{SKIRT_FRONT}/center_front", f"{SKIRT_FRONT}/waist_center", "21 cm"),
    }
    return {"lines": [{**told, **more}]}


ACROSS = {
    "start": place(
        f"{SKIRT_FRONT}/waist", f"{SKIRT_FRONT}/waist_center", "50 mm", part=f"{SKIRT_FRONT}/waist/center"
    ),
    "end": place(f"{SKIRT_FRONT}/hem", f"{SKIRT_FRONT}/hem_center", "70 mm"),
}
"""From the waist to the hem: it cuts the hip line too."""

LINES = {
    "curve": line(),
    "turned": line(start_angle=12.0, end_angle=-7.0),
    "through": line(through=[{"along": 0.4, "off": "-18 mm"}, {"along": 0.7, "off": "-9 mm"}]),
    "straight": line(shape="straight"),
    "even": line(shape="even"),
    "upright": line(**ACROSS),
}


def joined(cut: dict[str, Any], *more: tuple[str, str, dict[str, Any]]) -> Pattern:
    steps = (("cut_style_line", "cut", cut), *more, ("join_pieces", "again", JOIN))
    return good(skirt_with(*steps, measures=FORM_A))


@pytest.mark.parametrize("cut", LINES.values(), ids=list(LINES))
def test_the_outline_is_the_same_edge_by_edge(cut: dict[str, Any]) -> None:
    pattern = joined(cut)
    piece = pattern.pieces["again.front"]
    for edge in PLAIN.pieces[SKIRT_FRONT].outline:
        again = pattern.edges[require_one(pattern, edge.name)]
        assert_paths_close(again.path, edge.path, 1e-6)
        assert (again.start, again.end, again.kind) == (edge.start, edge.end, edge.kind)
    assert len(piece.outline) == len(PLAIN.pieces[SKIRT_FRONT].outline)
    assert piece.sew_line.area() == pytest.approx(PLAIN.pieces[SKIRT_FRONT].sew_line.area(), abs=1e-6)


@pytest.mark.parametrize("cut", LINES.values(), ids=list(LINES))
def test_every_old_name_means_what_it_meant(cut: dict[str, Any]) -> None:
    pattern = joined(cut)
    assert require(pattern, SKIRT_FRONT, "piece") == ("again.front",)
    for name, kind in PLAIN.index.items():
        if kind in ("edge", "group"):
            assert sewn_length(pattern, name) == pytest.approx(sewn_length(PLAIN, name), abs=1e-6), name
        elif kind in ("intake", "point", "seam", "notch"):
            assert name in pattern.index


def test_lines_that_were_cut_are_one_again() -> None:
    pattern = joined(LINES["upright"])
    (hip,) = _inner(pattern.pieces["again.front"])
    assert hip == f"{SKIRT_FRONT}/hip_line/whole"
    assert pattern.groups[f"{SKIRT_FRONT}/hip_line"].members == (hip,)
    line_again = pattern.pieces["again.front"].line(hip).path
    assert_paths_close(line_again, PLAIN.pieces[SKIRT_FRONT].line(f"{SKIRT_FRONT}/hip_line").path, 1e-6)


def test_an_edge_stays_in_parts_where_something_was_told_of_one() -> None:
    wide = ("set_allowance", "wide", {"edges": [f"{SKIRT_FRONT}/side_seam/above"], "width": "2 cm"})
    pattern = joined(LINES["curve"], wide)
    assert pattern.groups[f"{SKIRT_FRONT}/side_seam"].members == (
        f"{SKIRT_FRONT}/side_seam/above",
        f"{SKIRT_FRONT}/side_seam/below",
    )
    assert require(pattern, f"{SKIRT_FRONT}/center_front") == (f"{SKIRT_FRONT}/center_front/whole",)


def test_cut_and_joined_twice_over_is_still_the_same() -> None:
    steps = (
        ("cut_style_line", "cut", LINES["through"]),
        ("join_pieces", "again", JOIN),
        ("cut_style_line", "second", LINES["upright"]),
        (
            "join_pieces",
            "once_more",
            {
                "first_edge": "second.front_below/style_line",
                "second_edge": "second.front_above/style_line",
                "word": "front",
            },
        ),
    )
    pattern = good(skirt_with(*steps, measures=FORM_A))
    for edge in PLAIN.pieces[SKIRT_FRONT].outline:
        again = pattern.edges[require_one(pattern, edge.name)]
        assert_paths_close(again.path, edge.path, 1e-6)


def test_a_join_of_the_first_version_leaves_the_parts() -> None:
    """Recipes of the first version name the parts after the join; they mean what they meant."""
    steps = (("cut_style_line", "cut", LINES["curve"]), ("join_pieces", "again", JOIN))
    data = recipe_to_data(skirt_with(*steps, measures=FORM_A).recipe)
    join = data["steps"][-1]
    join["version"] = 1
    del join["parameters"]["heal"]
    old = replay(recipe_from_data(data), FORM_A)
    assert f"{SKIRT_FRONT}/side_seam/above" in good(old).edges


def test_a_piece_whose_dart_was_closed_into_the_yoke_is_not_joined_again() -> None:
    """The yoke's edge was trued: it is no longer the line of the cut."""
    cut = line(darts=[{"intake": f"{SKIRT_FRONT}/waist_dart"}])
    steps = (("cut_style_line", "cut", cut), ("join_pieces", "again", JOIN))
    assert code(skirt_with(*steps, measures=FORM_A)) == "join-misfit"
    assert SKIRT_BACK in skirt_with(*steps, measures=FORM_A).pattern.pieces


def _inner(piece: Piece) -> list[str]:
    return [one.name for one in piece.lines]
