"""The neck that a collar is sewn to: its edges in order, how long they are as sewn, and where they join."""

from dataclasses import dataclass
from typing import Annotated

from notchbook.errors import StepRefused
from notchbook.pattern import EdgeUse, Pattern, Place, require, run_length, run_of, spoken
from notchbook.pattern.names import last_word
from notchbook.pattern.run_place import place_on
from notchbook.recipe import EdgeName, PointName, StepParameters
from notchbook.style._band_openings import ends_of, meet
from notchbook.style.collars.beginning import Beginning
from notchbook.style.collars.labels import called
from notchbook.style.collars.neck_cut import NeckLeft, from_corner, from_cut
from notchbook.style.collars.neck_walk import Corner, corners_of, parted_at
from notchbook.style.collars.shoulder import shoulder_at


class NeckEdge(StepParameters):
    """One edge (or group) of the neck, and the end at which the collar comes to it."""

    edge: EdgeName
    """A part of the neck."""
    starts_at: Annotated[PointName, called("comes to it at")]
    """The end at which the collar comes to it, walking from the center front to the center back."""


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

    ``front`` and ``back`` lie before and behind the shoulder; ``behind`` are the uses of the back neck, none
    where no edge begins at the shoulder. ``splits`` tells of an edge that was cut where the collar begins,
    ``pattern`` is the pattern after that.
    """

    pattern: Pattern
    uses: tuple[EdgeUse, ...]
    behind: tuple[EdgeUse, ...]
    front: float
    back: float
    joints: tuple[Joint, ...]
    splits: dict[str, tuple[str, ...]]

    @property
    def length(self) -> float:
        """The whole run."""
        return self.front + self.back

    @property
    def before(self) -> tuple[EdgeUse, ...]:
        """The uses of the front neck, where an edge begins at the shoulder."""
        return self.uses[: len(self.uses) - len(self.behind)]

    def place(self, along: float) -> Place:
        """The place so far from the front end, on the edge where it lies."""
        return place_on(self.pattern, self.uses, along)


def neck_uses(pattern: Pattern, named: tuple[NeckEdge, ...]) -> tuple[EdgeUse, ...]:
    """The neck as it is named.

    NameLost where an edge is gone; StepRefused ``collar-neck-broken`` where an edge does not begin where the
    one before it ends, ``collar-neck-turned`` where the back is named before the front.
    """
    uses = tuple(EdgeUse(one.edge, one.starts_at) for one in named)
    ends = [ends_of(pattern, use) for use in uses]
    for (_, end), (start, _), use in zip(ends, ends[1:], uses[1:], strict=False):
        if not meet(pattern, end, start):
            raise StepRefused("collar-neck-broken", edge=spoken(use.edge), point=spoken(start))
    if "back" in _piece_words(pattern, uses[0]) and "front" in _piece_words(pattern, uses[-1]):
        raise StepRefused("collar-neck-turned", first=spoken(uses[0].edge))
    return uses


def neck_of(
    pattern: Pattern,
    named: tuple[NeckEdge, ...],
    shoulder: str | None = None,
    beginning: Beginning | None = None,
) -> Neck:
    """The neck as it is named, from where the collar begins; ``shoulder``: the point where it passes over
    the shoulder, None: found.

    Refuses as ``neck_uses``, ``shoulder_at`` and, where nothing is left of the front, with StepRefused
    ``collar-extension-long``.
    """
    uses = neck_uses(pattern, named)
    left = NeckLeft(pattern, uses, {})
    if beginning is not None and beginning.begins in ("corner", "cut"):
        front = shoulder_at(pattern, uses, shoulder).along
        if beginning.at >= front:
            raise StepRefused(
                "collar-extension-long", edge=spoken(uses[0].edge), extension=beginning.at, length=front
            )
        left = (from_corner if beginning.begins == "corner" else from_cut)(pattern, uses, beginning.at)
    over = shoulder_at(left.pattern, left.uses, shoulder)
    before, behind = parted_at(left.pattern, left.uses, over.index) if over.index >= 0 else (left.uses, ())
    back = run_length(left.pattern, left.uses) - over.along
    joints = _joints(left.pattern, left.uses, over)
    return Neck(left.pattern, (*before, *behind), behind, over.along, back, joints, left.splits)


def _piece_words(pattern: Pattern, use: EdgeUse) -> list[str]:
    """The words that the piece of an edge is called by."""
    return last_word(pattern.carriers[run_of(pattern, (use,))[0].edge.name]).split("_")


def _joints(pattern: Pattern, uses: tuple[EdgeUse, ...], shoulder: Corner) -> tuple[Joint, ...]:
    """Every place where another piece begins, and the shoulder."""
    owners = [pattern.carriers[step.edge.name] for step in run_of(pattern, uses)]
    found: list[Joint] = []
    for corner in corners_of(pattern, uses)[1:]:
        is_seam = owners[corner.index - 1] != owners[corner.index]
        if is_seam or corner.index == shoulder.index:
            found.append(Joint(corner.along, is_seam, corner.index == shoulder.index))
    if shoulder.index < 0:
        found.append(Joint(shoulder.along, False, True))
    return tuple(sorted(found, key=lambda joint: joint.along))


def members_of(neck: Neck) -> tuple[str, ...]:
    """The living edges of the run."""
    return tuple(member for use in neck.uses for member in require(neck.pattern, use.edge))
