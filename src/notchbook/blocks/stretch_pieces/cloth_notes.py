"""What is said of the cloth: how it was tested, and where it does not give what the use asks."""

from collections.abc import Iterator, Mapping

from notchbook.blocks.stretch_fabric.cloth import LEAST_RECOVERY, Cloth
from notchbook.blocks.stretch_fabric.reductions import OVER_THE_BODY, Reduced, least_girth
from notchbook.body import measure_entry
from notchbook.pattern import Finding, Measured, Severity, worded

CHECK = "stretch-draft"
"""The name under which the drafts of stretch cloth speak."""

COMFORTABLE_SHARE = 0.6
"""Of what a cloth stretches so much is comfortable in wear all day (own judgment)."""

_GIRTHS = ("bust_girth", "waist_girth", "hip_girth", "thigh_girth", "knee_girth", "calf_girth", "ankle_girth")
"""What the cloth must go round; the arm has its own words."""

_UNSEEN = 0.05
"""mm that a girth may be too small without a word."""


def cloth_notes(cloth: Cloth, taken: Mapping[str, Reduced], piece: str) -> Iterator[Finding]:
    """Recovery, a direction that was not tested, girths that are held back, eases that ask too much."""
    if cloth.recovery is not None and cloth.recovery < LEAST_RECOVERY:
        yield worded(
            CHECK,
            "recovery-low",
            Severity.LOOK,
            piece=piece,
            recovery=100.0 * cloth.recovery,
            least=100.0 * LEAST_RECOVERY,
        )
    if cloth.along is None:
        yield worded(CHECK, "stretch-along-not-tested", Severity.NOTE, piece=piece)
    yield from _held_back(cloth, taken, piece)
    yield from _asks_too_much(cloth, taken, piece)


def _held_back(cloth: Cloth, taken: Mapping[str, Reduced], piece: str) -> Iterator[Finding]:
    """The girth that the cloth held back most: they are held back for one cause."""
    held = {key: taken[key] for key in _GIRTHS if key in taken and taken[key].is_held_back}
    if not held:
        return
    key = max(held, key=lambda one: held[one].pattern - held[one].wished)
    yield worded(
        CHECK,
        "stretch-holds-back",
        Severity.LOOK,
        Measured(held[key].pattern, held[key].wished),
        piece=piece,
        label=measure_entry(key).label.lower(),
        stretch=100.0 * cloth.across,
    )


def _asks_too_much(cloth: Cloth, taken: Mapping[str, Reduced], piece: str) -> Iterator[Finding]:
    """The girth whose own ease the cloth follows least."""
    short = {
        key: least_girth(taken[key].body, cloth) - taken[key].pattern
        for key in _GIRTHS
        if key in taken and not taken[key].is_held_back
    }
    key = max(short, key=lambda one: short[one], default="")
    if not key or short[key] <= _UNSEEN:
        return
    needed = OVER_THE_BODY * taken[key].body / taken[key].pattern - 1.0
    yield worded(
        CHECK,
        "stretch-asked-too-much",
        Severity.LOOK,
        Measured(taken[key].pattern, taken[key].pattern + short[key]),
        piece=piece,
        label=measure_entry(key).label.lower(),
        needed=100.0 * needed,
        stretch=100.0 * cloth.across,
    )
