"""What is done in leather instead of what cloth is told: a hot iron shrinks it, pins and basting leave holes,
its raw edges do not fray, and a dart cannot be pressed to one side (common practice, no source)."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from notchbook.finish.sewing.task import Task
from notchbook.pattern import Intake, Pattern
from notchbook.pattern.names import last_word
from notchbook.pattern.resolve import expand

_INSTEAD: Final[tuple[tuple[str, str], ...]] = (
    (
        "Neaten the upper edge of the pocket or turn it under, turn the hem to the wrong side at its fold "
        "and stitch it",
        "Turn the hem of the pocket to the wrong side at its fold, glue it and stitch it",
    ),
    ("Press the allowances of the pocket under", "Glue the allowances of the pocket under"),
    (
        r"Turn the (inner|lower) edge of the (waistband|facing) in, or neaten it,",
        r"Leave the \1 edge of the \2 raw",
    ),
    ("Understitch the upper edge of the band to its allowances", "Glue the allowances into the band"),
    ("turn and neaten its raw edges together", "turn it"),
    ("their neatened free edges", "their free edges"),
    ("its neatened lower edge", "its lower edge"),
    (r"\bPress the seam open\b", "Glue the seam open"),
    (r"\bpress the edge\b", "tap the edge flat"),
    (r"\bpress (it|them)\b", r"tap \1 flat"),
    (r"\bpress\b(?! stud)", "tap flat"),
    (r"\bbaste\b", "tape"),
    (r"\bBaste\b", "Tape"),
    (r"\bpin\b", "clip"),
    (r"\bPin\b", "Clip"),
    (r"\bfell (it|them)\b", r"glue \1"),
)
"""Words for cloth, as the lines have them, and what leather is told; the longer before what it contains."""

_FIRST: Final = frozenset({"edges_skived", "edges_held", "seams_glued"})
"""How the lines of the making itself are called: they come before all others."""

_DART: Final = "; trim it to 6 to 8 mm and glue its allowances open"
_FUSED: Final = "; try on a scrap how little heat the fusible needs, for heat shrinks leather"


def in_leather(pattern: Pattern, tasks: Sequence[Task]) -> Iterator[Task]:
    """The tasks; those that work on a piece of leather in its words, and what the making asks for first."""
    for task in tasks:
        if _is_of_leather(pattern, task):
            yield replace(task, text=_said(pattern, task))
        else:
            yield replace(task, rank=-1) if last_word(task.key) in _FIRST else task


def _is_of_leather(pattern: Pattern, task: Task) -> bool:
    if pattern.making is None:
        return False
    cut = [
        {told.material for told in pattern.pieces[name].instructions} - {"fusible"}
        for name in _pieces(pattern, task)
    ]
    return bool(cut) and any(pattern.making.material in materials for materials in cut)


def _pieces(pattern: Pattern, task: Task) -> set[str]:
    """The pieces that the task works on, as far as it names them, or edges or darts of them."""
    found = {name for name in task.at if name in pattern.pieces}
    for name in set(task.at) - found:
        dart = _dart(pattern, name)
        edges = expand(pattern, name)[0] if dart is None else (dart.first_leg,)
        found |= {pattern.carriers[edge] for edge in edges if edge in pattern.carriers}
    return found


def _dart(pattern: Pattern, name: str) -> Intake | None:
    found = pattern.intakes.get(name)
    return found if found is not None and found.kind == "dart" else None


def _said(pattern: Pattern, task: Task) -> str:
    text = task.text
    for cloth, leather in _INSTEAD:
        text = re.sub(cloth, leather, text)
    if any(_dart(pattern, name) is not None for name in task.at):
        return text + _DART
    return text + _FUSED if task.key == "fusing" else text
