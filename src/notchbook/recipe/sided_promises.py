"""What drafts promise and say of two sides, under the names of the whole pattern."""

from collections.abc import Container, Iterable, Iterator
from dataclasses import replace

from notchbook.pattern.expectation import Expectation
from notchbook.pattern.finding import Finding, Severity
from notchbook.pattern.names import Side, split_side, with_side
from notchbook.pattern.pattern import Pattern
from notchbook.units import TOLERANCES


def assemble_expectations(
    right: Iterable[Expectation], left: Iterable[Expectation], known: Container[str]
) -> tuple[Expectation, ...]:
    """The closures of both sides: a length taken twice becomes right plus left.

    ``known`` are the names of the whole pattern. What belongs to both sides, such as a center on the
    fold or a sleeve that serves both arms, keeps its name there, and a length that is measured on nothing
    else is promised once, unless the two sides ask something different of it.
    """
    own = {promise.name: promise for promise in right}
    others = {promise.name: promise for promise in left}
    found: list[Expectation] = []
    for promise in own.values():
        found.extend(_promised(promise, others.get(promise.name), known))
    found += [_sided(promise, "left", known) for name, promise in others.items() if name not in own]
    return tuple(found)


def unfolded_expectations(
    promises: tuple[Expectation, ...], known: Container[str]
) -> tuple[Expectation, ...]:
    """The closures of a garment whose sides are alike, where a step unfolded what they are measured on."""
    unfolded = {
        part
        for promise in promises
        for part in promise.parts
        if part not in known and split_side(part)[1] == "both" and with_side(part, "right") in known
    }
    if not unfolded:
        return promises
    plain = {part for promise in promises for part in promise.parts} - unfolded
    return assemble_expectations(promises, promises, plain)


def _promised(right: Expectation, left: Expectation | None, known: Container[str]) -> Iterator[Expectation]:
    first = _sided(right, "right", known)
    if left is None:
        yield first
        return
    second = _sided(left, "left", known)
    if first.parts == right.parts and _ask_the_same(right, left):
        yield right
    elif first.parts != right.parts and right.times % 2 == 0:
        yield replace(
            right,
            names=(*first.names, *second.names),
            chains=(*first.chains, *second.chains),
            times=right.times // 2,
            body=(right.body + left.body) / 2,
            ease=(right.ease + left.ease) / 2,
        )
    else:
        yield from (first, second)


def _ask_the_same(right: Expectation, left: Expectation) -> bool:
    """Whether the body and what is wanted of the piece are one on both sides: one piece may serve two arms
    of which one fills it more."""
    apart = max(abs(right.body - left.body), abs(right.wanted - left.wanted))
    return apart <= TOLERANCES.closure


def _sided(promise: Expectation, side: Side, known: Container[str]) -> Expectation:
    def named(name: str) -> str:
        return name if name in known else with_side(name, side)

    return replace(
        promise,
        name=with_side(promise.name, side),
        names=tuple(map(named, promise.names)),
        chains=tuple(tuple(map(named, chain)) for chain in promise.chains),
    )


def assemble_notes(right: Iterable[Finding], left: Iterable[Finding], whole: Pattern) -> tuple[Finding, ...]:
    """What the drafts of both sides said, of one side where it is said of one.

    What is said alike of both is said once, of the whole. So is what is said of a piece that serves both
    sides, whose two drafts differ by less than can be seen; where one side has more to say of it than the
    other, as of one sleeve for two arms, the graver of the two is said, and of which side.
    """
    first, second = list(right), list(left)
    same = {note for note in set(first) & set(second) if _has_home(note, whole)}
    serving = {_subject(note) for note in first if note not in same and _serves_both(note, whole)}
    once = serving & {_subject(note) for note in second if note not in same}
    said: list[Finding] = []
    for note in first:
        if note in same:
            said.append(_renamed(note, "right", whole.index))
        elif _subject(note) not in once:
            said.append(sided_note(note, "right", whole.index))
        else:
            said.append(_graver(note, _gravest(second, _subject(note)), whole))
    apart = (note for note in second if note not in same and _subject(note) not in once)
    return (*said, *(sided_note(note, "left", whole.index) for note in apart))


_GRAVENESS = {Severity.NOTE: 0, Severity.LOOK: 1, Severity.STOP: 2}


def _graver(right: Finding, left: Finding, whole: Pattern) -> Finding:
    """Of what is said of one piece for both sides, the graver, of its side; of the whole where both say the
    same but for what can not be seen."""
    own, other = _weight(right), _weight(left)
    if own[0] == other[0] and abs(own[1] - other[1]) <= TOLERANCES.closure:
        return _renamed(right, "right", whole.index)
    side: Side = "right" if own > other else "left"
    return sided_note(right if side == "right" else left, side, whole.index)


def _gravest(notes: Iterable[Finding], subject: tuple[object, ...]) -> Finding:
    return max((note for note in notes if _subject(note) == subject), key=_weight)


def _weight(note: Finding) -> tuple[int, float]:
    """How grave a note is, and then how far off what it measured."""
    off = 0.0 if note.measured is None else abs(note.measured - (note.wanted or 0.0))
    return _GRAVENESS[note.severity], off


def sided_note(note: Finding, side: Side, known: Container[str]) -> Finding:
    """What a step said of one side, under the names (``known``) of the whole pattern.

    A position on the left is left out: there the drawing is reflected.
    """
    told = replace(note, message=f"{note.message} (The wearer's {side}.)")
    return _renamed(told if side == "right" else replace(told, position=None), side, known)


def _renamed(note: Finding, side: Side, known: Container[str]) -> Finding:
    """The same under the names of the whole: with their side where only that is there."""

    def named(name: str | None) -> str | None:
        if name is None or name in known or split_side(name)[1] != "both":
            return name
        sided = with_side(name, side)
        return sided if sided in known else name

    names = tuple(named(name) or name for name in note.names)
    return replace(note, piece=named(note.piece), where=named(note.where), names=names)


def _subject(note: Finding) -> tuple[str, str, str | None, str | None, tuple[str, ...]]:
    """Of what a note speaks, whatever it measured."""
    return note.check, note.code, note.piece, note.where, note.names


def _serves_both(note: Finding, whole: Pattern) -> bool:
    """Whether a note speaks of a piece that serves both sides as it is drawn on one: a pair or a half."""
    owner = note.piece or whole.carriers.get(note.where or "")
    piece = None if owner is None else whole.pieces.get(owner)
    return piece is not None and piece.cut != "single"


def _has_home(note: Finding, whole: Pattern) -> bool:
    """Whether there is one piece for both sides of which it can be said, or it is said of no piece."""
    owners = {name.split("/", 1)[0] for name in (note.piece, note.where, *note.names) if name is not None}
    return all(owner in whole.pieces or "." not in owner for owner in owners)
