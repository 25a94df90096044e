"""Notchbook: the working book of a one-person pattern studio.

The names below are the library. Each is loaded when it is first used, so that the import costs nothing::

    import notchbook

    measures = notchbook.read_measures("form_a.json")
    run = notchbook.draft("skirt", measures)
    print(run.pattern.pieces["skirt.front"].edge("skirt.front/side_seam").path.length)  # mm

Lengths are mm, y is up, the grain runs along +y; the sew line is the truth.
"""

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from notchbook.app.drafting import draft
    from notchbook.app.eases.ease_rows import ease_table
    from notchbook.app.examining import examine
    from notchbook.app.papers import cut_ready, job_of, write_draft, write_papers
    from notchbook.app.style_file import read_style, run_style, write_style
    from notchbook.body import MeasureSet, read_measures
    from notchbook.errors import NotchbookError
    from notchbook.pattern import Edge, Pattern, Piece, Seam
    from notchbook.recipe import Recipe, Replay, add_step, change_step, replay

__version__ = "0.1.0"

_HOMES = {
    "Edge": "notchbook.pattern",
    "MeasureSet": "notchbook.body",
    "NotchbookError": "notchbook.errors",
    "Pattern": "notchbook.pattern",
    "Piece": "notchbook.pattern",
    "Recipe": "notchbook.recipe",
    "Replay": "notchbook.recipe",
    "Seam": "notchbook.pattern",
    "add_step": "notchbook.recipe",
    "change_step": "notchbook.recipe",
    "cut_ready": "notchbook.app.papers",
    "draft": "notchbook.app.drafting",
    "ease_table": "notchbook.app.eases.ease_rows",
    "examine": "notchbook.app.examining",
    "job_of": "notchbook.app.papers",
    "read_measures": "notchbook.body",
    "read_style": "notchbook.app.style_file",
    "replay": "notchbook.recipe",
    "run_style": "notchbook.app.style_file",
    "write_draft": "notchbook.app.papers",
    "write_papers": "notchbook.app.papers",
    "write_style": "notchbook.app.style_file",
}
"""Where each public name lives."""

__all__ = [
    "Edge",
    "MeasureSet",
    "NotchbookError",
    "Pattern",
    "Piece",
    "Recipe",
    "Replay",
    "Seam",
    "__version__",
    "add_step",
    "change_step",
    "cut_ready",
    "draft",
    "ease_table",
    "examine",
    "job_of",
    "read_measures",
    "read_style",
    "replay",
    "run_style",
    "write_draft",
    "write_papers",
    "write_style",
]


if not TYPE_CHECKING:
    # Hidden from the type checker, which would take every misspelled name for one of these.
    def __getattr__(name: str) -> Any:
        """The public thing of this name, loaded now (PEP 562)."""
        if name not in _HOMES:
            raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
        from importlib import import_module

        return getattr(import_module(_HOMES[name]), name)


def __dir__() -> list[str]:
    return sorted(__all__)
