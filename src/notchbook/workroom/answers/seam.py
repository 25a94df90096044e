"""Seams as the sheet lights them up: both sides, with both lengths."""

from notchbook.errors import NotchbookError
from notchbook.pattern import EdgeUse, Gives, Pattern, Seam, require, spoken, walk_seam
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.reader import Reader


class SheetSeam(Answer):
    """One seam: its edges on both sides, in walking order, lengths as sewn, declared ease (which run
    ``gives`` way) and misfit."""

    name: str
    said: str
    first: tuple[str, ...]
    second: tuple[str, ...]
    first_text: str
    second_text: str
    ease: float
    gives: Gives
    ease_text: str
    misfit: float
    misfit_text: str


def sheet_seams(pattern: Pattern, reader: Reader) -> tuple[SheetSeam, ...]:
    """Every seam that can be walked; one with a lost edge is told by the checks."""
    found: list[SheetSeam] = []
    for seam in pattern.seams.values():
        try:
            found.append(_seam(pattern, seam, reader))
        except NotchbookError:
            continue
    return tuple(found)


def _seam(pattern: Pattern, seam: Seam, reader: Reader) -> SheetSeam:
    walk = walk_seam(pattern, seam)
    return SheetSeam(
        name=seam.name,
        said=spoken(seam.name),
        first=_edges(pattern, seam.first),
        second=_edges(pattern, seam.second),
        first_text=reader.text(walk.first),
        second_text=reader.text(walk.second),
        ease=round(walk.ease, 6),
        gives=seam.gives,
        ease_text=reader.text(walk.ease),
        misfit=round(walk.misfit, 6),
        misfit_text=reader.fine(walk.misfit),
    )


def _edges(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> tuple[str, ...]:
    return tuple(member for use in uses for member in require(pattern, use.edge))
