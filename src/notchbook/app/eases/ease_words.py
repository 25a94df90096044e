"""What is said beside a line of the ease table that is no longer as it was drafted."""

from notchbook.app.eases.ease_rows import EaseRow
from notchbook.units import LengthStyle


def changed_words(row: EaseRow, style: LengthStyle) -> str:
    """``drafted with 5.0 cm of ease, changed by Pleats``, or why it cannot be measured any more; empty for a
    line that is as it was drafted."""
    if not row.is_changed:
        return ""
    if row.gone:
        by = f" ({', '.join(row.changed_by)})" if row.changed_by else ""
        return f"no longer to be measured: {row.gone}{by}"
    drafted = (
        f"with {style.text(row.ease)} of ease" if row.measure else f"as {style.text(row.body + row.ease)}"
    )
    by = f", changed by {' and '.join(row.changed_by)}" if row.changed_by else ""
    return f"drafted {drafted}{by}"
