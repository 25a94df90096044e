"""Which measure a column or row holds, or which field about the whole body; or that it is left out."""

from collections.abc import Sequence
from typing import Final

from notchbook.body.importing.answers import Answers, LineAnswer, check_target
from notchbook.body.importing.cell_text import looks_like_value
from notchbook.body.importing.foreign_table import ForeignTable
from notchbook.body.importing.header_words import HeaderMeaning, header_words, meaning_for, plain_words
from notchbook.body.importing.her_answer import answer_to, is_meant
from notchbook.body.importing.mapping import MappedLine
from notchbook.body.importing.unit_words import take_unit

_SAMPLES: Final = 3
_YOU_SAID: Final = "you said so"


def line_target(table: ForeignTable, position: int, answers: Answers, *, compare: bool) -> MappedLine:
    """The line with what it means, still without its unit; ``compare``: unknown words by likeness too."""
    line = table.lines[position]
    meaning = meaning_for(line.words, answers.population)
    cells = [text for _row, text in table.cells_of(position)]
    samples = tuple(cells[:_SAMPLES])

    def mapped(target: str, sure: bool, why: str, candidates: tuple[str, ...] = ()) -> MappedLine:
        return MappedLine(line.name, line.number, target, sure, why, candidates, samples=samples)

    answer = answer_to(answers, line)
    if any(is_meant(name, line) for name in answers.skip):
        return mapped("", True, "you left it out")
    if answer is not None and answer.target:
        return mapped(check_target(answer.target), True, _YOU_SAID)
    if not cells or meaning.left_out:
        return mapped("", True, "its words are known to be no measure" if cells else "nothing in it")
    if meaning.targets:
        return mapped(meaning.targets[0], *_sureness(meaning, answer), meaning.targets)
    if answers.skip_unknown:
        return mapped("", True, "you left out what is not known")
    return _unknown(mapped("", False, "the word is not known"), cells, compare=compare)


def _sureness(meaning: HeaderMeaning, answer: LineAnswer | None) -> tuple[bool, str]:
    """Whether the words alone say it, and why; an answer without a target takes the only one offered."""
    if meaning.sure:
        return True, "our own word" if meaning.own else "the word says it"
    if answer is not None and len(meaning.targets) == 1:
        return True, _YOU_SAID
    return False, "the word has more uses"


def _unknown(line: MappedLine, cells: Sequence[str], *, compare: bool) -> MappedLine:
    """A line whose words are not known: left out when it holds text, else asked about."""
    if not any(looks_like_value(text) for text in cells):
        return MappedLine(line.name, line.number, "", True, "it holds words", samples=line.samples)
    near = _near(line.name) if compare else ()
    target = near[0] if near else ""
    why = "the word is like a known one" if near else line.why
    return MappedLine(line.name, line.number, target, False, why, near, samples=line.samples)


def _near(name: str) -> tuple[str, ...]:
    """What known words that are like these mean; offered, never taken."""
    from difflib import get_close_matches  # loaded only when a word is not known

    words = header_words().meanings
    close = get_close_matches(plain_words(take_unit(name[:120])[0]), words, n=3, cutoff=0.78)
    return tuple(dict.fromkeys(target for word in close for target in words[word]))
