"""The studio at work: styles, bodies and size charts of one book, open for editing.

An edit is on disk before its function returns. Each open style keeps its last run, so that an edit
re-runs only what it touches. The last good state stays visible while a step waits.
"""

from notchbook.app.studio.states import (
    BodyState,
    ChartState,
    EntrySummary,
    ShelfKind,
    StepChoice,
    StyleState,
)
from notchbook.app.studio.studio import Studio

__all__ = ["BodyState", "ChartState", "EntrySummary", "ShelfKind", "StepChoice", "Studio", "StyleState"]
