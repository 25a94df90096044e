"""The skirt block against two published drafts; sources in ``skirt/SOURCES.md``.

Frame, hips and net waist are arithmetic of the handbook and must come out. How a draft shares the
difference between side and darts, and how far the side rises, is its method: those figures are kept
in the decision record and only held to what stands there.
"""

import csv
import re
from pathlib import Path

import pytest

from notchbook.body import MeasureSet
from notchbook.pattern import pattern_to_data
from support.skirt_judge import Judge
from support.yoke_skirt import drafted

FOLDER = Path(__file__).parent / "skirt"
RECORD = Path(__file__).parents[2] / "docs" / "decisions" / "0007-skirt-draft.md"


def drafts() -> list[dict[str, float | str]]:
    with (FOLDER / "handbook_drafts.csv").open(encoding="utf-8", newline="") as stream:
        rows = list(csv.DictReader(stream))
    return [
        {key: text if key == "draft" else 10.0 * float(text) for key, text in row.items()} for row in rows
    ]


def judged(row: dict[str, float | str]) -> dict[str, float]:
    """What the block makes of the body and eases of a published draft, mm."""
    figures = {key: float(value) for key, value in row.items() if key != "draft"}
    keys = ("waist_girth", "hip_girth", "hip_depth")
    measures = MeasureSet.from_mm("Body of the handbook", {key: figures[key] for key in keys}, "chart")
    pattern = drafted(
        measures,
        waist_ease=figures["waist_ease"],
        hip_ease=figures["hip_ease"],
        front_darts=round(figures["front_darts"] / 10.0),
        back_darts=round(figures["back_darts"] / 10.0),
    )
    judge = Judge(pattern_to_data(pattern))
    found: dict[str, float] = {}
    for which in ("front", "back"):
        panel = f"skirt.{which}"
        net = judge.length(*judge.named(panel, "waist"))
        mouths = sum(
            float(((judge.edges[a][0] - judge.edges[b][-1]) ** 2).sum() ** 0.5)
            for _, a, b in judge.darts(panel)
        )
        found |= {f"{which}_hip": judge.length(f"{panel}/hip_line"), f"open_{which}": net + mouths}
        found |= {f"net_{which}": net, f"rise_{which}": judge.rise(panel)}
    found["frame"] = found["front_hip"] + found["back_hip"]
    found["net_waist"] = found["net_front"] + found["net_back"]
    return found


@pytest.mark.parametrize("row", drafts(), ids=lambda row: str(row["draft"]))
def test_frame_hips_and_net_waist_are_those_of_the_published_draft(row: dict[str, float | str]) -> None:
    found = judged(row)
    for key in ("frame", "front_hip", "back_hip", "net_waist"):
        assert found[key] == pytest.approx(float(row[key]), abs=0.5), key


def test_other_eases_do_not_give_the_published_figures() -> None:
    row = drafts()[0] | {"waist_ease": 20.0, "hip_ease": 40.0}
    found = judged(row)
    assert abs(found["frame"] - float(row["frame"])) > 0.5
    assert abs(found["net_waist"] - float(row["net_waist"])) > 0.5


@pytest.mark.parametrize("row", drafts(), ids=lambda row: str(row["draft"]))
def test_the_differences_of_method_are_those_that_the_record_reports(row: dict[str, float | str]) -> None:
    found = judged(row)
    lines = [line.split("|")[1:-1] for line in RECORD.read_text(encoding="utf-8").splitlines() if "|" in line]
    reported = {cells[0].strip(): cells[1:] for cells in lines if re.match(r"\s*T\d", cells[0])}
    for key in ("open_front", "open_back", "rise_front", "rise_back"):
        published, ours = (float(text) for text in reported[f"{row['draft']} {key.replace('_', ' ')}"])
        assert published == float(row[key if key in row else "rise"]), key
        assert ours == pytest.approx(found[key], abs=0.06), key
