"""The columns of a bodies file: what they say about the whole body, and about one measure."""

from typing import Final

from notchbook.body.files.fields import check_fields
from notchbook.body.files.raw_value import VALUE_FIELDS
from notchbook.body.files.set_data import SET_FIELDS
from notchbook.body.sides import sided_key, split_key

_FIRST: Final = ("id", "unit", "name", "kind", "status")

ABOUT_COLUMNS: Final = (*_FIRST, *(name for name in SET_FIELDS if name not in (*_FIRST, "measures")))
"""What a column may say about the whole body: its id, how far its values are known, and what a set says."""

LENGTHS_ABOUT: Final = ("waist_drop", "heel")
"""Those of them that are lengths."""

MEASURE_FIELDS: Final = tuple(field for field in VALUE_FIELDS if field != "value")
"""What a column may say about one measure, after its key and a period: ``hip_girth.error``."""


def split_column(name: str) -> tuple[str, str]:
    """The key with its side, and the field, of a column such as ``hip_depth@left.error``.

    The key alone speaks of the ``value``. Refused: what is no measure (``measure-unknown`` and the others
    of :func:`split_key`), and no field of one (``field-unknown``).
    """
    text_key, period, field = name.partition(".")
    found = sided_key(*split_key(text_key))
    if not period:
        return found, "value"
    check_fields((field,), MEASURE_FIELDS)
    return found, field
