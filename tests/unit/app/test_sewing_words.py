"""Lines of the sewing order in the reader's unit."""

import pytest

from notchbook.app.sewing_words import line_text
from notchbook.finish.sewing import SewingLine
from notchbook.units import LengthStyle, Unit


def line(text: str, amount: float = 0.0, how: str = "") -> SewingLine:
    return SewingLine(1, "a/b", "hems", text, (), amount, how)


@pytest.mark.parametrize(
    ("text", "unit", "said"),
    [
        ("Sew both with 6 mm; turn.", "cm", "Sew both with 0.6 cm; turn."),
        ("Sew both with 6 mm; turn.", "in", 'Sew both with 1/4"; turn.'),
        ("Trim it to 6 to 8 mm and glue", "cm", "Trim it to 0.6 to 0.8 cm and glue."),
        ("Trim it to 6 to 8 mm and glue", "in", 'Trim it to 1/4" to 5/16" and glue.'),
        ("Hang it for 24 hours.", "in", "Hang it for 24 hours."),
        ("Work 7 buttonholes", "cm", "Work 7 buttonholes."),
    ],
)
def test_a_figure_in_a_line_is_told_in_the_reader_s_unit(text: str, unit: Unit, said: str) -> None:
    """6 mm are nearest to 1/4 in, 8 mm to 5/16 in."""
    assert line_text(line(text), LengthStyle(unit)) == said


@pytest.mark.parametrize(
    ("how", "said"),
    [
        ("eased in", "Sew, 0.6 cm eased in."),
        ("stretched on", "Sew, 0.6 cm stretched on."),
        ("gathered", "Sew, drawn in by 0.6 cm."),
        ("", "Sew."),
    ],
)
def test_what_is_eased_stretched_or_gathered_is_told_with_how_much(how: str, said: str) -> None:
    assert line_text(line("Sew.", 6.0, how), LengthStyle()) == said
