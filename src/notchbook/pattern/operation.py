"""A line of the sewing order that is no plain seam: a zip set in, a band folded, buttonholes worked."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Literal, get_args

from notchbook.pattern.names import last_word

Stage = Literal[
    "prepare",
    "darts",
    "pockets",
    "panels",
    "closures",
    "shoulders",
    "neck",
    "sleeves",
    "sides",
    "armholes",
    "waist",
    "lining",
    "hems",
    "finish",
]
"""When in the making of a garment a line comes, where nothing else says so: first all that is easier on
single flat pieces, the long seams that close the garment late, hems and buttons last (common practice, no
source)."""

STAGES: tuple[Stage, ...] = get_args(Stage)
"""The stages in the order of the work."""


@dataclass(frozen=True, slots=True)
class Operation:
    """One thing that is done in sewing, beside the seams that the pattern knows.

    ``text`` is the order in plain words. ``at`` names the edges, lines, marks, pieces or seams that it works
    on; points among them it lays on each other, two by two. ``after`` names seams and operations that must be
    done before it. One line serves both of the wearer's sides, so its name never takes a side.
    """

    name: str
    stage: Stage
    text: str
    at: tuple[str, ...] = ()
    after: tuple[str, ...] = ()


LAID = "laid"
"""How the operation is called that lays a layer behind a piece: from then on both are sewn as one."""


def laid_layers(operations: Iterable[Operation]) -> frozenset[str]:
    """The pieces that are layers behind others: nothing is sewn of them alone."""
    return frozenset(name for one in operations if last_word(one.name) == LAID for name in one.at)


def listed(words: Sequence[str]) -> str:
    """``front, back and sleeve``."""
    return f"{', '.join(words[:-1])} and {words[-1]}" if len(words) > 1 else "".join(words)


def run_together(first: Operation | None, second: Operation) -> Operation:
    """One line for both of the wearer's sides: it works on what either side has."""
    if first is None:
        return second
    return replace(
        first,
        at=tuple(dict.fromkeys((*first.at, *second.at))),
        after=tuple(dict.fromkeys((*first.after, *second.after))),
    )


def without_places(operations: Iterable[Operation], gone: frozenset[str]) -> tuple[Operation, ...]:
    """The operations as they are when these names are gone: what works on nothing else goes with them."""
    kept: list[Operation] = []
    for one in operations:
        at = tuple(name for name in one.at if name not in gone)
        if at or not one.at:
            after = tuple(name for name in one.after if name not in gone)
            kept.append(replace(one, at=at, after=after))
    return tuple(kept)
