"""The blocks that stand for one garment, and the parameters of each: ``length`` or ``bodice.length``.

A sleeve is drafted with a bodice. A plain name is the block's own parameter where it has one of that name,
else that of the one block before it that has; a dotted name says which block is meant. With ``bodice=dress``
a block that stands for the bodice is drafted in its stead.
"""

from collections.abc import Iterator, Mapping
from typing import Any, Final

from notchbook.errors import InputError
from notchbook.recipe import Recipe, StepDefinition, all_definitions, definition, operation_sources
from notchbook.units import quoted, suggestion

SIGN = "."
"""Between the name of a block and that of its parameter."""

_NONE: Final[Mapping[str, Any]] = {}


def blocks() -> tuple[StepDefinition[Any], ...]:
    """The blocks that can be drafted, by name."""
    return tuple(step for step in all_definitions() if step.kind == "block")


def block_named(name: str) -> StepDefinition[Any]:
    """The block of this name; InputError ``block-unknown`` when there is none."""
    # Only this one is imported: a draft need not wait for all the others.
    step = definition(name) if name in operation_sources() else None
    if step is None or step.kind != "block":
        raise InputError("block-unknown", block=name, known=tuple(step.operation for step in blocks()))
    return step


def blocks_in_order(block: str, parameters: Mapping[str, Any] = _NONE) -> tuple[StepDefinition[Any], ...]:
    """The block, after all blocks that it is drafted with, each once; InputError ``block-unknown``.

    Where ``parameters`` name a block that stands for one of those (``bodice``: ``dress``), it is that one.
    """
    return tuple({step.operation: step for step in _before_and(block, parameters)}.values())


def _before_and(block: str, parameters: Mapping[str, Any]) -> Iterator[StepDefinition[Any]]:
    step = block_named(block)
    for before in step.drafted_with:
        named = parameters.get(before, parameters.get(f"{block}{SIGN}{before}", before))
        is_known = isinstance(named, str) and named in operation_sources()
        yield from _before_and(named if is_known and serves(named, before) else before, parameters)
    yield step


def parameter_named(block: str, name: str, parameters: Mapping[str, Any] = _NONE) -> tuple[str, str]:
    """The block and the parameter that a plain or dotted name means, beside these other parameters.

    Refused with InputError: ``setting-unknown``; ``setting-ambiguous`` for a plain name that several of the
    blocks before this one have; ``block-unknown``.
    """
    steps = {step.operation: step for step in blocks_in_order(block, parameters)}
    of, dot, field = name.rpartition(SIGN)
    if dot and of in steps and field in steps[of].parameters.model_fields:
        return of, field
    owners = [one for one, step in steps.items() if name in step.parameters.model_fields]
    if block in owners:
        return block, name
    if len(owners) > 1:
        meant = tuple(f"{owner}{SIGN}{name}" for owner in owners)
        raise InputError("setting-ambiguous", block=block, name=quoted(name), known=meant)
    if owners:
        return owners[0], name
    known = known_names(block, parameters)
    raise InputError(
        "setting-unknown", block=block, name=quoted(name), known=known, suggestion=suggestion(name, known)
    )


def known_names(block: str, parameters: Mapping[str, Any] = _NONE) -> tuple[str, ...]:
    """What can be set of a block: its own parameters, then those of the blocks before it with their block."""
    own, *before = reversed(blocks_in_order(block, parameters))
    names = [f"{step.operation}{SIGN}{field}" for step in before for field in step.parameters.model_fields]
    return (*own.parameters.model_fields, *names)


def chosen_by_block(block: str, parameters: Mapping[str, Any]) -> dict[str, dict[str, Any]]:
    """The parameters of each block of a garment, from plain and dotted names.

    A plain name that no block has stays with the block that was asked for, whose reading refuses it. Refused
    with InputError as :func:`parameter_named`.
    """
    found: dict[str, dict[str, Any]] = {step.operation: {} for step in blocks_in_order(block, parameters)}
    for name, value in parameters.items():
        of, field = parameter_named(block, name, parameters)
        found[of][field] = value
    return found


def standing(recipe: Recipe, operation: str) -> str:
    """The slug of the last step of this operation in a recipe, or of one that stands for it; empty when
    there is none."""
    slugs = [record.slug for record in recipe.steps if serves(record.operation, operation)]
    return slugs[-1] if slugs else ""


def serves(operation: str, wanted: str) -> bool:
    """Whether the operation is the wanted one or stands for it."""
    return operation == wanted or wanted in definition(operation).stands_for
