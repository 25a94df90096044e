"""The generated reference page of the measures."""

import re
from pathlib import Path

from measure_page import figure_pictures, measure_page
from notchbook.body import landmark_table, level_table, measure_table


def test_the_page_has_every_measure_level_and_landmark() -> None:
    page = measure_page("<!-- head -->\n")
    assert page.startswith("<!-- head -->")
    for entry in measure_table().values():
        assert page.count(f"\n## {entry.label}\n") == 1
        assert f"`{entry.key}`, number {entry.number}. {entry.definition}" in page
        assert entry.how in page
    for name in (*level_table(), *landmark_table()):
        assert f"- **{name}**: " in page


def test_its_links_lead_to_headings_and_pictures() -> None:
    page = measure_page("")
    headings = {line[3:].lower().replace(" ", "-") for line in page.splitlines() if line.startswith("## ")}
    anchors = re.findall(r"\]\(#([^)]+)\)", page)
    assert len(anchors) == len(measure_table())
    assert set(anchors) <= headings
    pictures = {Path(place).name for place in figure_pictures()}
    assert set(re.findall(r"\]\(([^)#]+\.svg)\)", page)) == pictures


def test_a_doubtful_clause_is_marked_and_a_missing_one_left_out() -> None:
    page = measure_page("")
    assert "| 1 | `height` | [Height](#height) | crown | 5.1.1? | once |" in page
    assert "ISO 8559-1:2017: 5.1.1? (second-hand, doubtful)." in page
    assert "ISO 8559-1:2017: 5.3.4 (second-hand)." in page
    section = page.split("## Belly depth")[1].split("\n## ")[0]
    assert "ISO" not in section
