"""Truing steps: the side that is not the master follows, to nothing left; what is true already stays."""

from collections.abc import Mapping
from dataclasses import replace

import pytest

from notchbook.app.drafting import draft
from notchbook.body import MeasureSet
from notchbook.checks import Subject, load_check
from notchbook.pattern import Notch, Pattern, walk_seam
from notchbook.recipe import Replay, StepContext, add_step, replay
from notchbook.recipe.registry import definition
from support.bent import point_moved
from support.hand_skirt import hand_skirt
from support.style_lines import bodice_with, code, good
from support.upper_patterns import drafted
from support.yoke_skirt import FORM_A

SEAM = "bodice/side_seam"
LONGER = ("change_length", "longer", {"hems": ["bodice.back/waist"], "amount": "2 mm"})
HIP = "skirt.back/side_seam/hip"


def misfit(run: Replay, seam: str = SEAM) -> float:
    pattern = good(run)
    return walk_seam(pattern, pattern.seams[seam]).misfit


@pytest.mark.parametrize("master", ["first", "second"])
@pytest.mark.parametrize("end", ["start", "end"])
def test_the_other_side_follows_its_master_to_the_last_hundredth(master: str, end: str) -> None:
    assert misfit(bodice_with(LONGER)) > 1.5
    trued = bodice_with(LONGER, ("true_seam", "t", {"seam": SEAM, "master": master, "end": end}))
    assert abs(misfit(trued)) < 0.01
    before, after = good(bodice_with(LONGER)), good(trued)
    kept = "bodice.front" if master == "first" else "bodice.back"
    assert after.pieces[kept] == before.pieces[kept]
    assert set(after.edges) == set(before.edges)


def test_a_true_seam_is_left_as_it_is() -> None:
    plain, trued = bodice_with(), bodice_with(("true_seam", "t", {"seam": "bodice/shoulder"}))
    for piece in good(plain).pieces.values():
        for edge in piece.outline:
            assert good(trued).edges[edge.name].length == pytest.approx(edge.length, abs=0.01)


def test_more_than_truing_is_refused() -> None:
    far = ("change_length", "longer", {"hems": ["bodice.back/waist"], "amount": "30 mm"})
    assert code(bodice_with(far, ("true_seam", "t", {"seam": SEAM}))) == "true-seam-too-far"


def test_a_seam_of_an_edge_to_itself_is_refused() -> None:
    skirt = hand_skirt()
    with pytest.raises(Exception, match="true-seam-own-edge"):
        ran(skirt, "true_seam", {"seam": "skirt/center_back"})


def test_a_seam_that_is_not_there_is_lost() -> None:
    assert code(bodice_with(("true_seam", "t", {"seam": "bodice/none"}))) == "name-lost"


def ran(pattern: Pattern, operation: str, parameters: dict[str, object]) -> Pattern:
    step = definition(operation)
    context = StepContext(MeasureSet("nobody"), "t", f"{operation}-1")
    changed = step.run(pattern, context, step.parameters.model_validate(parameters))
    after: Pattern = changed.pattern
    return after


def test_declared_ease_takes_the_misfit_and_moves_nothing() -> None:
    run = bodice_with(LONGER, ("declare_ease", "e", {"seam": SEAM, "ease": "2 mm"}))
    assert abs(misfit(run)) < 0.05
    assert good(run).pieces == good(bodice_with(LONGER)).pieces


def test_a_notch_moves_to_its_mate() -> None:
    skirt = hand_skirt()
    notch: Notch = skirt.notches[HIP]
    off = skirt.with_notches(replace(notch, place=replace(notch.place, amount=notch.place.amount - 3.0)))
    assert list(load_check("seam-notches").run(Subject(off)))
    trued = ran(off, "true_notch", {"notch": HIP})
    assert not list(load_check("seam-notches").run(Subject(trued)))
    assert trued.pieces == off.pieces


