"""Finding a check by its id; its file is imported when it is used.

The house's own checks are the files of :mod:`notchbook.checks.rules`; other packages add theirs
through the entry point group ``notchbook.checks``.
"""

import difflib
import pkgutil
from functools import cache
from importlib import import_module
from importlib.metadata import entry_points

from notchbook.checks import rules
from notchbook.checks.check import Check
from notchbook.errors import HouseFault, InputError

_GROUP = "notchbook.checks"


@cache
def check_sources() -> dict[str, str]:
    """Each check's id with where it is found (``module:attribute``); imports no check."""
    found: dict[str, str] = {}
    for module in pkgutil.iter_modules(rules.__path__):
        found[module.name.replace("_", "-")] = f"{rules.__name__}.{module.name}:{module.name}"
    for point in entry_points(group=_GROUP):
        if found.get(point.name, point.value) != point.value:
            raise HouseFault("check-twice", check=point.name)
        found[point.name] = point.value
    return dict(sorted(found.items()))


@cache
def load_check(check_id: str) -> Check:
    """The check with this id; InputError ``check-unknown`` with the nearest ids."""
    source = check_sources().get(check_id)
    if source is None:
        near = difflib.get_close_matches(check_id, check_sources()) or list(check_sources())
        raise InputError("check-unknown", check=check_id, near=near)
    module, attribute = source.split(":")
    found = getattr(import_module(module), attribute)
    if not isinstance(found, Check) or found.id != check_id:
        raise HouseFault("check-misnamed", check=check_id, source=source)
    return found


def all_checks() -> tuple[Check, ...]:
    """Every check, by id (imports them all)."""
    return tuple(load_check(check_id) for check_id in check_sources())
