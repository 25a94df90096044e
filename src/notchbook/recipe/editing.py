"""Writing in a recipe: add, change, move, remove a step, bind a lost name anew.

Each function gives a new recipe; none of them runs it, but for what a step's open choices are settled on.
What a step refers to is kept as she wrote it.
"""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from pydantic import ValidationError

from notchbook.body import MeasureSet
from notchbook.errors import InputError
from notchbook.pattern.names import Side, instance_of, is_name, is_slug, split_side
from notchbook.recipe.definition import PHASES, Phase
from notchbook.recipe.parameter_paths import value_at
from notchbook.recipe.parameters import StepParameters, names_in
from notchbook.recipe.recipe import Recipe, StepRecord, Target
from notchbook.recipe.registry import AnyStep, definition
from notchbook.recipe.settling import settled_parameters
from notchbook.recipe.track import read_parameters


def add_step(
    recipe: Recipe,
    operation: str,
    parameters: Mapping[str, Any] | None = None,
    *,
    base: MeasureSet,
    slug: str = "",
    side: Side = "both",
    before: str | None = None,
) -> Recipe:
    """The recipe with a step added at the end (or before the step ``before``).

    ``base`` are the base measures, on which every ``auto`` is settled and written down. The id gets
    a number never used before in this recipe; the slug is the operation's name unless given. A step
    that works on a derived piece goes to the second phase.
    """
    step = definition(operation)
    number = recipe.counters.get(operation, 0) + 1
    step_id = f"{operation}-{number}"
    chosen = _free_slug(recipe, slug or operation)
    earlier = _steps_before(recipe, before)
    settled = settled_parameters(step, dict(parameters or {}), base, earlier, (chosen, step_id, side))
    record = StepRecord(
        id=step_id,
        operation=operation,
        version=step.version,
        slug=chosen,
        parameters=_stored(settled),
        title=step.title,
        side=side,
        phase=_phase(recipe, step, settled, chosen),
    )
    index = len(recipe.steps) if before is None else recipe.steps.index(recipe.step(before))
    steps = (*recipe.steps[:index], record, *recipe.steps[index:])
    return replace(recipe, steps=steps, counters={**recipe.counters, operation: number})


def change_step(
    recipe: Recipe, step_id: str, changes: Mapping[str, Any], *, base: MeasureSet, note: str | None = None
) -> Recipe:
    """The recipe with some parameters of a step changed; the rest stays as written.

    A step that now works on a derived piece goes to the second phase, as when it is added. A target
    stays with its parameter only while the number is the one that was solved. What was settled when the step
    was added is settled anew when something that it hangs on is changed.
    """
    record = recipe.step(step_id)
    step = definition(record.operation)
    merged = {**record.parameters, **changes}
    changed = _changed_fields(step, record, changes)
    for field, hangs_on in step.settles.items():
        if field not in changes and not changed.isdisjoint(hangs_on):
            merged.pop(field, None)
    earlier = _steps_before(recipe, record.id)
    settled = settled_parameters(step, merged, base, earlier, (record.slug, record.id, record.side))
    stored = _stored(settled)
    now = replace(
        record,
        parameters=stored,
        note=record.note if note is None else note,
        targets=_targets_of_now(record, stored),
        phase=_phase(recipe, step, settled, record.slug),
    )
    return _replaced(recipe, record, now)


def rename_step(recipe: Recipe, step_id: str, title: str) -> Recipe:
    """The recipe with another title on a step; its slug and all names stay."""
    record = recipe.step(step_id)
    return _replaced(recipe, record, replace(record, title=title.strip() or record.title))


def remove_step(recipe: Recipe, step_id: str) -> Recipe:
    """The recipe without a step; what refers to its names will be lost and say so."""
    record = recipe.step(step_id)
    rest = tuple(kept for kept in recipe.steps if kept is not record)
    return replace(recipe, steps=rest, retired=(*recipe.retired, record.slug))


