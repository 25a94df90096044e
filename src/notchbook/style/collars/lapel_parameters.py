"""What every collar that turns back with the front is asked: neck, front edge, stand, fall, lapel, facing."""

from typing import Annotated

from pydantic import Field

from notchbook.pattern import Operation, part_name
from notchbook.recipe import AmountText, EdgeName, PointName, StepContext, StepParameters
from notchbook.style.collars.figures import UPPER_COLLAR_TURN
from notchbook.style.collars.labels import called
from notchbook.style.collars.lapel_facing import FacingSize
from notchbook.style.collars.neck import NeckEdge
from notchbook.style.collars.two_layers import turn_within


class LapelParameters(StepParameters):
    """What every collar that turns back with the front is asked."""

    neck: Annotated[tuple[NeckEdge, ...], Field(min_length=2)]
    """The neck of one side, from the front edge round to the center back."""
    shoulder: Annotated[PointName | None, called("shoulder on the neck")] = None
    """The point of the neck where the back begins; empty: the side-neck point, or where front meets back."""
    edge: EdgeName
    """The front edge, from the neck down; not on the fold."""
    breaks: AmountText = "22 cm"
    """How far below the neck the lapel breaks, along the front edge."""
    stand: AmountText = "30 mm"
    """How high the collar stands at the center back."""
    fall: AmountText = "45 mm"
    """How far it falls over there: the stand and 10 mm more at least."""
    swing: AmountText | None = None
    """How far the center back of the collar is swung out from the roll line; empty: as far as its outer edge
    needs to lie on the back."""
    lapel: AmountText = "85 mm"
    """How wide the lapel is, square to the roll line."""
    facing: Annotated[AmountText, called("facing at the hem")] = "75 mm"
    """How wide the facing is at the hem."""
    facing_shoulder: Annotated[AmountText, called("facing at the shoulder")] = "45 mm"
    """How wide the facing is at the shoulder."""
    turn: AmountText = UPPER_COLLAR_TURN.amount
    """How far facing and upper collar reach beyond front and undercollar, so that the seam rolls under."""
    interfaced: bool = True
    """Whether facing and collars are cut in fusible too."""


def turn_of_lapel(context: StepContext, parameters: LapelParameters) -> float:
    """The turn of the cloth, mm; StepRefused ``turn-out-of-range``."""
    return turn_within(context, parameters.turn, context.positive(parameters.fall, "fall", "both"))


def facing_size(context: StepContext, parameters: LapelParameters) -> FacingSize:
    """How wide the facing is, mm."""
    return FacingSize(
        context.positive(parameters.facing, "facing"),
        context.positive(parameters.facing_shoulder, "facing_shoulder"),
    )


def operations(
    slug: str, pieces: tuple[str, ...], upper: str, closed: tuple[str, ...] = ("front_edge",)
) -> tuple[Operation, ...]:
    """What is done to lapel and collar beside their seams; ``closed``: those that are sewn before it;
    ``upper``: what the last of the pieces is called, which has the back neck of the upper collar."""
    turned = Operation(
        part_name(slug, "turned"),
        "neck",
        "Trim, clip to the break point and turn; roll the seam to the under side above the break and to the "
        "facing below it; press the roll, not a crease.",
        at=pieces,
        after=tuple(part_name(slug, word) for word in closed),
    )
    stitched_down = Operation(
        part_name(slug, "closed"),
        "neck",
        f"Clip the {upper} at the shoulder, fold its back neck edge in and stitch it down over the neck "
        "seam.",
        at=pieces[-1:],
        after=(part_name(slug, "neck"), turned.name),
    )
    return turned, stitched_down
