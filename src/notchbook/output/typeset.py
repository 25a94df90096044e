"""Words set as runs of one font each; fractions built from small figures and a slash."""

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache

from notchbook.output.fonts_on_paper import FAMILY, UNKNOWN_LETTER, FontFile, font_for, width_of
from notchbook.output.pen import MM_PER_POINT

_FRACTION = re.compile(r"(?<![\d/.,])(?:(\d+)[ -])?(\d{1,2})/(2|3|4|8|16|32|64)(?![\d/.,]?\d)")
"""A number with a fraction of the ruler, such as ``37 1/2`` or ``3/8``; no date and no page count."""

SMALL = 0.68
"""Size of the figures of a fraction, as a share of the type size."""

_RAISED = 0.24
_TIGHT = -0.02
_GAP = 0.06

CAP_HEIGHT = 0.668
"""Height of the capitals of the family, as a share of the type size (read from the font)."""


@dataclass(frozen=True, slots=True)
class Run:
    """Letters in one font: ``scale`` of the type size, ``x`` and ``rise`` as shares of it."""

    words: str
    font: FontFile
    scale: float
    x: float
    rise: float


@dataclass(frozen=True, slots=True)
class TypesetLine:
    """A line of runs, and its whole width as a share of the type size."""

    runs: tuple[Run, ...]
    width: float


@lru_cache(maxsize=4096)
def typeset(words: str, bold: bool = False) -> TypesetLine:
    """The words as runs. Control marks are left out; letters that no font has are written ``?``."""
    runs: list[Run] = []
    x = 0.0
    for part, scale, rise, gap in _parts(_clean(words)):
        x += gap
        for letters, chosen in _by_font(part, bold):
            runs.append(Run(letters, chosen, scale, x, rise))
            x += width_of(letters, chosen) * scale
    return TypesetLine(tuple(runs), x)


def text_width(words: str, size: float, bold: bool = False) -> float:
    """The width of the words, mm, at a type size in points."""
    return typeset(words, bold).width * size * MM_PER_POINT


def wrapped(words: str, size: float, width: float, bold: bool = False) -> tuple[str, ...]:
    """The words broken at plain spaces into lines not wider than ``width`` mm; a word that is too long for a
    line is broken inside."""
    lines: list[str] = []
    line = ""
    for word in words.split(" "):
        tried = f"{line} {word}" if line else word
        if text_width(tried, size, bold) <= width:
            line = tried
            continue
        if line:
            lines.append(line)
        while text_width(word, size, bold) > width and len(word) > 1:
            fits = next(
                (n for n in range(len(word) - 1, 1, -1) if text_width(word[:n], size, bold) <= width), 1
            )
            lines.append(word[:fits])
            word = word[fits:]
        line = word
    return (*lines, line) if line or not lines else tuple(lines)


def fitting_size(words: str, size: float, least: float, width: float, bold: bool = False) -> float:
    """The type size in points, from ``size`` down to ``least``, at which the words are ``width`` mm wide."""
    natural = text_width(words, size, bold)
    return max(least, size * min(1.0, width / natural)) if natural > 0.0 else size


def shortened(words: str, size: float, width: float, bold: bool = False) -> str:
    """The words, cut with an ellipsis where they are wider than ``width`` mm."""
    if text_width(words, size, bold) <= width:
        return words
    for count in range(len(words) - 1, 0, -1):
        tried = words[:count].rstrip() + "…"
        if text_width(tried, size, bold) <= width:
            return tried
    return "…"


def _clean(words: str) -> str:
    """Composed letters (NFC), vulgar fraction signs spelled out, no control marks."""
    composed = unicodedata.normalize("NFC", words)
    spelled = "".join(map(_spelled, composed, " " + composed))
    return "".join(
        " " if letter.isspace() else letter
        for letter in spelled
        if letter.isspace() or unicodedata.category(letter) not in ("Cc", "Cf", "Cs", "Co")
    )


def _spelled(letter: str, before: str) -> str:
    if "VULGAR FRACTION" not in unicodedata.name(letter, ""):
        return letter
    number = unicodedata.normalize("NFKC", letter).replace("\N{FRACTION SLASH}", "/")
    return f" {number}" if before.isdigit() else number


def _parts(words: str) -> Iterator[tuple[str, float, float, float]]:
    """Stretches of letters with their scale, rise and the gap before them."""
    done = 0
    for found in _FRACTION.finditer(words):
        if found.start() > done:
            yield words[done : found.start()], 1.0, 0.0, 0.0
        whole, above, below = found.groups()
        if whole:
            yield whole, 1.0, 0.0, 0.0
        yield above, SMALL, _RAISED, _GAP if whole else 0.0
        yield "/", 1.0, 0.0, _TIGHT
        yield below, SMALL, 0.0, _TIGHT
        done = found.end()
    if done < len(words):
        yield words[done:], 1.0, 0.0, _GAP if done else 0.0


def _by_font(words: str, bold: bool) -> Iterator[tuple[str, FontFile]]:
    letters, current = "", None
    for letter in words:
        chosen = _font_for(letter, bold)
        drawn = letter if chosen else UNKNOWN_LETTER
        chosen = chosen or FAMILY[bold]
        if current is not None and chosen is not current:
            yield letters, current
            letters = ""
        letters, current = letters + drawn, chosen
    if current is not None:
        yield letters, current


@cache
def _font_for(letter: str, bold: bool) -> FontFile | None:
    return font_for(letter, bold)
