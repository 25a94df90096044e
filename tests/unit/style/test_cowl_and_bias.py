"""A cowl's neckline, its facing, and pieces cut on the bias."""

from typing import Any

import pytest

from notchbook.app.drafting import draft
from notchbook.app.examining import examine
from notchbook.finish.sewing import sewing_order
from notchbook.geometry import Transform
from notchbook.pattern import Severity, pattern_to_data
from notchbook.recipe import Replay, replay
from support.skirt_judge import Judge
from support.sleeve_bodies import spoken_of, woman
from support.yoke_skirt import BACK, FRONT, run, skirt_recipe, with_steps

FRONT_PIECE = "bodice.front"
PLAIN = draft("bodice", woman())
SQUARE = {
    "center": f"{FRONT_PIECE}/center_front",
    "neck": f"{FRONT_PIECE}/neck",
    "neck_center": f"{FRONT_PIECE}/neck_pit",
}
DOWN = {**SQUARE, "across": f"{FRONT_PIECE}/waist/center", "across_center": f"{FRONT_PIECE}/waist_center"}


def cowl(steps: tuple[tuple[str, str, dict[str, Any]], ...] = (), **changes: Any) -> Replay:
    base = woman()
    step = ("cowl", "cowl", {**DOWN, **changes})
    return replay(with_steps(PLAIN.recipe, *steps, step, base=base), base)


@pytest.mark.parametrize("spread", ["2 cm", "8 cm", "14 cm"])
def test_the_neckline_is_straight_and_square_to_a_straight_center(spread: str) -> None:
    done = cowl(spread=spread, facing="0 mm")
    assert done.suspended is None, str(done.suspended)
    piece = done.pattern.pieces[FRONT_PIECE]
    center, neck = piece.edge(f"{FRONT_PIECE}/center_front"), piece.edge("cowl.front/cowl_edge")
    assert center.kind == "fold"
    assert len(center.path.segments) == len(neck.path.segments) == 1
    along, out = center.path.end - center.path.start, neck.path.end - neck.path.start
    assert along.unit().dot(out.unit()) == pytest.approx(0.0, abs=1e-9)
    old = PLAIN.pattern.edges[f"{FRONT_PIECE}/center_front"].path
    assert center.path.start == old.start, "the center does not move"
    assert abs((old.end - old.start).cross(along)) < 1e-6


def test_more_spread_makes_a_longer_neckline_and_leaves_the_rest() -> None:
    lengths = []
    for spread in ("2 cm", "6 cm", "10 cm"):
        piece = cowl(spread=spread, facing="0 mm").pattern.pieces[FRONT_PIECE]
        lengths.append(piece.edge("cowl.front/cowl_edge").length)
        for word in ("shoulder", "armhole", "waist/center", "waist/side", "side_seam/above"):
            name = f"{FRONT_PIECE}/{word}"
            assert piece.edge(name).length == pytest.approx(PLAIN.pattern.edges[name].length, abs=1e-6)
    assert lengths == sorted(lengths)
    assert lengths[-1] > lengths[0] + 50.0


def test_the_facing_is_the_front_folded_at_the_neckline() -> None:
    """Folded by reflection: the end of the facing lies along the shoulder, its center on the center."""
    done = cowl(spread="8 cm", facing="7 cm")
    piece = done.pattern.pieces[FRONT_PIECE]
    fold = piece.line("cowl.front/neck_fold").path
    over = Transform.reflection(fold.start, fold.end)
    shoulder = piece.edge(f"{FRONT_PIECE}/shoulder").path
    end = piece.edge("cowl.front/facing_end").path
    along = shoulder.tangent_at(0.0, "after")
    folded = over.apply(end.start) - over.apply(end.end)
    assert abs(along.cross(folded.unit())) < 1e-9
    edge = piece.edge("cowl.front/facing_edge").path
    assert edge.start.distance_to(fold.start) == pytest.approx(70.0, abs=1e-9)
    center = piece.edge(f"{FRONT_PIECE}/center_front").path
    assert len(center.segments) == 1
    assert Judge(pattern_to_data(done.pattern)).polygon(FRONT_PIECE).is_valid
    assert [finding.code for finding in spoken_of(done) if finding.severity == "stop"] == []


