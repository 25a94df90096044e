"""The fonts that papers are set in: one family, and a wide fallback for the letters that it lacks."""

from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont


@dataclass(frozen=True, slots=True)
class FontFile:
    """A font by the name that PDF code uses, and its file in the folder ``fonts``."""

    name: str
    file: str


FAMILY = {
    False: FontFile("NotchbookText", "AtkinsonHyperlegibleNext-Regular.ttf"),
    True: FontFile("NotchbookBold", "AtkinsonHyperlegibleNext-Bold.ttf"),
}
"""The first choice, regular (False) and bold (True)."""

FALLBACK = {
    False: FontFile("NotchbookWide", "NotoSans-Regular.ttf"),
    True: FontFile("NotchbookWideBold", "NotoSans-Bold.ttf"),
}
"""For Cyrillic, Greek and wider Latin; loaded only when a letter needs it."""

UNKNOWN_LETTER = "?"
"""Written for a letter that neither font has, such as an emoji: never an empty box."""


@cache
def font(chosen: FontFile) -> TTFont:
    """The font, known to the PDF writer from now on."""
    loaded = TTFont(chosen.name, str(files("notchbook.output") / "fonts" / chosen.file))
    pdfmetrics.registerFont(loaded)
    return loaded


def has_letter(chosen: FontFile, letter: str) -> bool:
    """Whether the font can draw the letter."""
    return ord(letter) in font(chosen).face.charToGlyph


def font_for(letter: str, bold: bool) -> FontFile | None:
    """The font that draws a letter; None when neither can."""
    if has_letter(FAMILY[bold], letter):
        return FAMILY[bold]
    return FALLBACK[bold] if has_letter(FALLBACK[bold], letter) else None


def width_of(words: str, chosen: FontFile) -> float:
    """The width of plain words in one font, as a share of the type size."""
    return float(font(chosen).stringWidth(words, 1.0))
