"""What a button stand has to say of where its buttons lie on this body."""

from collections.abc import Iterator, Sequence

from notchbook.pattern import Finding, Measured, Severity, worded
from notchbook.style.closures.button_places import ButtonPlaces, ButtonRoom
from notchbook.style.closures.buttons_laid import ButtonSize, joints
from notchbook.style.closures.figures import SPACING
from notchbook.style.closures.straight_center import StraightCenter

CHECK = "button-stand"

_ON_LEVEL = 10.0
"""mm off the level at which a button holds the front closed there still. Own judgment."""


def stand_notes(
    centers: Sequence[StraightCenter],
    laid: ButtonPlaces,
    room: ButtonRoom,
    button: ButtonSize,
) -> Iterator[Finding]:
    """Buttons off the level where one was wanted, too far apart, or on a seam."""
    piece, where = centers[0].piece.name, centers[0].edge.name
    if room.level is not None and laid.off_level > _ON_LEVEL:
        yield worded(
            CHECK,
            "button-off-level",
            Severity.LOOK,
            Measured(laid.off_level, 0.0),
            piece=piece,
            where=where,
            off=laid.off_level,
        )
    if laid.spacing > SPACING.most:
        yield worded(
            CHECK,
            "buttons-far-apart",
            Severity.LOOK,
            Measured(laid.spacing, SPACING.most),
            piece=piece,
            where=where,
            spacing=laid.spacing,
            most=SPACING.most,
        )
    if laid.spacing and laid.spacing < button.diameter + 2.0:
        yield worded(
            CHECK,
            "buttons-close",
            Severity.LOOK,
            Measured(laid.spacing, button.diameter + 2.0),
            piece=piece,
            where=where,
            spacing=laid.spacing,
        )
    for joint in joints(centers):
        nearest = min(abs(place - joint) for place in laid.places)
        if nearest < button.diameter / 2.0:
            yield worded(
                CHECK,
                "button-on-seam",
                Severity.LOOK,
                Measured(nearest, button.diameter / 2.0),
                piece=piece,
                where=where,
                off=nearest,
            )
