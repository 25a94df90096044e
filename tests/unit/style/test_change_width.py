"""Widened and narrowed: shared over darts and seams, full at one place, nothing at others."""

from typing import Any

import pytest

from notchbook.app.examining import examine
from notchbook.pattern import Pattern, Severity, sewn_length
from notchbook.pattern.slashing import dart_angle
from support.edge_steps import (
    BACK,
    FRONT,
    applied,
    bodice,
    changed,
    misfits,
    names_of,
    notes,
    place,
    refusal,
    side_seams,
    skirt,
)

DARTS = [{"intake": "skirt.front/waist_dart"}, {"intake": "skirt.back/waist_dart_center"}]
WAIST = side_seams("0 cm", "20 cm")
HIP = side_seams("20 cm", "0 cm", "45 cm")


def waist(pattern: Pattern) -> float:
    return 2.0 * sum(sewn_length(pattern, f"skirt.{side}/waist") for side in ("front", "back"))


def hip(pattern: Pattern) -> float:
    return 2.0 * sum(
        pattern.pieces[f"skirt.{side}"].line(f"skirt.{side}/hip_line").path.length
        for side in ("front", "back")
    )


@pytest.mark.parametrize("amount", ["4 cm", "-3 cm"])
def test_the_waist_grows_by_the_amount_and_the_hip_stays(amount: str) -> None:
    wanted = float(amount.split()[0]) * 10.0
    after = changed(skirt(), "change_width", amount=amount, seams=WAIST, darts=DARTS)
    assert waist(after) - waist(skirt().pattern) == pytest.approx(wanted, abs=0.05)
    assert hip(after) == pytest.approx(hip(skirt().pattern), abs=1e-6)
    assert max(abs(off) for off in misfits(after).values()) < 0.01


def test_the_hip_line_grows_by_the_amount_and_waist_and_hem_stay() -> None:
    after = changed(skirt(), "change_width", amount="3 cm", seams=HIP)
    assert hip(after) - hip(skirt().pattern) == pytest.approx(30.0, abs=1e-6)
    assert waist(after) == pytest.approx(waist(skirt().pattern), abs=1e-3)
    hems = [pattern.edges["skirt.front/hem"].length for pattern in (skirt().pattern, after)]
    assert hems[0] == pytest.approx(hems[1], abs=1e-6)
    assert max(abs(off) for off in misfits(after).values()) < 0.01


def test_the_waist_bends_with_a_side_seam_that_turned_there() -> None:
    # Wider at the hip alone, the side seam leans otherwise at the waist: across it the waist runs on.
    run = applied(skirt(), "change_width", amount="4 cm", seams=side_seams("20 cm", "0 cm", "55 cm"))
    codes = {one.code for one in examine(run, cut=False).findings if one.severity is not Severity.NOTE}
    assert codes == {"width-one-seam"}
    assert waist(run.pattern) == pytest.approx(waist(skirt().pattern), abs=0.01)


def test_a_dart_gives_what_it_is_asked_to_and_keeps_equal_legs() -> None:
    before, after = (
        run.pattern for run in (skirt(), applied(skirt(), "change_width", amount="2 cm", darts=DARTS))
    )
    for dart in DARTS:
        old, new = before.intakes[dart["intake"]], after.intakes[dart["intake"]]
        assert dart_angle(after.piece_of(new.name), new) < dart_angle(before.piece_of(old.name), old)
        legs = [after.edges[leg].length for leg in (new.first_leg, new.second_leg)]
        assert legs[0] == pytest.approx(legs[1], abs=1e-6)
        assert legs[0] == pytest.approx(before.edges[old.first_leg].length, abs=1e-6)
    assert waist(after) - waist(before) == pytest.approx(20.0, abs=0.02)


def test_a_dart_that_gives_all_keeps_its_names_with_nothing_in_it() -> None:
    piece = skirt().pattern.pieces["skirt.front"]
    intake = piece.intake("skirt.front/waist_dart")
    first, second = piece.edge(intake.first_leg).path.start, piece.edge(intake.second_leg).path.end
    whole = 2.0 * first.distance_to(second)
    more = f"{whole + 4.0} mm"
    assert refusal(skirt(), "change_width", amount=more, darts=DARTS[:1]) == "width-dart-used-up"
    after = changed(skirt(), "change_width", amount=f"{whole - 0.5} mm", darts=DARTS[:1])
    assert "skirt.front/waist_dart" in after.intakes


def test_the_promise_of_the_waist_grows_with_what_was_asked() -> None:
    # A waist that is 4 cm wider on purpose stops no paper; one that is wider unasked does.
    run = applied(skirt(), "change_width", amount="4 cm", seams=WAIST, darts=DARTS)
    promise = next(one for one in run.expectations if one.name == "skirt/waist_girth")
    before = next(one for one in skirt().expectations if one.name == "skirt/waist_girth")
    assert promise.ease - before.ease == pytest.approx(40.0, abs=1e-9)
    assert not [one for one in examine(run, cut=False).findings if one.severity is Severity.STOP]


