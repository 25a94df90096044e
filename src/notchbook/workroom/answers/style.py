"""A style as it stands on the table."""

from notchbook.app.needs.of_steps import needs_of_recipe
from notchbook.app.studio import StyleState
from notchbook.workroom.answers.cap_in_armhole import LaidHalf, caps_in_armholes
from notchbook.workroom.answers.choices import NameChoices, choices_by_step
from notchbook.workroom.answers.eases import EaseLine, ease_lines
from notchbook.workroom.answers.elastics import ElasticLine, elastic_lines
from notchbook.workroom.answers.findings import Findings, findings
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.answers.piece import SheetPiece, sheet_piece
from notchbook.workroom.answers.seam import SheetSeam, sheet_seams
from notchbook.workroom.answers.sewing import SewingRow, sewing_rows
from notchbook.workroom.answers.shelf import Entry, entry
from notchbook.workroom.answers.steps import StepLine, step_lines
from notchbook.workroom.answers.word_choices import WordChoices, word_choices
from notchbook.workroom.reader import Reader


class StyleAnswer(Answer):
    """Everything that the table shows of one style. ``key`` changes when any shape changes.

    ``choices`` are the names that each step may refer to, by its id. A look only is answered sooner:
    it has no choices, and no findings until they are asked for.
    """

    id: int
    number: str
    name: str
    version: int
    can_undo: bool
    can_redo: bool
    body: Entry
    key: str
    steps: tuple[StepLine, ...]
    pieces: tuple[SheetPiece, ...]
    seams: tuple[SheetSeam, ...]
    choices: dict[str, NameChoices]
    word_choices: WordChoices | None
    findings: Findings | None
    eases: tuple[EaseLine, ...]
    elastics: tuple[ElasticLine, ...]
    sewing: tuple[SewingRow, ...]
    caps_in_armholes: tuple[LaidHalf, ...]
    measures_read: tuple[str, ...]
    measures_needed: tuple[str, ...]


def style_answer(state: StyleState, reader: Reader, *, look: bool = False) -> StyleAnswer:
    """The style in the reader's unit; a ``look`` is shown on the sheet and offers nothing."""
    replay, pattern = state.replay, state.replay.pattern
    return StyleAnswer(
        id=state.id,
        number=state.number,
        name=state.name,
        version=state.version,
        can_undo=state.can_undo,
        can_redo=state.can_redo,
        body=entry(state.body),
        key=replay.key,
        steps=step_lines(replay, reader),
        pieces=tuple(sheet_piece(pattern, piece, reader) for piece in pattern.pieces.values()),
        seams=sheet_seams(pattern, reader),
        choices={} if look else choices_by_step(replay, reader),
        word_choices=None if look else word_choices(pattern, state.house, reader),
        findings=None if look else findings(state.report, reader, replay, papers=False),
        eases=ease_lines(state.eases, replay, reader),
        elastics=elastic_lines(pattern, state.house, reader),
        sewing=() if look else sewing_rows(pattern, reader),
        caps_in_armholes=caps_in_armholes(pattern, reader),
        measures_read=_measures_read(state),
        measures_needed=_measures_needed(state),
    )


def _measures_needed(state: StyleState) -> tuple[str, ...]:
    """The measures without which a step of this style is refused on this body."""
    return needs_of_recipe(state.recipe, state.replay.measures).needed


def _measures_read(state: StyleState) -> tuple[str, ...]:
    """The measures that the steps asked for, each once, whether the body has them or not."""
    tracks = (state.replay.right, state.replay.left, state.replay.whole)
    reads = [key for t in tracks if t for done in t.states for key, _, _ in done.reads]
    return tuple(dict.fromkeys((*_measures_needed(state), *reads)))
