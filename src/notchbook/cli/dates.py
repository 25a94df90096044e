"""The date on the papers."""

from datetime import UTC, date, datetime

from notchbook.errors import InputError
from notchbook.units import quoted


def paper_date(text: str) -> str:
    """The date as it stands on papers: as given, today when empty; InputError ``date-unusable``."""
    if not text:
        return datetime.now(UTC).astimezone().date().isoformat()
    try:
        return date.fromisoformat(text).isoformat()
    except ValueError as error:
        raise InputError("date-unusable", text=quoted(text)) from error
