"""Reading a wish as it is typed: ``around hem = 160 cm``, ``ease armhole = 12 mm``.

A name may be shortened to its last word; it is written down in full once, and never chosen again.
"""

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Final, get_args

from notchbook.body import notation_names
from notchbook.errors import InputError
from notchbook.pattern.expectation import Reach
from notchbook.pattern.names import instance_of, is_name, last_word
from notchbook.pattern.pattern import Pattern
from notchbook.pattern.resolve import Found, expand, resolve
from notchbook.recipe.parameters import read_amount
from notchbook.recipe.replay import Replay
from notchbook.recipe.targets.quantity import Quantity, QuantityKind
from notchbook.recipe.targets.wish import SIGN, Wish
from notchbook.units import Unit, parse_amount, quoted, suggestion

EXAMPLES: Final = (
    "around hem = 160 cm",
    "finished waist = 74 cm",
    "ease front_armhole, back_armhole = 12 mm",
    "misfit side_seam = 0 mm",
    "length skirt.front/hem = 40 cm",
    "level hip_line below 10 cm = 104 cm",
    "distance skirt.front/waist_side to skirt.front/hem_side down = 60 cm",
)
"""One of each kind."""

_KINDS: Final[Mapping[str, QuantityKind]] = {kind: kind for kind in get_args(QuantityKind)}

_DISTANCE = re.compile(r"(\S+)\s+to\s+(\S+?)(?:\s+(down|across))?")
_BELOW = re.compile(r"(.+?)\s+below\s+(.+)")


def read_wish(text: str, run: Replay, unit: Unit = "mm") -> Wish:
    """The wish that a text means on the pattern of a run; a bare number is in ``unit``.

    InputError: ``wish-not-understood``, ``wish-name-unknown``, ``wish-name-ambiguous`` and what reading an
    amount refuses.
    """
    what, sign, amount = (part.strip() for part in text.partition("="))
    if not (what and sign and amount):
        raise _not_understood(text)
    return Wish(read_quantity(what, run, unit), parse_amount(amount, unit, notation_names()).text)


def read_quantity(text: str, run: Replay, unit: Unit = "mm") -> Quantity:
    """What a text asks to measure, its names in full; refused as :func:`read_wish`."""
    kind, rest = _kind_and_rest(text)
    if kind == "distance":
        return _distance(rest, run, text)
    below, rest = _below(rest, unit) if kind == "level" else (0.0, rest)
    words = [word.strip() for word in rest.split(",")]
    names = tuple(dict.fromkeys(name for word in words for name in _named(kind, word, run)))
    if kind == "finished" and len(names) != 1:
        raise _not_understood(text)
    return Quantity(kind, names, below=below)


def stored_wish(text: str) -> Wish:
    """The wish from its kept text, whose names are full; InputError ``wish-not-understood``."""
    what, _, amount = text.partition(SIGN)
    kind, rest = _kind_and_rest(what)
    if kind == "distance":
        found = _DISTANCE.fullmatch(rest)
        if found is None:
            raise _not_understood(text)
        return Wish(Quantity("distance", found.group(1, 2), _reach(found.group(3))), amount)
    below, rest = _below(rest, "mm") if kind == "level" else (0.0, rest)
    names = tuple(name.strip() for name in rest.split(","))
    if not all(is_name(name) for name in names):
        raise _not_understood(text)
    return Wish(Quantity(kind, names, below=below), read_amount(amount).text)


def _kind_and_rest(text: str) -> tuple[QuantityKind, str]:
    word, _, rest = text.strip().partition(" ")
    kind = _KINDS.get(word)
    if kind is None or not rest.strip():
        raise _not_understood(text)
    return kind, rest.strip()


def _distance(rest: str, run: Replay, text: str) -> Quantity:
    found = _DISTANCE.fullmatch(rest)
    if found is None:
        raise _not_understood(text)
    names = tuple(_only(word, _points(run.pattern), "point") for word in found.group(1, 2))
    return Quantity("distance", names, _reach(found.group(3)))


def _reach(word: str | None) -> Reach:
    return "down" if word == "down" else "across" if word == "across" else "straight"


def _below(rest: str, unit: Unit) -> tuple[float, str]:
    found = _BELOW.fullmatch(rest)
    if found is None:
        return 0.0, rest
    amount = parse_amount(found.group(2), unit, {})
    return amount.evaluate(lambda _key: 0.0), found.group(1)


def _named(kind: QuantityKind, word: str, run: Replay) -> tuple[str, ...]:
    """The full names that a word stands for: all of that word where a whole round is asked for, else one."""
    known = tuple(_KNOWN[kind](run))
    if kind in ("around", "level") and word not in known:
        found = [name for name in known if last_word(name) == word]
        if found:
            return tuple(_own_of_pieces(run.pattern, found))
    return (_only(word, known, _THING[kind]),)


def _own_of_pieces(pattern: Pattern, names: list[str]) -> Iterator[str]:
    """Of several names on one piece those of the piece itself: what a later step added is not meant unsaid.

    So the hem of a skirt is its hem, without that of a vent.
    """
    by_piece: dict[str, list[str]] = {}
    for name in names:
        first = expand(pattern, name)[0][0]
        by_piece.setdefault(pattern.carriers[first], []).append(name)
    for piece, on_it in by_piece.items():
        yield from [name for name in on_it if instance_of(name) == instance_of(piece)] or on_it


def _only(word: str, known: Iterable[str], thing: str) -> str:
    names = tuple(known)
    if word in names:
        return word
    found = [name for name in names if word in (last_word(name), last_word(name).removesuffix("_girth"))]
    if len(found) > 1:
        raise InputError("wish-name-ambiguous", word=quoted(word), thing=thing, known=tuple(found))
    if not found:
        words = tuple(dict.fromkeys(map(last_word, names)))
        near = suggestion(last_word(word) if is_name(word) else word, words)
        raise InputError("wish-name-unknown", word=quoted(word), thing=thing, known=words, suggestion=near)
    return found[0]


def _edges(run: Replay) -> Iterable[str]:
    """Edges and groups of edges, but for dart legs and for parts of a group of the same word."""
    pattern = run.pattern
    groups = [name for name in pattern.groups if pattern.index.get(name) == "group"]
    edges = [edge.name for edge in pattern.edges.values() if edge.kind != "leg"]
    return (*edges, *(name for name in groups if _of_edges(pattern, name)))


def _of_edges(pattern: Pattern, name: str) -> bool:
    return isinstance(resolve(pattern, name), Found)


def _points(pattern: Pattern) -> tuple[str, ...]:
    return tuple(name for piece in pattern.pieces.values() for name in piece.points)


def _levels(run: Replay) -> Iterable[str]:
    return (
        line.name for piece in run.pattern.pieces.values() for line in piece.lines if line.kind == "level"
    )


_KNOWN: Final[Mapping[QuantityKind, Callable[[Replay], Iterable[str]]]] = {
    "length": _edges,
    "around": _edges,
    "ease": lambda run: run.pattern.seams,
    "misfit": lambda run: run.pattern.seams,
    "finished": lambda run: (promise.name for promise in run.expectations),
    "level": _levels,
}

_THING: Final[Mapping[QuantityKind, str]] = {
    "length": "edge",
    "around": "edge",
    "ease": "seam",
    "misfit": "seam",
    "finished": "promised girth",
    "level": "level line",
}


def _not_understood(text: str) -> InputError:
    return InputError("wish-not-understood", text=quoted(text), examples=EXAMPLES)
