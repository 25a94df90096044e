"""What the papers say of a draft: its measures, its settings, its ease table; pieces named by their block."""

from dataclasses import replace

import pytest

from notchbook.app.drafting import draft
from notchbook.app.paper_draft import drafted_from, titled_by_block
from notchbook.app.papers import cut_ready, job_of
from notchbook.app.picturing_blocks import BODY_OF_PICTURES
from notchbook.app.rack.styles import rack_style
from notchbook.body import MeasureSet, set_from_data
from notchbook.recipe import Replay, replay
from notchbook.units import LengthStyle
from support.bodice_bodies import MAN
from support.odd_steps import register
from support.paired_blocks import LID, TRAY, tray_body


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch) -> Replay:
    """A lid on its tray, both invented."""
    register(monkeypatch, TRAY, LID)
    return draft("lid", tray_body(height=1700.0), {"cloth": "woven"})


def test_the_measures_that_were_read_and_no_others(run: Replay) -> None:
    told = drafted_from(run, LengthStyle("cm"))
    assert told.measures == (
        ("bust girth", "90.0 cm"),
        ("waist girth", "70.0 cm"),
        ("upper arm girth", "19.0 cm"),
    )


def test_settings_and_eases_of_each_block(run: Replay) -> None:
    told = drafted_from(run, LengthStyle("in"))
    assert told.settings == ('Tray: bust ease 2 3/8", lowered 0", shaping auto', "Lid: cloth woven")
    assert [row.name for row in told.eases] == ["tray, bust girth", "tray, height", "lid, rim length"]
    assert told.eases[0].pattern == '37 13/16"'


def test_a_plain_number_of_degrees_says_so() -> None:
    told = drafted_from(draft("bodice", MeasureSet.from_mm("man", MAN, population="men")), LengthStyle("cm"))
    assert "shoulder lift 4.0°" in told.settings[0]


def test_an_amount_in_shares_of_a_measure_stands_as_it_was_given() -> None:
    skirt = draft("skirt", tray_body(hip_girth=960.0, hip_depth=200.0))
    (words,) = drafted_from(skirt, LengthStyle("cm")).settings
    assert "front dart length 9/20 hip_depth" in words.replace("hip depth", "hip_depth")
    assert "length 60.0 cm" in words


@pytest.mark.parametrize(
    ("style", "wanted"),
    [
        (LengthStyle("in"), 'hip depth + 3 1/8"'),
        (LengthStyle("cm"), "hip depth + 8 cm"),
        (LengthStyle("mm"), "hip depth + 80 mm"),
    ],
    ids=["in", "cm", "mm"],
)
def test_the_plain_part_of_such_an_amount_is_in_the_unit_of_the_reader(
    style: LengthStyle, wanted: str
) -> None:
    """An inch is 25.4 mm (international yard, 1959): 8 cm are 3.1496 in, 3 1/8 to the nearest 1/16."""
    skirt = draft("skirt", tray_body(hip_girth=960.0, hip_depth=200.0), {"length": "hip_depth + 8 cm"})
    (words,) = drafted_from(skirt, style).settings
    assert f", length {wanted}" in words
    assert style.unit == "cm" or " cm" not in words


def test_pieces_titled_alike_are_named_after_their_block_and_no_others(run: Replay) -> None:
    """A label must tell its piece apart; where it does, the papers and the sewing order say one word."""
    pieces = cut_ready(job_of(run, "2026-01-02", despite_findings=True)).pieces
    assert [piece.title for piece in pieces] == ["front", "lid"]
    alike = [replace(piece, title="Front") for piece in pieces]
    assert [piece.title for piece in titled_by_block(alike, run.recipe)] == ["Tray, Front", "Lid, Front"]


def test_what_was_left_away_stands_in_no_line_of_the_must() -> None:
    """The shoulders of a slip on straps are not cut: nobody looks for their length."""
    run = replay(rack_style("S-210").recipe, set_from_data(BODY_OF_PICTURES))
    rows = {row.name: row for row in drafted_from(run, LengthStyle("cm")).eases}
    assert any("waist" in name for name in rows)
    assert not [name for name in rows if "shoulder" in name or "across" in name]
    assert "gone" not in {row.pattern for row in rows.values()}
