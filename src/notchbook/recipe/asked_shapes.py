"""What steps were asked to draw in a way that would else be a slip: waves of edges, grains off the center."""

from collections.abc import Iterable, Iterator, Mapping

from notchbook.pattern.names import Side, split_side, with_side
from notchbook.pattern.pattern import Pattern
from notchbook.pattern.resolve import expand
from notchbook.recipe.track import StepState

Told = tuple[Side, StepState]
"""A state, and of which of the wearer's sides its names are."""


def asked_waves(told: Iterable[Told], pattern: Pattern) -> Mapping[str, int]:
    """How often each living edge was asked to change the side to which it bends, by the last step to draw it.

    An edge that is in parts now may have so many changes in each; one of which there are two, on both sides.
    """
    found: dict[str, int] = {}
    for side, state in told:
        for name, changes in state.waves.items():
            living = (member for member in _living(pattern, name, side) if member in pattern.edges)
            found.update(dict.fromkeys(living, changes))
    return found


def asked_grains(told: Iterable[Told], pattern: Pattern) -> frozenset[str]:
    """The living pieces whose grain a step was asked to turn off their center."""
    named = ((name, side) for side, state in told for name in state.grains)
    living = (member for name, side in named for member in _living(pattern, name, side))
    return frozenset(member for member in living if member in pattern.pieces)


def _living(pattern: Pattern, name: str, side: Side) -> Iterator[str]:
    """What the pattern has behind a name of one side, or of both."""
    names = [name]
    if split_side(name)[1] == "both":
        sides: tuple[Side, ...] = ("left", "right") if side == "both" else (side,)
        names += [with_side(name, one) for one in sides]
    for one in names:
        yield from expand(pattern, one)[0]
