"""Layers that are basted together and sewn on as one, such as those of a flat collar: one line, not two."""

from collections.abc import Sequence
from dataclasses import replace

from notchbook.finish.sewing.joints import steps
from notchbook.finish.sewing.seam_words import titled, titles_of
from notchbook.finish.sewing.task import Task, after_renamed, key_of
from notchbook.pattern import Operation, Pattern, Seam
from notchbook.pattern.names import last_word
from notchbook.pattern.seam import TURNED_SEAM

_BASTED = "basted"
"""How the operation of a step is called that bastes layers together at the neck."""

_AS_ONE = "Sew the {layers} as one to the {garment}: {word}"


def sewn_as_one(pattern: Pattern, tasks: Sequence[Task]) -> list[Task]:
    """The tasks, those layers sewn on in the line of the first, after they are basted together."""
    by_key = {task.key: task for task in tasks}
    renamed: dict[str, str] = {}
    for one in pattern.operations.values():
        seams = _of_layers(pattern, one) if last_word(one.name) == _BASTED else ()
        keys = tuple(dict.fromkeys(key_of(seam.name) for seam in seams if key_of(seam.name) in by_key))
        for key in keys[1:]:
            renamed[key] = keys[0]
        if keys:
            by_key[keys[0]] = _merged(pattern, by_key[keys[0]], seams, one)
    return [after_renamed(by_key[task.key], renamed) for task in tasks if task.key not in renamed]


def _of_layers(pattern: Pattern, basted: Operation) -> tuple[Seam, ...]:
    """The seams that sew these layers to a neck."""
    return tuple(
        seam
        for seam in pattern.seams.values()
        if seam.seam_class == TURNED_SEAM
        and seam.allowance_class == "neckline"
        and {pattern.carriers[step.edge.name] for step in steps(pattern, seam.first)} <= set(basted.at)
    )


def _merged(pattern: Pattern, task: Task, seams: Sequence[Seam], basted: Operation) -> Task:
    layers = tuple(dict.fromkeys(title for seam in seams for title in titles_of(pattern, seam.first)))
    text = _AS_ONE.format(
        layers=titled(layers),
        garment=titled(titles_of(pattern, seams[0].second)),
        word=task.text.rpartition(": ")[2],
    )
    at = tuple(dict.fromkeys(use.edge for seam in seams for use in (*seam.first, *seam.second)))
    return replace(task, text=text, at=at, after=task.after | {key_of(basted.name)})
