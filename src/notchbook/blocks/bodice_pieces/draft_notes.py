"""What the bodice draft has to say of itself: closed is not yet good."""

from collections.abc import Iterator

from notchbook.blocks.bodice_pieces.assumed_notes import assumed_notes
from notchbook.blocks.bodice_pieces.belly_note import belly_note
from notchbook.blocks.bodice_pieces.ease_notes import ease_notes
from notchbook.blocks.bodice_pieces.front_panel import CONTOUR_DART
from notchbook.blocks.bodice_pieces.lever_notes import UNSEEN, NeckRaised, lever_notes
from notchbook.blocks.bodice_pieces.promises import Drafted
from notchbook.blocks.bodice_pieces.sanity_notes import sanity_notes
from notchbook.blocks.upper.shapes import Lever
from notchbook.pattern import Finding


def draft_notes(drafted: Drafted) -> Iterator[Finding]:
    """Levers at their limits, forced shapes, and what was assumed."""
    yield from lever_notes(drafted.names, _untold(drafted), _raised(drafted))
    yield from sanity_notes(drafted)
    yield from assumed_notes(drafted)
    yield from ease_notes(drafted)
    yield from belly_note(drafted)


def _untold(drafted: Drafted) -> tuple[Lever, ...]:
    """The levers that have something of their own to say.

    Where measures disagree so that no bust dart is left, the disagreement says it. Where a center front
    length pulled the balance to its limit and the neck gave way too, the neck says it.
    """
    levers = {lever.name: lever for lever in drafted.half.levers}
    dart, neck = levers.get("bust_dart"), levers.get("center_front")
    is_said = any(one.dart for one in drafted.measures.trusted.disagreements)
    if dart is not None and dart.pulled <= dart.least and is_said:
        del levers["bust_dart"]
    if neck is not None and abs(neck.pulled) > UNSEEN and drafted.measures.given.bust_shape is None:
        levers.pop("balance", None)
    return tuple(levers.values())


def _raised(drafted: Drafted) -> NeckRaised:
    """How a raised front neck is told."""
    if drafted.measures.given.bust_shape is None:
        return "front-neck-too-deep"
    drawn = drafted.names.at("front", CONTOUR_DART)
    has_dart = any(intake.name == drawn for intake in drafted.front.piece.intakes)
    return "front-neck-with-dart" if has_dart else "front-neck-raised"
