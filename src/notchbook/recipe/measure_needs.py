"""What a block needs of a body."""

from collections.abc import Iterator
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SometimesNeeded:
    """Measures that are needed under a condition, in words: ``with bust shaping``."""

    when: str
    keys: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class MeasureNeeds:
    """Measures of a block: without the ``needed`` ones it is refused, the ``helpful`` ones make it better.

    For an ``estimated`` one the block takes a substitute, and says so, when it is missing. ``sometimes``
    tells in a list of blocks what is needed under a condition; for one body the block says itself
    (:meth:`notchbook.recipe.StepDefinition.needs_of`) and there it is empty. A key stands in one place.
    """

    needed: tuple[str, ...] = ()
    helpful: tuple[str, ...] = ()
    estimated: tuple[str, ...] = ()
    sometimes: tuple[SometimesNeeded, ...] = ()

    @property
    def keys(self) -> tuple[str, ...]:
        """Everything that the block can use: needed, needed at times, with a substitute, helpful."""
        at_times = (key for one in self.sometimes for key in one.keys)
        return tuple(dict.fromkeys((*self.needed, *at_times, *self.estimated, *self.helpful)))

    @property
    def standings(self) -> tuple[tuple[str, str], ...]:
        """Each key with how it stands in a list: ``needed``, ``needed with bust shaping``, ``helps``."""
        return (
            *((key, "needed") for key in self.needed),
            *((key, f"needed {one.when}") for one in self.sometimes for key in one.keys),
            *((key, "estimated when missing") for key in self.estimated),
            *((key, "helps") for key in self.helpful),
        )

    @property
    def wished(self) -> tuple[str, ...]:
        """What the block can do without: with a substitute, helpful."""
        return (*self.estimated, *self.helpful)


def needs_together(needs: Iterator[MeasureNeeds]) -> MeasureNeeds:
    """What several steps need, each key once and where it weighs most."""
    every = tuple(needs)
    needed = dict.fromkeys(key for need in every for key in need.needed)
    estimated = dict.fromkeys(key for need in every for key in need.estimated)
    helpful = dict.fromkeys(key for need in every for key in need.helpful)
    return MeasureNeeds(
        needed=tuple(needed),
        estimated=tuple(key for key in estimated if key not in needed),
        helpful=tuple(key for key in helpful if key not in needed and key not in estimated),
    )