def test_shares_are_written_down_and_even_where_none_are_given() -> None:
    run = applied(skirt(), "change_width", amount="4 cm", seams=WAIST, darts=DARTS)
    written = run.recipe.steps[-1].parameters
    assert [one["share"] for one in (*written["darts"], *written["seams"])] == [0.25] * 4


def test_given_shares_decide() -> None:
    shared = [{**seam, "share": share} for seam, share in zip(WAIST, (0.8, 0.2), strict=True)]
    after = changed(skirt(), "change_width", amount="2 cm", seams=shared)
    front, back = (
        sewn_length(after, f"skirt.{side}/waist") - sewn_length(skirt().pattern, f"skirt.{side}/waist")
        for side in ("front", "back")
    )
    assert front == pytest.approx(8.0, abs=0.01)
    assert back == pytest.approx(2.0, abs=0.01)


def test_a_large_amount_at_one_seam_alone_is_told() -> None:
    assert "width-one-seam" in notes(skirt(), "change_width", amount="4 cm", seams=WAIST)
    assert "width-one-seam" not in notes(skirt(), "change_width", amount="1 cm", seams=WAIST)
    assert "width-one-seam" not in notes(skirt(), "change_width", amount="4 cm", seams=WAIST, darts=DARTS)


def under_arm() -> list[dict[str, Any]]:
    return [
        {
            "level": place(f"{piece}/side_seam", f"{piece}/underarm", "0 cm"),
            "nothing_at": [place(f"{piece}/side_seam", f"{piece}/waist_side", "0 cm")],
        }
        for piece in (FRONT, BACK)
    ]


def test_a_side_seam_with_a_dart_in_it_stays_true() -> None:
    after = changed(bodice(), "change_width", amount="3 cm", seams=under_arm())
    assert max(abs(off) for off in misfits(after).values()) < 0.05
    dart = after.intakes[f"{FRONT}/bust_dart"]
    legs = [after.edges[leg].length for leg in (dart.first_leg, dart.second_leg)]
    assert legs[0] == pytest.approx(legs[1], abs=1e-6)
    assert legs[0] > bodice().pattern.edges[dart.first_leg].length + 3.0, "the dart reaches the wider seam"


def test_a_fold_moves_as_a_whole_or_not_at_all() -> None:
    center = place("skirt.front/center_front", "skirt.front/waist_center", "20 cm")
    after = changed(skirt(), "change_width", amount="2 cm", seams=[{"level": center}])
    fold = after.edges["skirt.front/center_front"].path
    assert fold.length == pytest.approx(fold.start.distance_to(fold.end), abs=1e-9)
    nothing = place("skirt.front/center_front", "skirt.front/hem_center", "10 cm")
    bent = [{"level": center, "nothing_at": [nothing]}]
    assert refusal(skirt(), "change_width", amount="2 cm", seams=bent) == "width-fold-bent"


def test_nothing_by_nothing() -> None:
    after = changed(skirt(), "change_width", amount="0 cm", seams=WAIST, darts=DARTS)
    assert after.pieces["skirt.front"].outline == skirt().pattern.pieces["skirt.front"].outline
    assert names_of(after) == names_of(skirt().pattern)


def test_refusals() -> None:
    shared = [{**seam, "share": 0.3} for seam in WAIST]
    assert refusal(skirt(), "change_width", amount="1 cm", seams=shared) == "width-shares"
    elsewhere = [{**WAIST[0], "nothing_at": WAIST[1]["nothing_at"]}]
    assert refusal(skirt(), "change_width", amount="1 cm", seams=elsewhere) == "width-nothing-elsewhere"
    both = side_seams("20 cm", "20 cm")
    assert refusal(skirt(), "change_width", amount="1 cm", seams=both) == "width-nothing-at-level"
    hem = [{"level": place("skirt.front/hem", "skirt.front/hem_side", "10 cm")}]
    assert refusal(skirt(), "change_width", amount="1 cm", seams=hem) == "width-edge-level"


@pytest.mark.parametrize("body", ["small-80", "medium-92", "large-116"])
def test_no_part_too_short_to_draw_is_left_at_a_seam_made_even(body: str) -> None:
    seams = [
        {"level": place(edge, waist_side, "0 cm"), "nothing_at": [place(edge, waist_side, "10 cm")]}
        for edge, waist_side in (
            (f"{FRONT}/side_seam/below", f"{FRONT}/waist_side"),
            (f"{BACK}/side_seam", f"{BACK}/waist_side"),
        )
    ]
    after = changed(bodice(body), "change_width", amount="4 cm", seams=seams)
    for piece in (FRONT, BACK):
        for edge in after.pieces[piece].outline:
            assert min(segment.length for segment in edge.path.segments) > 0.1, edge.name
    assert max(abs(off) for off in misfits(after).values()) < 0.01
