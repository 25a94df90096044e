"""Finding a kind of output by the ending of the file; its module is imported when it is used.

The house's own kinds are the files of ``output/kinds``, named by their ending; other packages add
theirs through the entry point group ``notchbook.outputs``, named the same way.
"""

import pkgutil
from functools import cache
from importlib import import_module
from importlib.metadata import entry_points

from notchbook.errors import HouseFault, InputError
from notchbook.output import kinds
from notchbook.output.definition import OutputDefinition

_GROUP = "notchbook.outputs"


@cache
def output_sources() -> dict[str, str]:
    """Each ending (with its dot) with where its definition is found; imports no kind."""
    found = {
        f".{module.name}": f"{kinds.__name__}.{module.name}:OUTPUT"
        for module in pkgutil.iter_modules(kinds.__path__)
    }
    for point in entry_points(group=_GROUP):
        if found.get(f".{point.name}", point.value) != point.value:
            raise HouseFault("output-twice", suffix=f".{point.name}")
        found[f".{point.name}"] = point.value
    return dict(sorted(found.items()))


@cache
def output(suffix: str) -> OutputDefinition:
    """The definition for an ending; InputError ``suffix-unknown`` with those that are known."""
    source = output_sources().get(suffix.lower())
    if source is None:
        raise InputError("suffix-unknown", suffix=suffix, known=tuple(output_sources()))
    module, attribute = source.split(":")
    found = getattr(import_module(module), attribute)
    if not isinstance(found, OutputDefinition) or found.suffix != suffix.lower():
        raise HouseFault("output-misnamed", suffix=suffix, source=source)
    return found
