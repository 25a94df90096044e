"""The neck that a collar is sewn to: its edges in order, how long they are as sewn, and where they join."""

from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import EdgeUse, Pattern, Place, require, run_length, run_of, spoken
from notchbook.pattern.names import last_word
from notchbook.recipe import AmountText, EdgeName, PointName, StepContext, StepParameters
from notchbook.style._band_openings import ends_of, meet
from notchbook.style.collars.labels import called
from notchbook.style.collars.neck_cut import neck_from
from notchbook.style.collars.run_place import place_on
from notchbook.units import TOLERANCES

_BACK_SHARE = 0.4
"""How much of a neck that is one edge lies behind the shoulder: about two fifths of a round neck close to the
body (common practice, no source)."""


class NeckEdge(StepParameters):
    """One edge (or group) of the neck, and the end at which the collar comes to it."""

    edge: EdgeName
    """A part of the neck."""
    starts_at: Annotated[PointName, called("comes to it at")]
    """The end at which the collar comes to it, walking from the center front to the center back."""


class CollarParameters(StepParameters):
    """The neck of one side, from the center front to the center back, and what a button stand adds to it."""

    neck: Annotated[tuple[NeckEdge, ...], Field(min_length=1)]
    """The neck of one side, from the center front (or the front edge) round to the center back."""
    extension: AmountText = "0 mm"
    """How much of that neck lies before the center front: the button stand of the garment."""


@dataclass(frozen=True, slots=True)
class Joint:
    """Where two edges of the neck meet: ``along`` mm from the front end; ``is_seam`` where a seam joins
    them; ``is_shoulder`` where the back neck begins."""

    along: float
    is_seam: bool
    is_shoulder: bool


@dataclass(frozen=True, slots=True)
class Neck:
    """The run that the collar covers, from its front end to the center back; lengths as sewn, mm.

    ``front`` and ``back`` lie before and behind the shoulder. ``splits`` tells of an edge that was cut at the
    center front, ``pattern`` is the pattern after that.
    """

    pattern: Pattern
    uses: tuple[EdgeUse, ...]
    front: float
    back: float
    joints: tuple[Joint, ...]
    splits: dict[str, tuple[str, ...]]

    @property
    def length(self) -> float:
        """The whole run."""
        return self.front + self.back

    def place(self, along: float) -> Place:
        """The place so far from the front end, on the edge where it lies."""
        return place_on(self.pattern, self.uses, along)


def extension_of(context: StepContext, parameters: CollarParameters) -> float:
    """How much of the neck lies before the center front, mm; StepRefused ``collar-below-nothing``."""
    extension = context.mm(parameters.extension)
    if extension < 0.0:
        raise StepRefused("collar-below-nothing", field="extension", amount=extension)
    return extension


def neck_of(pattern: Pattern, named: tuple[NeckEdge, ...], left_free: float = 0.0) -> Neck:
    """The neck as it is named, without the first ``left_free`` mm.

    NameLost where an edge is gone; StepRefused ``collar-neck-broken`` where an edge does not begin where the
    one before it ends, ``collar-neck-turned`` where the back is named before the front,
    ``collar-extension-long`` where nothing is left of the front.
    """
    uses = tuple(EdgeUse(one.edge, one.starts_at) for one in named)
    ends = [ends_of(pattern, use) for use in uses]
    for (_, end), (start, _), use in zip(ends, ends[1:], uses[1:], strict=False):
        if not meet(pattern, end, start):
            raise StepRefused("collar-neck-broken", edge=spoken(use.edge), point=spoken(start))
    if "back" in _piece_words(pattern, uses[0]) and "front" in _piece_words(pattern, uses[-1]):
        raise StepRefused("collar-neck-turned", first=spoken(uses[0].edge))
    splits: dict[str, tuple[str, ...]] = {}
    if left_free > TOLERANCES.closure:
        pattern, uses, splits = neck_from(pattern, uses, left_free)
    lengths = [run_length(pattern, (use,)) for use in uses]
    whole = sum(lengths)
    back = lengths[-1] if len(lengths) > 1 else _BACK_SHARE * whole
    return Neck(pattern, uses, whole - back, back, _joints(pattern, uses), splits)


def _piece_words(pattern: Pattern, use: EdgeUse) -> list[str]:
    """The words that the piece of an edge is called by."""
    return last_word(pattern.carriers[run_of(pattern, (use,))[0].edge.name]).split("_")


def _joints(pattern: Pattern, uses: tuple[EdgeUse, ...]) -> tuple[Joint, ...]:
    """Every place where another edge or another piece begins."""
    found: list[Joint] = []
    along, before = 0.0, ""
    for index, use in enumerate(uses):
        for number, step in enumerate(run_of(pattern, (use,))):
            owner = pattern.carriers[step.edge.name]
            is_shoulder = number == 0 and index == len(uses) - 1
            if along > 0.0 and (owner != before or is_shoulder):
                found.append(Joint(along, owner != before, is_shoulder))
            along += run_length(pattern, (EdgeUse(step.edge.name, step.start),))
            before = owner
    return tuple(found)


def members_of(neck: Neck) -> tuple[str, ...]:
    """The living edges of the run."""
    return tuple(member for use in neck.uses for member in require(neck.pattern, use.edge))
