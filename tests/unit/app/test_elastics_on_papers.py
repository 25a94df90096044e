"""The elastics stand on the cutter's must and in what `cut --json` says, in the reader's unit."""

import json
from pathlib import Path

import pypdfium2
import pytest

from lower_sheets import lower_bodies
from notchbook.app.examining import examine
from notchbook.app.papers import job_of, write_papers
from notchbook.app.rack.styles import rack
from notchbook.app.style_file import write_style
from notchbook.pattern import sewn_length
from notchbook.recipe import Replay, replay
from notchbook.units import LengthStyle, Unit
from support.command import typed
from support.stretch_bodies import stretch_run

DAY = "2026-03-31"
LAP = 10.0
"""mm, as in the house's table."""


@pytest.fixture(scope="module")
def suit() -> Replay:
    """A bodysuit of stretch cloth."""
    return stretch_run("bodysuit")


def leg_ring(run: Replay) -> float:
    """A tenth less than the leg opening, front and back, mm."""
    return 0.90 * sum(
        sewn_length(run.pattern, f"bodysuit.{which}/leg_opening") for which in ("front", "back")
    )


@pytest.mark.parametrize("unit", ["cm", "in"])
def test_the_card_says_what_each_elastic_is_cut_to(suit: Replay, unit: Unit, tmp_path: Path) -> None:
    style = LengthStyle(unit)
    files = write_papers(job_of(suit, DAY, lengths=style, despite_findings=True), tmp_path / unit)
    document = pypdfium2.PdfDocument(files["card"])
    said = "".join(page.get_textpage().get_text_range() for page in document)
    wanted = f"leg elastic: cut 2 × {style.text(leg_ring(suit) + LAP)}"
    assert wanted.replace(" ", "") in said.replace(" ", "")  # fractions stand close to the inches
    assert "neck elastic: cut 1 ×" in said
    assert "armhole elastic: cut 2 ×" in said
    document.close()


def test_what_is_cut_is_told_as_data(suit: Replay, tmp_path: Path) -> None:
    write_style(suit, tmp_path / "suit.json")
    told = typed("cut", str(tmp_path / "suit.json"), "--despite-findings", "--json")
    leg = json.loads(told.out)["elastics"][0]
    assert leg == {
        "name": "bodysuit/leg_elastic",
        "title": "leg elastic",
        "times": 2,
        "width": 8.0,
        "length": pytest.approx(leg_ring(suit) + LAP, abs=0.001),
        "ring": pytest.approx(leg_ring(suit), abs=0.001),
    }


def test_an_elastic_that_a_band_took_the_place_of_is_told_no_more(suit: Replay) -> None:
    """The suit of the rack has a band round its neck; its legs and armholes keep their elastics."""
    plain = [one.where for one in examine(suit, cut=False).findings if "elastic" in one.code]
    assert plain == ["bodysuit.back/leg_opening", "bodysuit.front/neck", "bodysuit.front/armhole"]
    recipe = next(style.recipe for style in rack() if style.stem == "bodysuit")
    banded = replay(recipe, dict(lower_bodies())["medium-92"])
    told = [one.where for one in examine(banded, cut=False).findings if "elastic" in one.code]
    assert told == ["bodysuit.back/leg_opening", "bodysuit.front/armhole"]
