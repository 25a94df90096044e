"""In which order the hand-made skirt is sewn: counted by hand from its drawing, not from the program."""

from dataclasses import replace

import pytest

from notchbook.finish.sewing import sewing_order
from notchbook.finish.sewing.tasks import tasks_of
from notchbook.pattern import CutInstruction, EdgeUse, Elastic, Operation, Pattern, Seam
from support.hand_skirt import hand_skirt

RUN = (
    EdgeUse("skirt.front/waist", "skirt.front/center_waist"),
    EdgeUse("skirt.back/waist", "skirt.back/side_waist"),
)


def _keys(pattern: Pattern) -> list[str]:
    return [line.key for line in sewing_order(pattern).lines]


def test_darts_then_seams_then_hems() -> None:
    keys = _keys(hand_skirt())
    darts = [key for key in keys if "dart" in key]
    assert len(darts) == 3, "one in front, two in the back"
    assert keys[:3] == darts
    assert keys[-1] == "skirt.front/hem_line"


def test_hems_that_a_seam_joins_are_one_line_and_others_are_not() -> None:
    skirt = hand_skirt()
    line = sewing_order(skirt).lines[-1]
    assert line.text == "Turn up the hem of the skirt front and skirt back"
    assert line.at == ("skirt.front/hem", "skirt.back/hem")
    apart = _keys(skirt.with_seams(without=["skirt/side_seam"]))
    assert {"skirt.front/hem_line", "skirt.back/hem_line"} <= set(apart)


def test_the_hem_of_another_material_is_a_line_of_its_own() -> None:
    skirt = hand_skirt()
    lining = replace(skirt.pieces["skirt.back"], instructions=(CutInstruction("lining", 1),))
    assert {"skirt.front/hem_line", "skirt.back/hem_line"} <= set(_keys(skirt.with_pieces(lining)))


def test_every_seam_and_intake_stands_once() -> None:
    skirt = hand_skirt()
    keys = _keys(skirt)
    assert len(keys) == len(set(keys))
    assert {*skirt.seams, *skirt.intakes} <= set(keys)


def test_a_run_over_two_pieces_waits_for_the_seam_that_joins_them() -> None:
    """Though a seam of the panels would come first by its stage."""
    band = Seam("skirt/band", RUN, RUN, allowance_class="style_line")
    keys = _keys(hand_skirt().with_seams(band))
    assert keys.index("skirt/side_seam") < keys.index("skirt/band")


def test_the_same_run_without_that_seam_is_a_gap() -> None:
    band = Seam("skirt/band", RUN, RUN, allowance_class="style_line")
    skirt = hand_skirt().with_seams(band, without=["skirt/side_seam"])
    order = sewing_order(skirt)
    assert {(gap.ends_at, gap.goes_on_at) for gap in order.gaps} == {
        ("skirt.front/side_waist", "skirt.back/side_waist")
    }


def test_a_dart_is_closed_before_the_seam_that_crosses_it() -> None:
    band = Seam("skirt/band", RUN[:1], RUN[:1], allowance_class="style_line")
    prepared = hand_skirt().with_seams(band)
    keys = _keys(prepared)
    dart = next(key for key in keys if key.startswith("skirt.front") and "dart" in key)
    assert keys.index(dart) < keys.index("skirt/band")


def test_what_a_step_adds_stands_in_its_stage_and_after_what_it_names() -> None:
    zip_in = Operation("zip/zip", "closures", "Set the zip in.", ("skirt.back/center_back",))
    first = Operation("hook/hook", "closures", "Sew the hook on.", after=("zip/zip", "skirt/side_seam"))
    keys = _keys(hand_skirt().with_operations(first, zip_in))
    assert keys.index("zip/zip") < keys.index("skirt/side_seam") < keys.index("hook/hook")


def test_lines_that_wait_for_each_other_are_told_and_still_stand_there() -> None:
    one = Operation("a/one", "finish", "Press.", after=("a/two",))
    two = Operation("a/two", "finish", "Press again.", after=("a/one",))
    order = sewing_order(hand_skirt().with_operations(one, two))
    assert order.waiting == ("a/one", "a/two")
    assert {line.key for line in order.lines} >= {"a/one", "a/two"}


def test_left_and_right_are_one_line() -> None:
    skirt = hand_skirt()
    side = skirt.seams["skirt/side_seam"]
    both = skirt.with_seams(
        replace(side, name="skirt/side_seam@left", ease=4.0),
        replace(side, name="skirt/side_seam@right"),
        without=["skirt/side_seam"],
    )
    lines = [line for line in sewing_order(both).lines if line.key == "skirt/side_seam"]
    assert len(lines) == 1
    assert lines[0].amount == pytest.approx(4.0)
    assert lines[0].how == "eased in"


def _elastic(edges: tuple[str, ...]) -> Elastic:
    return Elastic("skirt/hem_elastic", "hem elastic", edges, 0.9, 8.0, "body")


def test_an_elastic_is_laid_on_after_its_opening_is_closed() -> None:
    """Common practice, no source: an opening is sewn to a ring first, then the elastic goes on."""
    skirt = hand_skirt().with_elastics(_elastic(("skirt.front/hem", "skirt.back/hem")))
    keys = _keys(skirt)
    assert keys[-1] == "skirt/hem_elastic"
    needs = next(task.after for task in tasks_of(skirt)[0] if task.key == "skirt/hem_elastic")
    assert "skirt/side_seam" in needs
    assert "skirt/hem_elastic" not in _keys(hand_skirt())


def test_an_elastic_that_its_step_tells_of_has_no_second_line() -> None:
    drawn = Operation("skirt/casing", "hems", "Turn the hem over the elastic.", ("skirt.front/hem",))
    keys = _keys(hand_skirt().with_elastics(_elastic(("skirt.front/hem",))).with_operations(drawn))
    assert "skirt/casing" in keys
    assert "skirt/hem_elastic" not in keys
