"""The colors of the page: text must be readable. Formula and limit: WCAG 2.1, success criterion 1.4.3."""

import re

import pytest

from house import PAGE

TOKENS = (PAGE / "src" / "look" / "tokens.css").read_text(encoding="utf-8")
TEXT = ("ink", "soft", "red", "blue", "green")
GROUNDS = ("sheet", "paper", "card")
ENOUGH = 4.5


def rooms() -> list[dict[str, str]]:
    """The colors of each room, what it does not set taken from the first."""
    blocks = re.findall(r":root\s*{([^}]*)}", TOKENS)
    first = dict(re.findall(r"--([\w-]+):\s*(#[0-9a-f]{6})", blocks[0]))
    return [{**first, **dict(re.findall(r"--([\w-]+):\s*(#[0-9a-f]{6})", block))} for block in blocks]


def contrast(first: str, second: str) -> float:
    light, dark = sorted((luminance(first), luminance(second)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def luminance(color: str) -> float:
    parts = [int(color[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def test_the_formula_gives_the_standards_own_ends() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.01)  # known to fall just short


@pytest.mark.parametrize("text", TEXT)
@pytest.mark.parametrize("ground", GROUNDS)
def test_text_is_readable_in_every_room(text: str, ground: str) -> None:
    found = rooms()
    assert len(found) == 4
    for room in found:
        assert contrast(room[text], room[ground]) >= ENOUGH, (text, ground, room)


def test_no_rule_of_the_page_has_a_color_of_its_own() -> None:
    for place in (PAGE / "src").rglob("*.svelte"):
        style = place.read_text(encoding="utf-8").partition("<style>")[2]
        assert not re.findall(r"#[0-9a-fA-F]{3,8}\b(?!\w)|rgba?\(", style), place.name
