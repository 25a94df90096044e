"""Reading one body from a JSON file."""

import json
from pathlib import Path
from typing import Any

from notchbook.body.files.set_data import set_from_data
from notchbook.body.files.text_file import MOST_BYTES_ONE_BODY, read_text_file
from notchbook.body.measure_set import MeasureSet
from notchbook.errors import InputError
from notchbook.units import located_errors, quoted


def read_json(path: Path, *, as_typed: bool = False) -> MeasureSet:
    """The measure set in the file; without a name in it, the file's name is taken.

    Refused with InputError: ``measures-file-*`` (see :func:`read_text_file`), ``measures-json-broken``
    (with line and column), ``measure-duplicate``, and what :func:`set_from_data` refuses.
    ``as_typed``: impossible values are kept, for looking over and for nothing else.
    """
    text = read_text_file(path, MOST_BYTES_ONE_BODY)
    with located_errors(quoted(path.name)):
        return set_from_data(json_data(text), default_name=path.stem, as_typed=as_typed)


def json_data(text: str) -> object:
    """The data in a JSON text; refused as :func:`read_json` says: broken, endless, a key twice, NaN."""
    try:
        return json.loads(text, object_pairs_hook=_no_duplicates, parse_constant=_not_finite)
    except json.JSONDecodeError as error:
        raise InputError(
            "measures-json-broken", line=error.lineno, column=error.colno, reason=error.msg, where=""
        ) from None
    except InputError:
        raise
    except (ValueError, RecursionError):
        raise InputError("measures-json-endless", where="") from None


def _no_duplicates(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for key, value in pairs:
        if key in found:
            raise InputError("measure-duplicate", key=quoted(key), where="")
        found[key] = value
    return found


def _not_finite(word: str) -> float:
    raise InputError("number-not-finite", text=word, where="")
