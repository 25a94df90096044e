"""The trims on the cutter's must: counted by hand, on blocks of invented bodies."""

import re
from functools import cache
from pathlib import Path
from typing import Any

import pypdfium2
import pytest
from hypothesis import given
from hypothesis import strategies as st

from lower_sheets import lower_bodies
from notchbook.app.bought_lengths import bought_lengths, sold
from notchbook.app.button_sizes import lignes
from notchbook.app.paper_trims import bought_trims
from notchbook.app.papers import job_of, write_papers
from notchbook.app.rack.styles import rack
from notchbook.app.thread import thread
from notchbook.app.zip_lengths import BoughtZip, ZipKind, bought_zip
from notchbook.finish import elastic_cuts, production_table, read_house_table
from notchbook.recipe import Replay, replay
from notchbook.units import LengthStyle, Unit
from support.closure_steps import FLY, STAND, stepped
from support.collar_steps import collared
from support.edge_steps import bodice, skirt, trousers
from support.hand_skirt import hand_skirt

RECIPES = {style.stem: style.recipe for style in rack()}
ZIP: dict[str, Any] = {
    "edge": "skirt.back/center_back",
    "from_point": "skirt.back/waist_center",
    "length": "20 cm",
}
STAND_OF_FIVE = {**STAND, "button": "15 mm", "number": 5}


def _told(run: Replay, unit: Unit = "cm") -> list[tuple[str, str]]:
    return [(trim.cut, trim.remark) for trim in bought_trims(run, LengthStyle(unit))]


@cache
def _style(stem: str) -> Replay:
    return replay(RECIPES[stem], dict(lower_bodies())["medium-92"])


@pytest.mark.parametrize("over", ["right", "left"])
def test_of_a_pair_of_fronts_one_side_has_the_buttons(over: str) -> None:
    run = stepped(bodice(), ("button_stand", {**STAND_OF_FIVE, "over": over}))
    assert _told(run) == [("5 buttons, 1.5 cm (24 L)", "5 on the front")]


def test_both_cuffs_have_theirs() -> None:
    """Each cuff is buttoned by itself (fact of the trade); the buttons of one size are bought together."""
    ((cut, remark),) = _told(_style("work_shirt"))
    assert "2 on the cuff" in remark
    assert "1 on the collar stand" in remark
    assert cut.startswith(f"{sum(map(int, re.findall('[0-9]+', remark)))} buttons")


def test_the_fused_fronts_of_a_jacket_have_two_buttons() -> None:
    """They are marked on the front and not on its interfacing: two are bought."""
    assert _told(_style("tailored_jacket")) == [("2 buttons, 2.0 cm (32 L)", "2 on the front")]


@pytest.mark.parametrize(
    ("setting", "unit", "wanted", "advice"),
    [
        ("lapped", "cm", "1 zip, 20.0 cm long", ""),
        ("invisible", "cm", "1 invisible zip, 22.0 cm long", "opens 20.0 cm: its end hangs free"),
        ("plain", "in", '1 zip, 8" long', ""),
    ],
)
def test_a_zip_is_asked_for_in_a_length_that_is_sold(
    setting: str, unit: Unit, wanted: str, advice: str
) -> None:
    """20 cm are sold by centimeters; 7 7/8 in are not, but 8 in, and an eighth more is pushed up into the
    allowance. An invisible zip is 2 cm longer than its opening at the least (common practice, no source)."""
    run = stepped(skirt(), ("zip_opening", {**ZIP, "setting": setting}))
    ((cut, remark),) = _told(run, unit)
    assert cut == wanted
    assert remark.startswith("in the center back of the back")
    assert advice in remark
    assert (";" in remark) is bool(advice)


def test_a_zip_that_goes_on_below_the_waist_is_one() -> None:
    run = _style("princess_dress")
    stops = [one.place.amount for one in run.pattern.notches.values() if one.purpose == "zip stop"]
    assert len(stops) == 2
    ((cut, remark),) = _told(run)
    bought = bought_zip("invisible", sum(stops), production_table().zips, LengthStyle())
    assert cut == f"1 invisible zip, {LengthStyle().text(bought.length)} long"
    assert bought.length >= sum(stops) + 20.0
    assert f"opens {LengthStyle().text(sum(stops))}" in remark
    assert remark.count("center back") == 2


@pytest.mark.parametrize(
    ("kind", "opened", "length", "advice"),
    [
        ("closed", 180.0, 180.0, ""),
        ("closed", 180.3, 180.0, ""),  # nobody sees a third of a millimeter
        ("closed", 445.5, 450.0, ""),  # less than 5 mm are pushed up
        (
            "closed",
            437.0,
            450.0,
            "opens 43.7 cm: sew a new stop over the teeth there and cut the rest off 2.0 cm",
        ),
        ("closed", 610.0, 610.0, "by the length"),
        ("invisible", 180.0, 200.0, "hangs free"),
        ("invisible", 181.0, 220.0, "hangs free"),
        ("invisible", 590.0, 590.0, "by the length"),
        ("parting", 400.0, 400.0, ""),
        ("parting", 390.0, 400.0, "at the top"),
        ("parting", 412.0, 400.0, "hook and eye"),
        ("parting", 416.0, 450.0, "at the top"),
        ("parting", 150.0, 200.0, "at the top"),
    ],
)
def test_the_zip_that_serves_is_found_by_hand(
    kind: ZipKind, opened: float, length: float, advice: str
) -> None:
    """A closed zip is shortened below, with a new stop; one that parts has its pin there and can be shortened
    at the top alone, or is taken a little shorter, with a hook above it (common practice, no source)."""
    found = bought_zip(kind, opened, production_table().zips, LengthStyle())
    assert found.length == pytest.approx(length)
    assert advice in found.advice
    assert bool(found.advice) is bool(advice)


