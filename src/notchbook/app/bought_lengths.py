"""What is bought by the length: elastic of each width, and the tape that stays the edge of a pocket."""

import math
from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import Final

from notchbook.finish import ElasticCut
from notchbook.output.paper_info import PaperTrim
from notchbook.pattern import Pattern
from notchbook.pattern.names import last_word
from notchbook.pattern.operation import listed
from notchbook.recipe.style_figure import StyleFigure
from notchbook.units import MM_PER_UNIT, LengthStyle
from notchbook.units.number import fraction_text

TAPE_ENDS: Final = StyleFigure(
    20.0, "what a stay tape is longer than its edge, for its ends", "1 cm beyond each end", "common practice"
)

_STAYED: Final = "opening_turned"
"""How the operation of a step is called that stays the edge of a pocket with a tape."""

_STEP_METRIC: Final = 100.0
_STEP_INCHES: Final = 9.0 * float(MM_PER_UNIT["in"])
"""By how much more or less is sold: 10 cm, a quarter of a yard (common practice, no source); mm."""


def bought_lengths(
    pattern: Pattern, elastics: Iterable[ElasticCut], style: LengthStyle
) -> Iterator[PaperTrim]:
    """One line for elastic of each width, all of it together, and one for the stay tape."""
    by_width: dict[float, list[ElasticCut]] = {}
    for one in elastics:
        by_width.setdefault(one.width, []).append(one)
    for width, cut in by_width.items():
        length = sum(one.times * one.length for one in cut)
        titles = tuple(dict.fromkeys(one.title for one in cut))
        said = f"{sold(length, style)} of elastic, {style.text(width)} wide"
        yield PaperTrim(said, f"for the {listed(titles)}")
    tape = sum(_taped(pattern))
    if tape > 0.0:
        yield PaperTrim(f"{sold(tape, style)} of straight stay tape", "for the openings of the pockets")


def sold(length: float, style: LengthStyle) -> str:
    """A length, mm, rounded up to what is sold, in meters or yards: ``1.8 m``, ``2 1/4 yd``."""
    if style.unit == "in":
        return f"{fraction_text(Fraction(math.ceil(length / _STEP_INCHES), 4))} yd"
    tenths = math.ceil(length / _STEP_METRIC)
    return f"{tenths // 10}{style.decimal_sign}{tenths % 10} m"


def _taped(pattern: Pattern) -> Iterator[float]:
    """The tape of each edge that is stayed, mm: on both sides unless its piece is drawn whole."""
    for one in pattern.operations.values():
        edges = (
            (name for name in one.at if name in pattern.carriers) if last_word(one.name) == _STAYED else ()
        )
        for name in edges:
            times = 1.0 if pattern.piece_of(name).cut == "single" else 2.0
            yield times * (pattern.edges[name].length + TAPE_ENDS.value)