def test_a_notch_of_no_seam_is_refused() -> None:
    skirt = hand_skirt()
    lone = skirt.with_notches(replace(skirt.notches[HIP], seam=None))
    with pytest.raises(Exception, match="true-notch-alone"):
        ran(lone, "true_notch", {"notch": HIP})


def test_legs_that_differ_become_equal() -> None:
    skirt = point_moved(hand_skirt(), "skirt.front/waist_dart/side_mouth", 0.0, -2.0)
    assert [f.code for f in load_check("dart-legs").run(Subject(skirt))] == ["dart-legs-differ"]
    trued = ran(skirt, "true_dart", {"dart": "skirt.front/waist_dart"})
    assert not list(load_check("dart-legs").run(Subject(trued)))


def test_edges_beside_a_seam_are_drawn_smooth_across_it() -> None:
    neck: dict[str, object] = {
        "necks": [
            {"edge": "bodice.front/neck", "center": "bodice.front/neck_pit", "shape": "v", "depth": "6 cm"},
            {"edge": "bodice.back/neck", "center": "bodice.back/nape"},
        ]
    }
    base = drafted("medium-92", "bodice")

    def with_steps(*steps: tuple[str, Mapping[str, object]]) -> Subject:
        recipe = base.recipe
        for operation, parameters in steps:
            recipe = add_step(recipe, operation, parameters, base=base.measures)
        return Subject(good(replay(recipe, base.measures)))

    deeper = ("change_neckline", neck)
    across = ("true_junction", {"seam": "bodice/shoulder", "end": "start"})
    corner = load_check("seam-junctions").run(with_steps(deeper))
    assert "bodice/shoulder" in [one.where for one in corner]
    trued = load_check("seam-junctions").run(with_steps(deeper, across))
    assert "bodice/shoulder" not in [one.where for one in trued]


def test_a_straight_hem_beside_a_trued_seam_neither_waves_nor_makes_a_corner() -> None:
    base = draft("skirt", FORM_A)
    longer = {"hems": ["skirt.back/waist"], "amount": "8 mm"}
    recipe = add_step(base.recipe, "change_length", longer, base=FORM_A)
    recipe = add_step(recipe, "true_seam", {"seam": "skirt/side_seam"}, base=FORM_A)
    subject = Subject(good(replay(recipe, FORM_A)))
    for check in ("fair-edges", "no-bump", "seam-junctions", "center-square"):
        assert [one.code for one in load_check(check).run(subject) if "hem" in str(one.where)] == []
    hem = subject.pattern.edges["skirt.back/hem"].path
    assert abs(hem.start.y - hem.end.y) == pytest.approx(8.0, abs=0.1)


@pytest.mark.parametrize(("amount", "master"), [("7 mm", "first"), ("-8 mm", "first"), ("9 mm", "second")])
def test_the_waist_beside_a_trued_seam_gets_no_wave_and_its_darts_stay_true(amount: str, master: str) -> None:
    """A waist is trued with its darts closed, as one line from center to side (a fact of the trade)."""
    longer = ("change_length", "longer", {"hems": ["bodice.back/waist"], "amount": amount})
    trued = bodice_with(longer, ("true_seam", "t", {"seam": SEAM, "master": master}))
    assert abs(misfit(trued)) < 0.01
    subject = Subject(good(trued))
    for check in ("fair-edges", "no-bump", "dart-legs", "seam-junctions"):
        assert [one.code for one in load_check(check).run(subject) if "waist" in str(one.where)] == []
    moved = "back" if master == "first" else "front"
    before, after = good(bodice_with(longer)), good(trued)
    center = f"bodice.{moved}/center_{moved}"
    assert after.edges[center].path == before.edges[center].path
    side = f"bodice.{moved}/waist/side"
    mouth = min(before.edges[side].path.start, before.edges[side].path.end, key=lambda end: abs(end.x))
    assert after.edges[side].path.nearest(mouth).gap > 0.2, "not the part beside the seam alone"
