"""Steps that exist in tests alone: put into the registry for one test, well or badly behaved."""

import sys
from collections.abc import Callable
from typing import Any

import pytest

from notchbook.pattern import Pattern
from notchbook.recipe import Change, StepContext, StepDefinition, StepParameters, registry


class NoParameters(StepParameters):
    """None."""


class OneNumber(StepParameters):
    """A number, as a step of a second form calls it."""

    depth: int = 3


Run = Callable[[Pattern, StepContext, Any], Change]


def nothing(pattern: Pattern, _context: StepContext, _parameters: StepParameters) -> Change:
    """The work of a step that changes nothing."""
    return Change(pattern)


def odd_step(run: Run, operation: str = "odd", **more: Any) -> StepDefinition[Any]:
    """A step that does what it is told."""
    fields: dict[str, Any] = {"version": 1, "parameters": NoParameters, **more}
    return StepDefinition(operation, kind="style", title="Odd", sentence="", run=run, **fields)


def register(monkeypatch: pytest.MonkeyPatch, *steps: StepDefinition[Any]) -> None:
    """Let the registry know these steps until the test is over."""
    known = {step.operation: step for step in steps}
    sources = {**registry.operation_sources(), **dict.fromkeys(known, "tests:STEP")}
    find = registry.definition

    def definition(operation: str) -> StepDefinition[Any]:
        return known[operation] if operation in known else find(operation)

    def operation_sources() -> dict[str, str]:
        return dict(sorted(sources.items()))

    instead = {
        "definition": (find, definition),
        "operation_sources": (registry.operation_sources, operation_sources),
    }
    for module in [one for name, one in sys.modules.items() if name.startswith("notchbook.")]:
        for name, (known_as, stands_in) in instead.items():
            if getattr(module, name, None) is known_as:
                monkeypatch.setattr(module, name, stands_in)
