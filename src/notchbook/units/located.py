"""Saying where in a file or form a value stands that was refused."""

from collections.abc import Iterator
from contextlib import contextmanager

from notchbook.errors import InputError


def located(error: InputError, where: str) -> InputError:
    """The same refusal with the place put before its words (``marta.csv: line 3: hip_girth: ...``).

    Messages for typed values begin with ``{where}``, which is empty until somebody knows the place.
    """
    inner = str(error.facts.get("where", ""))
    return InputError(error.code, **{**error.facts, "where": f"{where}: {inner}"})


@contextmanager
def located_errors(where: str) -> Iterator[None]:
    """Every InputError raised inside is raised again with the place put before its words."""
    try:
        yield
    except InputError as error:
        raise located(error, where) from None
