"""Seams of the garment whose two edges bend against each other, as a princess seam over the bust: the hollow
edge is clipped and wedges are cut out of the rounded one, before the seam lies flat (common practice, no
source)."""

from collections.abc import Iterator
from typing import Final

from notchbook.finish.sewing.curved import hollow
from notchbook.finish.sewing.joints import steps
from notchbook.finish.sewing.seam_words import seam_word, titled, titles_of
from notchbook.finish.sewing.stages import is_lining, stage_of
from notchbook.finish.sewing.task import Task, key_of
from notchbook.pattern import EdgeUse, Pattern, Seam

_BENT: Final = 20.0
"""Degrees in all from which an edge does not lie flat unclipped. Own judgment."""

_STYLE_LINE: Final = "style_line"

_TEXT: Final = (
    "Clip the allowance of the {hollow} at the {word} where it is hollow, cut wedges out of that of the "
    "{rounded}, and press the seam open"
)


def clipped(pattern: Pattern) -> Iterator[Task]:
    """The line after each such seam; not in leather, whose allowances are glued, nor in cloth that gives."""
    lines = (seam for seam in pattern.seams.values() if seam.allowance_class == _STYLE_LINE)
    for seam in (seam for seam in lines if _is_pressed_open(pattern, seam)):
        first, second = _hollow(pattern, seam.first), _hollow(pattern, seam.second)
        if max(first, second) < _BENT:
            continue
        runs = (seam.first, seam.second) if first >= second else (seam.second, seam.first)
        bent, rounded = (titled(titles_of(pattern, uses)) for uses in runs)
        stage, rank = stage_of(pattern, seam)
        key = key_of(seam.name)
        text = _TEXT.format(word=seam_word(pattern, seam), hollow=bent, rounded=rounded)
        at = tuple(use.edge for use in (*seam.first, *seam.second))
        yield Task(f"{key}/clipped", stage, text, at, frozenset({key}), rank + 1)


def _hollow(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> float:
    return hollow(step.edge for step in steps(pattern, uses))


def _is_pressed_open(pattern: Pattern, seam: Seam) -> bool:
    """Whether the allowances of the seam are pressed open, in cloth that does not give way by itself."""
    run = (*steps(pattern, seam.first), *steps(pattern, seam.second))
    pieces = [pattern.piece_of(step.edge.name) for step in run]
    gives = any(piece.stretches or is_lining(piece.name) for piece in pieces)
    return pattern.making is None and not gives