def test_a_dart_in_the_neck_falls_in_the_folds() -> None:
    into_neck = {
        "darts": [f"{FRONT_PIECE}/waist_dart"],
        "places": [
            {"at": {"edge": f"{FRONT_PIECE}/neck", "from_point": f"{FRONT_PIECE}/neck_pit", "fraction": 0.4}}
        ],
    }
    done = cowl((("transfer_dart", "moved", into_neck),), spread="0 mm")
    assert done.suspended is None, str(done.suspended)
    piece = done.pattern.pieces[FRONT_PIECE]
    assert [dart.name for dart in piece.darts] == [f"{FRONT_PIECE}/bust_dart"]
    assert [finding.code for finding in spoken_of(done) if finding.severity == "stop"] == []


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"across": None, "across_center": None}, "cowl-needs-across"),
        ({"neck_center": f"{FRONT_PIECE}/side_neck_point", "spread": "0 mm"}, "cowl-center"),
        ({"center": f"{FRONT_PIECE}/armhole"}, "cowl-center"),
        ({"neck": f"{FRONT_PIECE}/shoulder"}, "cowl-neck-sewn"),
    ],
)
def test_refusals(changes: dict[str, Any], code: str) -> None:
    stop = cowl(**changes).suspended
    assert stop is not None
    assert stop.error.code == code


def bias(**changes: Any) -> Replay:
    return run(with_steps(skirt_recipe(), ("bias_grain", "bias", {"pieces": [FRONT, BACK], **changes})))


def test_the_grain_is_turned_and_nothing_else() -> None:
    plain, done = run(skirt_recipe()), bias()
    for name in (FRONT, BACK):
        assert done.pattern.pieces[name].grain.degrees == pytest.approx(135.0)
        assert done.pattern.pieces[name].outline == plain.pattern.pieces[name].outline
    again = with_steps(done.recipe, ("bias_grain", "back", {"pieces": [FRONT, BACK], "degrees": -45.0}))
    assert run(again).pattern.pieces == plain.pattern.pieces


def test_hanging_out_is_told_with_its_amount() -> None:
    notes = [note for note in bias(narrows=3.0).notes if note.check == "bias_grain"]
    assert [note.code for note in notes] == ["bias-narrows", "bias-narrows"]
    box = run(skirt_recipe()).pattern.pieces[FRONT].bounds
    assert notes[0].measured == pytest.approx(0.97 * (box.max_x - box.min_x))
    assert not [note for note in bias(degrees=0.0).notes if note.check == "bias_grain"]


def test_what_a_strip_of_the_cloth_told_need_not_be_looked_at_again() -> None:
    severities = [
        {note.severity for note in bias(**given).notes if note.check == "bias_grain"}
        for given in ({}, {"narrows": 2.5})
    ]
    assert severities == [{Severity.LOOK}, {Severity.NOTE}]


def test_the_cloth_hangs_out_before_its_hem_is_turned() -> None:
    """24 hours before the hem is leveled: common practice, no source."""
    keys = [line.key for line in sewing_order(bias().pattern).lines]
    assert keys.index("bias/hung") < keys.index(f"{FRONT}/hem_line")
    line = next(line for line in sewing_order(bias().pattern).lines if line.key == "bias/hung")
    assert "24 hours" in line.text
    assert "bias/hung" not in [line.key for line in sewing_order(bias(degrees=0.0).pattern).lines]


def test_a_half_on_the_fold_is_found_by_its_grain_until_it_is_unfolded() -> None:
    def astray(done: Replay) -> list[str]:
        found = examine(done).findings
        assert not [f for f in found if f.code == "grain-off-center"], "the bias was asked for"
        return [f.piece or "" for f in found if f.code == "bias-on-fold"]

    done = bias(pieces=[FRONT])
    assert astray(done) == [FRONT]
    assert astray(run(with_steps(done.recipe, ("unfold", "whole", {"pieces": [FRONT]})))) == []


def test_a_piece_that_is_not_there_is_lost() -> None:
    done = replay(
        with_steps(skirt_recipe(), ("bias_grain", "bias", {"pieces": ["skirt.brim"]})),
        run(skirt_recipe()).measures,
    )
    assert done.suspended is not None
    assert done.suspended.error.code == "name-lost"


@pytest.mark.parametrize(("spread", "code"), [("6 cm", "cowl-drawn"), ("5 mm", "cowl-shallow")])
def test_a_cowl_that_is_no_longer_than_the_neck_was_is_said_not_to_fall(spread: str, code: str) -> None:
    (note,) = cowl(spread=spread).states[-1].notes
    assert note.code == code
    assert note.measured is not None and note.wanted is not None
    assert (note.measured < note.wanted) == (code == "cowl-shallow")
