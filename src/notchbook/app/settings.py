"""What a person sets of a draft by name, as text: ``length=58``, ``back_darts=2``, ``bodice.length=hip``."""

from collections.abc import Iterable, Mapping
from typing import Any, Final

from notchbook.app.needs.garment_parameters import SIGN, block_named, parameter_named
from notchbook.body import MeasureSet, notation_names
from notchbook.errors import InputError
from notchbook.recipe import Recipe, StepRecord, change_step, definition
from notchbook.recipe.parameters import holds_amount
from notchbook.units import Unit, parse_amount, quoted, suggestion

_SEVERAL: Final = (list, tuple, dict)


def read_settings(block: str, texts: Iterable[str], unit: Unit) -> dict[str, Any]:
    """The parameters of a block from texts of the form ``name=value``; each bare number is in ``unit``.

    A name of another block that this one is drafted with is given with that block: ``bodice.length``.
    Refused with InputError: ``setting-malformed``, ``setting-unknown``, ``setting-ambiguous``,
    ``block-unknown``. The value itself is judged when the block is drafted.
    """
    block_named(block)
    typed = dict(_parted(text) for text in texts)
    found: dict[str, Any] = {}
    for name, value in typed.items():
        of, parameter = parameter_named(block, name, typed)
        schema = block_named(of).parameters.model_json_schema()["properties"]
        full = parameter if of == block else f"{of}{SIGN}{parameter}"
        found[full] = _value(schema[parameter], value, unit)
    return found


def read_garment_settings(
    garment: str, recipe: Recipe | None, texts: Iterable[str], unit: Unit
) -> dict[str, Any]:
    """As :func:`read_step_settings` where there is a recipe, else as :func:`read_settings`."""
    if recipe is None:
        return read_settings(garment, texts, unit)
    return read_step_settings(recipe, texts, unit)


def read_step_settings(recipe: Recipe, texts: Iterable[str], unit: Unit) -> dict[str, Any]:
    """As :func:`read_settings`, for the steps of a style, each by its slug or id: ``bodice.length=hip``.

    Refused with InputError: ``setting-malformed``, ``setting-not-of-style``, ``setting-not-of-step``.
    """
    found: dict[str, Any] = {}
    for name, value in map(_parted, texts):
        step, parameter = _step_parameter(recipe, name)
        schema = definition(recipe.step(step).operation).parameters.model_json_schema()["properties"]
        found[f"{step}{SIGN}{parameter}"] = _value(schema[parameter], value, unit)
    return found


def with_step_settings(recipe: Recipe, settings: Mapping[str, Any], base: MeasureSet) -> Recipe:
    """The recipe with what :func:`read_step_settings` read; refused where a step cannot read its own."""
    for name, value in settings.items():
        step, _, parameter = name.rpartition(SIGN)
        recipe = change_step(recipe, step, {parameter: value}, base=base)
    return recipe


def settable(record: StepRecord) -> dict[str, Any]:
    """What can be set of a step by name and one word, with the values as they are kept: not its lists, such
    as the edges that it is sewn to."""
    return {name: kept for name, kept in record.parameters.items() if not isinstance(kept, _SEVERAL)}


def _step_parameter(recipe: Recipe, name: str) -> tuple[str, str]:
    """The id of the step and the parameter that are meant."""
    of, _, parameter = name.rpartition(SIGN)
    named = next((record for record in recipe.steps if of in (record.slug, record.id)), None)
    if named is None:
        raise InputError(
            "setting-not-of-style",
            style=recipe.name,
            name=quoted(of or parameter),
            suggestion=_step_suggested(recipe, of, parameter),
            known=tuple(record.slug for record in recipe.steps),
        )
    if parameter not in named.parameters:
        raise InputError(
            "setting-not-of-step",
            style=recipe.name,
            step=of,
            name=quoted(parameter),
            suggestion=suggestion(parameter, settable(named)),
            known=tuple(settable(named)),
        )
    return named.id, parameter


def _step_suggested(recipe: Recipe, of: str, parameter: str) -> str:
    """The step whose name is nearest; where none was named, those that have such a number."""
    if of:
        return suggestion(of, [record.slug for record in recipe.steps])
    having = [f"{record.slug}{SIGN}{parameter}" for record in recipe.steps if parameter in record.parameters]
    return f"Did you mean {' or '.join(having)}? " if having else ""


def _parted(text: str) -> tuple[str, str]:
    name, sign, value = (part.strip() for part in text.partition("="))
    if not (name and sign and value):
        raise InputError("setting-malformed", text=quoted(text))
    return name, value


def _value(field: Mapping[str, Any], text: str, unit: Unit) -> Any:
    """The text as the field wants it: one of its choices, an amount with its unit, else the text."""
    forms = [field, *field.get("anyOf", ())]
    for choice in (choice for form in forms for choice in form.get("enum", ())):
        if str(choice) == text:
            return choice
    if not holds_amount(field):
        return text
    try:
        return parse_amount(text, unit, notation_names()).text
    except InputError:
        return text  # judged, and refused with the name of its field, when the block is drafted
