"""Facings cut on to a button stand: whether their upper ends are sewn, or lie in the seam of a collar."""

from typing import Final

from notchbook.pattern import Operation, Pattern, split_side
from notchbook.pattern.names import last_word
from notchbook.pattern.resolve import expand

_FOLDED: Final = "facing_folded"
"""How the operation of a step is called that folds such facings back."""

_UPPER_END: Final = "lap_top"
"""How the upper end of a stand is called."""

_EITHER: Final = ", sew their upper ends where no collar or band is sewn on"
_SEWN: Final = ", sew their upper ends"


def folded_text(pattern: Pattern, operation: Operation) -> str:
    """The line of an operation; of facings folded back what is true of this pattern, for the step cannot know
    what is sewn to the neck after it."""
    if last_word(operation.name) != _FOLDED:
        return operation.text
    sewn = {
        edge
        for seam in pattern.seams.values()
        for use in (*seam.first, *seam.second)
        for edge in expand(pattern, use.edge)[0]
    }
    lines = {line.name: piece for piece in pattern.pieces.values() for line in piece.lines}
    topmost = [lines[name] for name in operation.at if name in lines][:1]
    ends = [edge.name for piece in topmost for edge in piece.outline if _is_upper_end(edge.name)]
    is_caught = any(edge in sewn for edge in ends)
    return operation.text.replace(_EITHER, "" if is_caught else _SEWN)


def _is_upper_end(edge: str) -> bool:
    return _UPPER_END in split_side(edge)[0].split("/")[1:2]
