"""The levels of the body that a skirt passes over below the waist, and what it has to say of them."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from math import ceil

from notchbook.blocks.skirts.figures import skirt_figure
from notchbook.body import Side, measure_entry
from notchbook.errors import DraftRefused, GeometryError
from notchbook.geometry.solve import solve_rising
from notchbook.pattern import Cure, Finding, Measured, Severity, worded
from notchbook.recipe import StepContext

MOST_MORE_EASE = 200.0
"""mm of hip ease that are offered at most beside what there is. Own judgment."""

STEP_OF_EASE = 5.0
"""mm to which such an ease is rounded up: a tape is not read closer."""

UNSEEN = 0.5
"""mm by which a girth may stay short before it is spoken of."""


@dataclass(frozen=True, slots=True)
class Level:
    """One girth of the body: its measure, how far below the waist along the skirt it lies, its ease, mm."""

    key: str
    depth: float
    girth: float
    ease: float


def body_levels(
    context: StepContext, hip_ease: float, down_to: float, side: Side | None = None
) -> tuple[Level, ...]:
    """The measured girths of one side below the waist and above ``down_to`` (mm), from above."""
    hip_depth = context.find("hip_depth", side)
    known = (
        (
            "top_hip_girth",
            _share(hip_depth, skirt_figure("level.high_hip")),
            skirt_figure("ease.over_high_hip"),
        ),
        ("belly_girth", context.find("belly_depth", side), skirt_figure("ease.over_belly")),
        ("hip_girth", hip_depth, hip_ease),
    )
    found = [
        Level(key, depth, girth, ease)
        for key, depth, ease in known
        if depth is not None and depth <= down_to and (girth := context.find(key, side)) is not None
    ]
    return tuple(sorted(found, key=lambda level: level.depth))


def _share(amount: float | None, share: float) -> float | None:
    return None if amount is None else share * amount


@dataclass(frozen=True, slots=True)
class TightLevel:
    """A level at which the skirt is ``width`` round, mm, less than body and ease together."""

    level: Level
    width: float

    @property
    def wanted(self) -> float:
        """Body and ease, mm."""
        return self.level.girth + self.level.ease


def tight_levels(levels: tuple[Level, ...], width_at: Callable[[float], float]) -> tuple[TightLevel, ...]:
    """The levels over which the skirt is too tight; ``width_at`` gives its girth at a depth, mm."""
    found = (TightLevel(level, width_at(level.depth)) for level in levels)
    return tuple(tight for tight in found if tight.wanted - tight.width > UNSEEN)


def level_notes(
    check: str, tight: tuple[TightLevel, ...], where: str, cures: Callable[[TightLevel], tuple[Cure, ...]]
) -> Iterator[Finding]:
    """A finding for each tight level: look at it, or stop the papers where the body itself does not go in.

    ``cures`` tells what would heal one of them.
    """
    for one in tight:
        closes = one.width >= one.level.girth - UNSEEN
        yield worded(
            check,
            "skirt-level-tight" if closes else "skirt-level-does-not-close",
            Severity.LOOK if closes else Severity.STOP,
            Measured(one.width, one.wanted),
            where=where,
            level=measure_entry(one.level.key).label.lower(),
            girth=one.level.girth,
            depth=one.level.depth,
            cures=cures(one),
        )


def hip_ease_cure(slug: str, room: Callable[[float], float]) -> tuple[Cure, ...]:
    """The hip ease to be added so that every level is passed; none where that does not do it.

    ``room`` tells how much wider the skirt is than asked for at its tightest level, with so much more ease
    at the hip, mm.
    """
    try:
        more = solve_rising(room, 0.0, 10.0, 0.0, MOST_MORE_EASE)
    except (DraftRefused, GeometryError):
        return ()
    added = STEP_OF_EASE * ceil(more / STEP_OF_EASE)
    return (Cure(slug, "hip_ease", added, "give the hip more ease", added=True),)