@given(
    st.sampled_from(("closed", "invisible", "parting")), st.floats(30.0, 900.0), st.sampled_from(("cm", "in"))
)
def test_what_is_bought_is_sold_or_said_to_be_made(kind: ZipKind, opened: float, unit: Unit) -> None:
    zips = production_table().zips
    found = bought_zip(kind, opened, zips, LengthStyle(unit))
    if found.length in zips[kind].lengths(unit):
        assert found.length >= opened - 15.0
        assert kind == "parting" or found.length >= opened - 0.5
    else:
        assert "by the length" in found.advice
        assert opened > zips[kind].lengths(unit)[-1] - 20.5


def test_a_table_of_the_house_that_names_no_zips_asks_for_one_as_long_as_the_opening() -> None:
    assert bought_zip("closed", 437.0, {}, LengthStyle()) == BoughtZip(437.0)


def test_the_house_s_own_lengths_are_asked_for(tmp_path: Path) -> None:
    table = tmp_path / "house.toml"
    table.write_text('unit = "cm"\n[zip]\nclosed = [19, 23]\n', encoding="utf-8")
    run = stepped(skirt(), ("zip_opening", {**ZIP, "setting": "lapped"}))
    house = read_house_table(table)
    assert [trim.cut for trim in bought_trims(run, LengthStyle(), house)] == ["1 zip, 23.0 cm long"]
    assert "1 zip, 23.0 cm long" in [trim.cut for trim in job_of(run, "", house).info.trims]


@pytest.mark.parametrize(
    ("diameter", "size"), [(11.0, 18), (11.4, 18), (12.7, 20), (15.2, 24), (20.3, 32), (25.4, 40), (28.0, 44)]
)
def test_buttons_are_asked_for_in_lignes_of_which_forty_are_an_inch(diameter: float, size: int) -> None:
    """18 L 11.4 mm, 24 L 15.2 mm, 32 L 20.3 mm, 40 L 25.4 mm (button charts, from memory)."""
    assert lignes(diameter) == size


def test_a_fly_has_its_zip() -> None:
    run = stepped(trousers(), ("fly", FLY))
    (stop,) = {round(one.place.amount, 3) for one in run.pattern.notches.values() if "zip" in one.purpose}
    bought = bought_zip("closed", stop, production_table().zips, LengthStyle())
    ((cut, remark),) = _told(run)
    assert cut == f"1 zip, {LengthStyle().text(bought.length)} long"
    assert bought.length >= stop - 0.5
    assert remark.startswith("in the fly")


def test_hook_and_buckle() -> None:
    place = {"edge": ZIP["edge"], "from_point": ZIP["from_point"], "distance": "5 mm"}
    run = stepped(
        skirt(),
        ("belt", {"girth": "76 cm", "width": "40 mm"}),
        ("hook_and_eye", {"hook": place, "eye": place, "kind": "hook_and_eye"}),
    )
    assert _told(run) == [("1 hook and eye", "on the back"), ("1 buckle", "for a belt 4.0 cm wide")]


def test_a_cord_is_as_long_as_the_face() -> None:
    run = collared("hood", drawstring=True)
    faces = [
        edge.length
        for piece in run.pattern.pieces.values()
        for edge in piece.outline
        if edge.name.endswith("/face")
    ]
    assert len(faces) == 1, "half of the hood is drawn"
    ((cut, remark),) = _told(run)
    assert cut == "1 cord"
    assert remark == f"{LengthStyle().text(2.0 * faces[0])} round the face, and its ends"
    assert _told(collared("hood")) == []


def test_buttons_stand_on_the_must_where_there_are_some_and_thread_always(tmp_path: Path) -> None:
    banded = stepped(bodice(), ("button_stand", STAND_OF_FIVE))
    for run, is_there in ((banded, True), (bodice(), False)):
        files = write_papers(job_of(run, "2026-03-31", despite_findings=True), tmp_path / str(is_there))
        document = pypdfium2.PdfDocument(files["card"])
        said = "".join(page.get_textpage().get_text_range() for page in document)
        document.close()
        assert ("5 buttons, 1.5 cm (24 L)" in said) is is_there
        assert "trims" in said
        assert "sewing thread, about" in said


