"""The elastics stand on the cutter's must and in what `cut --json` says, in the reader's unit."""

import json
from pathlib import Path

import pypdfium2
import pytest

from notchbook.app.papers import job_of, write_papers
from notchbook.app.style_file import write_style
from notchbook.pattern import sewn_length
from notchbook.recipe import Replay
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
    said = document[0].get_textpage().get_text_range()
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
