"""Finding an operation by its name; its file is imported when it is used.

The house's own operations are the files of the packages below; other packages add theirs through
the entry point groups ``notchbook.blocks`` and ``notchbook.steps``.
"""

import difflib
import pkgutil
from functools import cache
from importlib import import_module
from importlib.metadata import entry_points
from importlib.util import find_spec
from typing import Any

from notchbook.errors import HouseFault, InputError
from notchbook.recipe.definition import StepDefinition

_PACKAGES = ("notchbook.blocks", "notchbook.style")
_GROUPS = ("notchbook.blocks", "notchbook.steps")

AnyStep = StepDefinition[Any]


@cache
def operation_sources() -> dict[str, str]:
    """Each operation with where its definition is found (``module:attribute``); imports no step."""
    found: dict[str, str] = {}
    for package in _PACKAGES:
        spec = find_spec(package)
        for module in pkgutil.iter_modules(spec.submodule_search_locations if spec else ()):
            if not module.name.startswith("_") and not module.ispkg:
                found[module.name] = f"{package}.{module.name}:STEP"
    for group in _GROUPS:
        for point in entry_points(group=group):
            if found.get(point.name, point.value) != point.value:
                raise HouseFault("operation-twice", operation=point.name)
            found[point.name] = point.value
    return dict(sorted(found.items()))


@cache
def definition(operation: str) -> AnyStep:
    """The definition of an operation; InputError ``operation-unknown`` with the nearest name."""
    source = operation_sources().get(operation)
    if source is None:
        near = difflib.get_close_matches(operation, operation_sources(), n=1)
        raise InputError(
            "operation-unknown", operation=operation, nearest=near[0] if near else "none is near"
        )
    module, attribute = source.split(":")
    found = getattr(import_module(module), attribute)
    if not isinstance(found, StepDefinition) or found.operation != operation:
        raise HouseFault("operation-misnamed", operation=operation, source=source)
    return found


def all_definitions() -> tuple[AnyStep, ...]:
    """Every definition, by name (imports them all)."""
    return tuple(definition(operation) for operation in operation_sources())