def move_step(recipe: Recipe, step_id: str, before: str | None) -> Recipe:
    """The recipe with a step standing before another, or at the end; before itself it stays."""
    record = recipe.step(step_id)
    if before == step_id:
        return recipe
    rest = [kept for kept in recipe.steps if kept is not record]
    index = len(rest) if before is None else rest.index(recipe.step(before))
    return recipe.with_steps((*rest[:index], record, *rest[index:]))


def rebind(recipe: Recipe, step_id: str, old_name: str, new_name: str) -> Recipe:
    """The recipe with one name in a step replaced by another; her act, written on the step."""
    if not is_name(new_name):
        raise InputError("parameter-not-name", value=new_name)
    record = recipe.step(step_id)
    parameters = _renamed(record.parameters, old_name, new_name)
    if parameters == record.parameters:
        raise InputError("rebind-nothing", step=step_id, name=old_name)
    step = definition(record.operation)
    changed = replace(record, parameters=parameters, rebound=(*record.rebound, (old_name, new_name)))
    phase = _phase(recipe, step, read_parameters(step, changed), record.slug)
    return _replaced(recipe, record, replace(changed, phase=phase))


def _steps_before(recipe: Recipe, step_id: str | None) -> tuple[StepRecord, ...]:
    """The steps that run before this one; all of them without one."""
    ordered = recipe.ordered()
    if step_id is None:
        return ordered
    place = next((index for index, record in enumerate(ordered) if record.id == step_id), len(ordered))
    return ordered[:place]


def _stored(parameters: StepParameters) -> dict[str, Any]:
    stored: dict[str, Any] = parameters.model_dump(mode="json")
    return stored


def _changed_fields(step: AnyStep, record: StepRecord, changes: Mapping[str, Any]) -> frozenset[str]:
    """The fields of the changes that are otherwise than stored once they are read; none where they cannot be
    read, which is refused in words when they are settled."""
    try:
        read = _stored(step.parameters.model_validate({**record.parameters, **changes}))
    except ValidationError:
        return frozenset()
    return frozenset(field for field in changes if read[field] != record.parameters.get(field))


def _targets_of_now(record: StepRecord, parameters: Mapping[str, Any]) -> tuple[Target, ...]:
    """The targets whose number is still the one that was solved."""
    return tuple(
        target
        for target in record.targets
        if value_at(parameters, target.parameter) == value_at(record.parameters, target.parameter)
    )


def _free_slug(recipe: Recipe, wanted: str) -> str:
    if not is_slug(wanted):
        raise InputError("parameter-not-word", value=wanted)
    taken = {record.slug for record in recipe.steps} | set(recipe.retired)
    if wanted not in taken:
        return wanted
    number = 2
    while f"{wanted}_{number}" in taken:
        number += 1
    return f"{wanted}_{number}"


def _phase(recipe: Recipe, step: AnyStep, parameters: StepParameters, slug: str) -> Phase:
    """The step's own phase, or the later one in which the pieces that it names are made by others.

    What is named with its side stands there only once the two sides are laid together.
    """
    made = {record.slug: record.phase for record in recipe.steps if record.slug != slug}
    names = names_in(parameters)
    phases = [step.phase, *(made[i] for n in names if (i := instance_of(n)) in made)]
    if any(split_side(name)[1] != "both" for name in names):
        phases.append("whole")
    return max(phases, key=PHASES.index)


def _renamed(value: Any, old: str, new: str) -> Any:
    if isinstance(value, dict):
        return {key: _renamed(part, old, new) for key, part in value.items()}
    if isinstance(value, (list, tuple)):
        return [_renamed(part, old, new) for part in value]
    return new if value == old else value


def _replaced(recipe: Recipe, old: StepRecord, new: StepRecord) -> Recipe:
    return recipe.with_steps(tuple(new if kept is old else kept for kept in recipe.steps))
