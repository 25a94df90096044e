"""With which stitches a style is sewn, and of which classes its seams are. Bodies and styles are invented.

Outside: numbers and names of stitches by ISO 4915:1991 (ASTM D6193 has the same), seam classes of ISO
4916:1991 beside the codes of ASTM D6193; the seam numbers are from memory. Stitches to the centimeter: common
practice, no source.
"""

from dataclasses import replace
from functools import cache

import pytest

from lower_sheets import lower_bodies
from notchbook.app.papers import job_of
from notchbook.app.rack.styles import rack
from notchbook.app.stitching import (
    LEATHER,
    SEAM_CLASSES,
    STRETCH,
    STRETCH_HEM,
    WOVEN,
    ZIGZAG,
    Stitch,
    stitches,
)
from notchbook.pattern import Pattern
from notchbook.pattern.pattern import frozen_map
from notchbook.recipe import replay
from notchbook.units import LengthStyle

STITCHES_BY_ISO = {
    "301": "lockstitch",
    "304": "zigzag",
    "406": "two-needle cover stitch",
    "514": "four-thread overlock",
}
STITCHES = (WOVEN, STRETCH, STRETCH_HEM, ZIGZAG, LEATHER)
SEAMS_BY_ISO = {"SSa": "1.01.01", "SSe": "1.06.02", "LSa": "2.01.01", "BSc": "3.05.01"}
RECIPES = {style.stem: style.recipe for style in rack()}


@cache
def pattern_of(stem: str) -> Pattern:
    return replay(RECIPES[stem], dict(lower_bodies())["medium-92"]).pattern


def test_the_numbers_are_those_of_the_standards() -> None:
    assert {one.number: one.name for one in STITCHES} == STITCHES_BY_ISO
    assert {code: number for code, (number, _) in SEAM_CLASSES.items()} == SEAMS_BY_ISO


@pytest.mark.parametrize("stitch", STITCHES, ids=lambda one: one.name)
def test_as_many_stitches_go_into_an_inch_as_into_its_centimeters(stitch: Stitch) -> None:
    for each, inch in zip(stitch.per_cm, stitch.per_inch, strict=True):
        assert abs(each * 2.54 - inch) <= 1.0


@pytest.mark.parametrize(
    ("stem", "told"),
    [
        ("six_gore_skirt", "stitch 301, lockstitch, 4 to 5 per cm"),
        ("bodysuit", "stitch 514, four-thread overlock, 4 to 5 per cm"),
        ("leather_mini_skirt", "stitch 301, lockstitch, 2.5 to 3.5 per cm"),
    ],
)
def test_the_stitch_goes_with_the_cloth(stem: str, told: str) -> None:
    assert any(f"Seams: {told};" in one for one in stitches(pattern_of(stem), LengthStyle()))


@pytest.mark.parametrize(("stem", "gives"), [("bodysuit", True), ("six_gore_skirt", False)])
def test_a_cloth_that_stretches_is_laid_by_its_stretch_and_hemmed_to_give(stem: str, gives: bool) -> None:
    info = job_of(replay(RECIPES[stem], dict(lower_bodies())["medium-92"]), "2026-01-15").info
    assert any("greatest stretch of the cloth across the grain" in one for one in info.notes) is gives
    assert any(one.startswith("Hems and elastics: stitch 406") for one in info.stitches) is gives


def test_the_classes_are_those_of_its_seams() -> None:
    (told,) = stitches(pattern_of("six_gore_skirt"), LengthStyle("in"))
    assert told.endswith("10 to 12 per in; seam classes 1.01.01 plain, 2.01.01 lapped (ISO 4915, ISO 4916).")
    (told,) = stitches(pattern_of("tailored_jacket"), LengthStyle())
    assert "seam classes 1.01.01 plain, 1.06.02 turned (" in told


def test_a_class_that_is_not_in_the_table_is_told_by_its_code() -> None:
    pattern = pattern_of("six_gore_skirt")
    seams = {name: replace(seam, seam_class="LSc") for name, seam in pattern.seams.items()}
    (told,) = stitches(replace(pattern, seams=frozen_map(seams.items())), LengthStyle())
    assert "seam classes LSc (" in told


def test_nothing_is_said_where_nothing_is_sewn() -> None:
    pattern = pattern_of("six_gore_skirt")
    assert stitches(replace(pattern, seams=frozen_map(())), LengthStyle()) == ()


def test_every_style_of_the_rack_has_seams_of_known_classes_and_says_its_stitch_on_the_must() -> None:
    for stem in RECIPES:
        assert {seam.seam_class for seam in pattern_of(stem).seams.values()} <= set(SEAM_CLASSES)
        run = replay(RECIPES[stem], dict(lower_bodies())["medium-92"])
        assert any(one.startswith("Seams: stitch ") for one in job_of(run, "2026-01-15").info.stitches)
