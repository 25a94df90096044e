"""The stored form of a recipe: canonical JSON, its schema, and the way up from older versions."""

import json
import math
from dataclasses import asdict, replace
from typing import Annotated, Any, Literal, NoReturn

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from notchbook.errors import InputError
from notchbook.recipe.recipe import RECIPE_FORMAT, Recipe, StepRecord, Target
from notchbook.recipe.registry import definition

LARGEST_FILE = 5_000_000
"""Characters; a recipe of a thousand steps is far below."""

DEEPEST = 24
"""Levels of lists and objects within each other; parameters of steps need fewer than ten."""

LARGEST_NUMBER = 2**53
"""Whole numbers beyond are not the same in every reader of JSON (RFC 8259, section 6)."""

Whole = Annotated[int, Field(strict=True, ge=0)]


class _Form(BaseModel):
    model_config = ConfigDict(extra="forbid")


class TargetForm(_Form):
    """A wish that a written number came from."""

    parameter: str
    wish: str
    value: Annotated[float, Field(strict=True, allow_inf_nan=False)]


class StepForm(_Form):
    """One pattern step as stored."""

    id: Annotated[str, Field(pattern=r"^[a-z][a-z0-9_]*-[1-9][0-9]{0,8}$")]
    operation: Annotated[str, Field(pattern=r"^[a-z][a-z0-9_]*$")]
    version: Annotated[int, Field(strict=True, ge=1)]
    slug: Annotated[str, Field(pattern=r"^[a-z][a-z0-9]*(_[a-z0-9]+)*$")]
    title: str = ""
    side: Literal["both", "left", "right"] = "both"
    phase: Literal["shaping", "derived", "whole"] = "shaping"
    note: str = ""
    parameters: dict[str, Any]
    targets: list[TargetForm] = []
    rebound: list[tuple[str, str]] = []


class RecipeForm(_Form):
    """A recipe as stored: data only, opening one never runs code."""

    format: Literal["notchbook recipe"]
    format_version: Annotated[int, Field(strict=True, ge=1)]
    name: str
    number: str = ""
    counters: dict[str, Whole] = {}
    retired: list[str] = []
    steps: list[StepForm] = []


def canonical_json(data: Any) -> str:
    """JSON with sorted keys, no spaces to spare, and one line feed at the end: same data, same bytes."""
    return json.dumps(data, sort_keys=True, ensure_ascii=False, indent=1, allow_nan=False) + "\n"


def recipe_to_data(recipe: Recipe) -> dict[str, Any]:
    """The recipe as JSON-ready data."""
    return {
        "format": "notchbook recipe",
        "format_version": RECIPE_FORMAT,
        "name": recipe.name,
        "number": recipe.number,
        "counters": dict(recipe.counters),
        "retired": list(recipe.retired),
        "steps": [_step_data(record) for record in recipe.steps],
    }


def recipe_to_json(recipe: Recipe) -> str:
    """The recipe as canonical JSON text."""
    return canonical_json(recipe_to_data(recipe))


def recipe_from_json(text: str) -> Recipe:
    """The recipe from its text, older steps led up to the versions of now.

    Refused with InputError: ``recipe-too-large``, ``recipe-not-json``, ``recipe-newer``,
    ``recipe-damaged``, ``step-newer``, ``step-too-old``, ``operation-unknown``, ``step-id-twice``.
    """
    if len(text) > LARGEST_FILE:
        raise InputError("recipe-too-large", size=len(text), most=LARGEST_FILE)
    try:
        data = json.loads(text, parse_constant=_refuse_constant, object_pairs_hook=_each_key_once)
    except (ValueError, RecursionError) as error:
        raise InputError("recipe-not-json", detail=str(error)) from error
    return recipe_from_data(data)


def recipe_from_data(data: Any) -> Recipe:
    """The recipe from parsed JSON data; see :func:`recipe_from_json`."""
    if not isinstance(data, dict):
        raise InputError("recipe-damaged", place="the whole file", detail="a recipe is a JSON object")
    _require_plain(data)
    found = data.get("format_version")
    if isinstance(found, int) and not isinstance(found, bool) and found > RECIPE_FORMAT:
        raise InputError("recipe-newer", found=found, known=RECIPE_FORMAT)
    try:
        form = RecipeForm.model_validate(data)
    except ValidationError as error:
        first = error.errors()[0]
        place = ".".join(str(part) for part in first["loc"]) or "the whole file"
        raise InputError("recipe-damaged", place=place, detail=first["msg"]) from error
    _require_own_ids(form)
    return Recipe(
        name=form.name,
        number=form.number,
        steps=tuple(lead_up(_record(step)) for step in form.steps),
        counters=_counters(form),
        retired=tuple(form.retired),
    )


