"""What a form calls a field whose name alone says nothing."""

from typing import Any

from pydantic import Field


def called(label: str) -> Any:
    """A field with this label; its help stands below it."""
    return Field(json_schema_extra={"label": label})
