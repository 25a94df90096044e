"""The trims on the cutter's must: counted by hand, on blocks of invented bodies."""

import re
from functools import cache
from pathlib import Path
from typing import Any

import pypdfium2
import pytest

from lower_sheets import lower_bodies
from notchbook.app.paper_trims import bought_trims
from notchbook.app.papers import job_of, write_papers
from notchbook.app.rack.styles import rack
from notchbook.recipe import Replay, replay
from notchbook.units import LengthStyle, Unit
from support.closure_steps import FLY, STAND, stepped
from support.collar_steps import collared
from support.edge_steps import bodice, skirt, trousers

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
    assert _told(run) == [("5 buttons, 1.5 cm", "5 on the front")]


def test_both_cuffs_have_theirs() -> None:
    """Each cuff is buttoned by itself (fact of the trade); the buttons of one size are bought together."""
    ((cut, remark),) = _told(_style("work_shirt"))
    assert "2 on the cuff" in remark
    assert "1 on the collar stand" in remark
    assert cut.startswith(f"{sum(map(int, re.findall('[0-9]+', remark)))} buttons")


def test_the_fused_fronts_of_a_jacket_have_two_buttons() -> None:
    """They are marked on the front and not on its interfacing: two are bought."""
    assert _told(_style("tailored_jacket")) == [("2 buttons, 2.0 cm", "2 on the front")]


@pytest.mark.parametrize(
    ("setting", "unit", "wanted"),
    [
        ("lapped", "cm", "1 zip, 20.0 cm long"),
        ("invisible", "cm", "1 invisible zip, 20.0 cm long"),
        ("plain", "in", '1 zip, 7 7/8" long'),
    ],
)
def test_a_zip_is_as_long_as_its_opening(setting: str, unit: Unit, wanted: str) -> None:
    run = stepped(skirt(), ("zip_opening", {**ZIP, "setting": setting}))
    assert _told(run, unit) == [(wanted, "in the center back of the back")]


def test_a_zip_that_goes_on_below_the_waist_is_one() -> None:
    run = _style("princess_dress")
    stops = [one.place.amount for one in run.pattern.notches.values() if one.purpose == "zip stop"]
    assert len(stops) == 2
    ((cut, remark),) = _told(run)
    assert cut == f"1 invisible zip, {LengthStyle().text(sum(stops))} long"
    assert remark.count("center back") == 2


def test_a_fly_has_its_zip() -> None:
    run = stepped(trousers(), ("fly", FLY))
    (stop,) = {round(one.place.amount, 3) for one in run.pattern.notches.values() if "zip" in one.purpose}
    assert _told(run) == [(f"1 zip, {LengthStyle().text(stop)} long", "in the fly")]


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


def test_what_has_no_trims_has_no_band_of_them(tmp_path: Path) -> None:
    banded = stepped(bodice(), ("button_stand", STAND_OF_FIVE))
    for run, is_there in ((banded, True), (bodice(), False)):
        files = write_papers(job_of(run, "2026-03-31", despite_findings=True), tmp_path / str(is_there))
        document = pypdfium2.PdfDocument(files["card"])
        said = "".join(page.get_textpage().get_text_range() for page in document)
        document.close()
        assert ("5 buttons, 1.5 cm" in said) is is_there
        assert ("trims" in said) is is_there


def test_a_zip_from_end_to_end_must_be_one_that_parts() -> None:
    assert [cut for cut, _ in _told(_style("darted_shell")) if "zip" in cut] == [
        "1 invisible zip that parts, 39.0 cm long"
    ]
    assert not [cut for cut, _ in _told(_style("six_gore_skirt")) if "parts" in cut]