def lead_up(record: StepRecord) -> StepRecord:
    """The record with its parameters led from the stored version of its step to the present one."""
    step = definition(record.operation)
    if record.version > step.version:
        raise InputError("step-newer", step=record.id, found=record.version, known=step.version)
    parameters = record.parameters
    for version in range(record.version, step.version):
        if version not in step.upcasters:
            raise InputError("step-too-old", step=record.id, found=record.version, known=step.version)
        try:
            parameters = step.upcasters[version](dict(parameters))
        except (LookupError, TypeError, ValueError, AttributeError) as error:
            detail = "its parameters are not those of its form"
            raise InputError("recipe-damaged", place=record.id, detail=detail) from error
    return replace(record, version=step.version, parameters=parameters)


def recipe_schema() -> dict[str, Any]:
    """The JSON Schema of a stored recipe."""
    schema = RecipeForm.model_json_schema()
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    schema["title"] = "Notchbook recipe"
    return schema


def _refuse_constant(word: str) -> NoReturn:
    raise ValueError(f"{word} is no number")


def _each_key_once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) != len(pairs):
        keys = [key for key, _ in pairs]
        raise ValueError(f"{next(key for key in keys if keys.count(key) > 1)!r} stands twice in one object")
    return found


def _require_plain(data: Any) -> None:
    """Refuse what cannot be written again: numbers without end, broken characters, bottomless nesting."""
    waiting: list[tuple[Any, int]] = [(data, 1)]
    while waiting:
        value, depth = waiting.pop()
        if depth > DEEPEST:
            raise InputError("recipe-damaged", place="the whole file", detail=f"over {DEEPEST} levels deep")
        if isinstance(value, dict):
            waiting.extend((part, depth + 1) for pair in value.items() for part in pair)
        elif isinstance(value, (list, tuple)):
            waiting.extend((part, depth + 1) for part in value)
        elif not _is_plain(value):
            raise InputError("recipe-damaged", place=ascii(value)[:40], detail="it cannot be written down")


def _is_plain(value: Any) -> bool:
    """Whether a single value is the same in every reader of JSON."""
    if isinstance(value, str):
        return not any("\ud800" <= character <= "\udfff" for character in value)
    if isinstance(value, bool) or value is None:
        return True
    if isinstance(value, int):
        return abs(value) <= LARGEST_NUMBER
    return isinstance(value, float) and math.isfinite(value)


def _step_data(record: StepRecord) -> dict[str, Any]:
    data = asdict(record)
    data["targets"] = [asdict(target) for target in record.targets]
    data["rebound"] = [list(pair) for pair in record.rebound]
    return data


def _record(form: StepForm) -> StepRecord:
    return StepRecord(
        id=form.id,
        operation=form.operation,
        version=form.version,
        slug=form.slug,
        parameters=form.parameters,
        title=form.title,
        side=form.side,
        phase=form.phase,
        note=form.note,
        targets=tuple(Target(t.parameter, t.wish, t.value) for t in form.targets),
        rebound=tuple(form.rebound),
    )


def _require_own_ids(form: RecipeForm) -> None:
    """Each id begins with its operation; no id and no slug stands twice."""
    for step in form.steps:
        if step.id.rsplit("-", 1)[0] != step.operation:
            detail = f"the id of a step begins with its operation, {step.operation}"
            raise InputError("recipe-damaged", place=step.id, detail=detail)
    for what, values in (
        ("id", [step.id for step in form.steps]),
        ("slug", [step.slug for step in form.steps]),
    ):
        twice = sorted({value for value in values if values.count(value) > 1})
        if twice:
            raise InputError("step-id-twice", what=what, value=twice[0])


def _counters(form: RecipeForm) -> dict[str, int]:
    """The stored counters, never below a number that a step already carries."""
    counters = dict(form.counters)
    for step in form.steps:
        operation, number = step.id.rsplit("-", 1)
        counters[operation] = max(counters.get(operation, 0), int(number))
    return counters
