"""A piece laid together anew, put back into its pattern: what hung on names that are gone goes too."""

from dataclasses import replace

from notchbook.pattern.pattern import Pattern, frozen_map
from notchbook.pattern.slashing.assembling import Assembled


def applied(pattern: Pattern, assembled: Assembled) -> tuple[Pattern, dict[str, str]]:
    """The pattern with the piece, and every name that is removed with it, with the reason.

    Notches on the legs of a closed dart go; allowances and corners of names that are gone are forgotten, but
    for the corner of a mouth point that became another.
    """
    gone = assembled.removals.keys() | assembled.merges.keys()
    notches = tuple(name for name, notch in pattern.notches.items() if notch.place.edge in gone)
    corners = {name: style for name, style in pattern.corners.items() if name not in gone}
    for merged, into in assembled.merges.items():
        if merged in pattern.corners:
            corners.setdefault(into[0], pattern.corners[merged])
    after = pattern.with_pieces(assembled.piece).with_notches(without=notches)
    after = replace(
        after,
        corners=frozen_map(corners),
        allowances=frozen_map((name, one) for name, one in pattern.allowances.items() if name not in gone),
    )
    return after, {**assembled.removals, **dict.fromkeys(notches, "its edge went with the dart")}