def test_a_zip_from_end_to_end_must_be_one_that_parts() -> None:
    """It opens 39 cm; 40 cm are sold, and it is shortened at the top."""
    ((cut, remark),) = [told for told in _told(_style("darted_shell")) if "zip" in told[0]]
    assert cut == "1 invisible zip that parts, 40.0 cm long"
    assert "opens 39.0 cm: shorten it at the top" in remark
    assert remark.endswith("few shops keep these: order it")
    assert not [cut for cut, _ in _told(_style("six_gore_skirt")) if "parts" in cut]


def test_elastics_are_bought_together_by_their_width() -> None:
    """What is cut stands in lines of its own; in the shop it is one length."""
    run = _style("bodysuit")
    cut = elastic_cuts(run.pattern, production_table())
    (trim,) = bought_lengths(run.pattern, cut, LengthStyle())
    whole = sum(one.times * one.length for one in cut)
    assert len({one.width for one in cut}) == 1
    meters = float(trim.cut.split(" m of elastic")[0])
    assert whole <= 1000.0 * meters < whole + 100.0
    assert trim.remark == "for the leg elastic and armhole elastic"
    assert list(bought_lengths(bodice().pattern, (), LengthStyle())) == []


def test_the_tape_of_a_slant_pocket_is_bought_for_both_sides() -> None:
    run = _style("tailored_trousers")
    (opening,) = [one.at[0] for one in run.pattern.operations.values() if one.name.endswith("opening_turned")]
    (trim,) = bought_lengths(run.pattern, (), LengthStyle())
    both = 2.0 * (run.pattern.edges[opening].length + 20.0)
    assert trim.cut == f"{sold(both, LengthStyle())} of straight stay tape"


def test_a_front_on_the_fold_has_a_pocket_on_both_sides_too() -> None:
    """A half on the fold stands for both of the wearer's sides, as a pair does."""
    slant = {"waist": "skirt.front/waist", "side": "skirt.front/side_seam", "along_waist": "4 cm"}
    run = stepped(skirt(), ("slant_pocket", slant))
    assert run.suspended is None, str(run.suspended)
    assert run.pattern.pieces["skirt.front"].cut == "fold"
    (trim,) = bought_lengths(run.pattern, (), LengthStyle())
    both = 2.0 * (run.pattern.edges["slant_pocket.front/opening"].length + 20.0)
    assert sold(both, LengthStyle()) != sold(both / 2.0, LengthStyle())
    assert trim.cut == f"{sold(both, LengthStyle())} of straight stay tape"


@pytest.mark.parametrize(
    ("length", "unit", "wanted"),
    [
        (1800.0, "cm", "1.8 m"),
        (1801.0, "cm", "1.9 m"),
        (914.4, "in", "1 yd"),
        (915.0, "in", "1 1/4 yd"),
        (100.0, "in", "1/4 yd"),
    ],
)
def test_lengths_are_rounded_up_to_what_is_sold(length: float, unit: Unit, wanted: str) -> None:
    """A yard is 914.4 mm (ISO 80000; exact since 1959), sold by quarters."""
    assert sold(length, LengthStyle(unit)) == wanted


@pytest.mark.parametrize(("unit", "step", "sign"), [("cm", 5.0, "m"), ("in", 5.0 * 0.9144, "yd")])
def test_thread_is_what_a_lockstitch_takes_of_all_seams_and_hems(unit: Unit, step: float, sign: str) -> None:
    """2.8 m for a meter of seam and a quarter more (thread makers' tables, from memory). The side seam of the
    hand-made skirt lies on both sides, its center back once, and its half hems count twice."""
    skirt_made = hand_skirt()
    side, back = (
        skirt_made.edges[f"skirt.{name}"].length for name in ("front/side_seam", "back/center_back")
    )
    hems = sum(skirt_made.edges[f"skirt.{half}/hem"].length for half in ("front", "back"))
    needed = 1.25 * 2.8 * (2.0 * side + back + 2.0 * hems) / 1000.0
    (trim,) = thread(skirt_made, LengthStyle(unit))
    number = float(trim.cut.removeprefix("sewing thread, about ").removesuffix(f" {sign}"))
    told = number if unit == "cm" else 0.9144 * number
    assert needed <= told < needed + step


def test_a_layer_that_is_fused_on_takes_no_thread() -> None:
    """Its lower edge lies in the hem of its piece, which is sewn once."""
    plain = _style("six_gore_skirt")
    hems = [edge.name for edge in plain.pattern.edges.values() if edge.kind == "hem"]
    panels = list(dict.fromkeys(plain.pattern.carriers[hem] for hem in hems))
    fused = stepped(plain, ("interfacing", {"pieces": panels}))
    assert fused.suspended is None, str(fused.suspended)
    assert len(fused.pattern.pieces) == len(plain.pattern.pieces) + len(panels)
    assert list(thread(fused.pattern, LengthStyle())) == list(thread(plain.pattern, LengthStyle()))


def test_thread_of_a_cloth_that_gives_is_that_of_an_overlock() -> None:
    (trim,) = thread(_style("stretch_dress").pattern, LengthStyle())
    assert trim.remark == "on four cones, for an overlock"
    bare = hand_skirt().with_pieces(without=["skirt.front", "skirt.back"])
    assert list(thread(bare, LengthStyle())) == []
