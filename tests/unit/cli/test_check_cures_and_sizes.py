"""`check`: the steps that cure are printed and taken, every size of a chart has its lines."""

import json
from pathlib import Path

import pytest

from notchbook.app.demo import demo_form
from notchbook.app.drafting import draft_recipe
from notchbook.app.style_file import write_style
from notchbook.recipe import add_step, replay
from support.command import typed


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a skirt whose back was lengthened by 4 mm and whose front was forgotten."""
    monkeypatch.chdir(tmp_path)
    form = demo_form()
    longer = {"hems": ["skirt.back/hem"], "amount": "4 mm"}
    recipe = add_step(draft_recipe("skirt", form), "change_length", longer, base=form)
    write_style(replay(recipe, form), tmp_path / "off.json")
    return tmp_path


def test_the_offers_stand_under_the_findings_and_one_is_taken(folder: Path) -> None:
    told = typed("check", "off.json")
    assert told.code == 1 and "add --take seam-second-longer.3" in told.out
    offered = json.loads(typed("check", "off.json", "--json").out)["cures"]
    assert {one["adds"]["operation"] for one in offered} == {"true_seam", "declare_ease"}
    taken = typed("check", "off.json", "--take", "seam-second-longer", "-o", "trued.json")
    assert taken.code == 0, taken.out
    assert typed("check", "trued.json").code == 0
    unknown = typed("check", "off.json", "--take", "seam-second-longer.9")
    assert unknown.code == 2 and "cure-not-offered" in unknown.err


def test_every_size_of_a_chart_is_checked_when_asked_for(folder: Path) -> None:
    told = typed("check", "off.json", "--sizes", "women")
    sizes = json.loads(typed("check", "off.json", "--sizes", "women", "--json").out)["sizes"]
    assert told.code == 1 and len(sizes) > 5
    assert all("seam-second-longer" in [one["code"] for one in size["findings"]] for size in sizes)
    assert told.out.count("[seam-second-longer]") == len(sizes)
    assert typed("check", "off.json", "--sizes", "giants").code == 2
