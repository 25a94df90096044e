"""Errors: one base class, a stable code for each message, and the words in one catalogue.

Every refusal is a :class:`NotchbookError`. Its words come from the catalogue beside this file
(one TOML file for each layer of the house), so that a message can be found, reworded and
explained in one place. Nothing here knows about garments.
"""

from notchbook.errors.as_read import as_read, with_facts_named
from notchbook.errors.base import (
    BookError,
    DraftRefused,
    GeometryError,
    HouseFault,
    InputError,
    NameLost,
    NotchbookError,
    OutputError,
    StepRefused,
)
from notchbook.errors.catalogue import Entry, catalogue, entry

__all__ = [
    "BookError",
    "DraftRefused",
    "Entry",
    "GeometryError",
    "HouseFault",
    "InputError",
    "NameLost",
    "NotchbookError",
    "OutputError",
    "StepRefused",
    "as_read",
    "catalogue",
    "entry",
    "with_facts_named",
]
