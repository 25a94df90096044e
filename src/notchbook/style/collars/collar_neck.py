"""What every collar is asked of its neck: the edges, the center, the shoulder, and where it begins."""

from collections.abc import Iterator
from typing import Annotated, TypeVar

from pydantic import Field

from notchbook.errors import StepRefused
from notchbook.pattern import EdgeUse, Finding, Measured, Pattern, Severity, run_of, spoken, worded
from notchbook.pattern.names import split_side
from notchbook.recipe import AmountText, PointName, StepContext, StepParameters
from notchbook.style.collars.beginning import Beginning, Begins, begun, begun_as, center_of, named_center
from notchbook.style.collars.labels import called
from notchbook.style.collars.neck import Neck, NeckEdge, neck_of, neck_uses
from notchbook.style.collars.neck_walk import SAME_PLACE


class CollarParameters(StepParameters):
    """The neck of one side, from the center front to the center back, and what a button stand adds to it.

    Where the center lies and how the collar ``begins`` is written down when the step is added: that is the
    same in every size.
    """

    neck: Annotated[tuple[NeckEdge, ...], Field(min_length=1)]
    """The neck of one side, from the center front (or the front edge) round to the center back."""
    center: Annotated[PointName | None, called("center on the neck")] = None
    """The corner of the neck at the center front, where a button stand goes on beyond it; empty: found by the
    center line of the stand when the step is added."""
    extension: AmountText | None = None
    """How much of the neck lies before the center front, along the neck, in place of that corner; only where
    no corner lies there."""
    shoulder: Annotated[PointName | None, called("shoulder on the neck")] = None
    """The point of the neck where the back begins; empty: the side-neck point, or where front meets back."""
    begins: Annotated[Begins | None, called("how it begins")] = None
    """At the front end of the neck (and no farther, whatever the overlap says), at a corner of it, within an
    edge that is cut there, or beyond the front end; empty: looked up when the step is added."""


def collar_neck(
    pattern: Pattern, context: StepContext, parameters: CollarParameters, overlap: float = 0.0
) -> tuple[Neck, Beginning]:
    """The neck of a collar that goes ``overlap`` mm beyond the center, and how it begins there.

    Refuses as ``neck_of`` and ``begun_as``; StepRefused ``collar-below-nothing``,
    ``collar-center-elsewhere``, ``collar-center-unsaid``.
    """
    uses = neck_uses(pattern, parameters.neck)
    extension = _extension(pattern, context, parameters, uses)
    beginning = begun_as(pattern, uses, (extension, overlap), parameters.begins)
    return neck_of(pattern, parameters.neck, parameters.shoulder, beginning), beginning


CollarT = TypeVar("CollarT", bound=CollarParameters)

BEGINS_BY = ("neck", "center", "extension")
"""The fields by which it is settled how a collar begins; a stand that laps has its overlap too."""


def settled(pattern: Pattern, context: StepContext, parameters: CollarT, overlap: float = 0.0) -> CollarT:
    """The parameters with the center and how the collar begins written down, as on this body.

    ``pattern`` is that of one side, on which a name has no side of its own yet.
    """
    uses = neck_uses(pattern, tuple(_one_side(one) for one in parameters.neck))
    changes: dict[str, str] = {}
    if parameters.center is None and parameters.extension is None:
        found = center_of(pattern, uses)
        if found is not None:
            changes["center"] = run_of(pattern, uses)[found.index].start
    read = parameters.model_copy(update=changes)
    if read.begins is None:
        extension = _extension(pattern, context, read, uses)
        changes["begins"] = begun(pattern, uses, extension, overlap).begins
    return parameters.model_copy(update=changes)


def _one_side(named: NeckEdge) -> NeckEdge:
    """The edge as it is called before the sides of its piece are told apart."""
    return NeckEdge(edge=split_side(named.edge)[0], starts_at=split_side(named.starts_at)[0])


def overlap_of(context: StepContext, asked: str) -> float:
    """How far a stand goes beyond the center, mm; StepRefused ``collar-below-nothing``."""
    overlap = context.mm(asked)
    if overlap < 0.0:
        raise StepRefused("collar-below-nothing", field="overlap", amount=overlap)
    return overlap


def _extension(
    pattern: Pattern, context: StepContext, parameters: CollarParameters, uses: tuple[EdgeUse, ...]
) -> float:
    """How much of the neck lies before the center front, mm along it."""
    if parameters.extension is not None:
        extension = context.mm(parameters.extension)
        if extension < 0.0:
            raise StepRefused("collar-below-nothing", field="extension", amount=extension)
        return extension
    if parameters.center is not None:
        return named_center(pattern, uses, parameters.center).along
    found = center_of(pattern, uses)
    if found is None:
        return 0.0
    if parameters.begins is not None:
        raise StepRefused("collar-center-unsaid", point=spoken(run_of(pattern, uses)[found.index].start))
    return found.along


def center_notes(
    piece: str, pattern: Pattern, parameters: CollarParameters, beginning: Beginning
) -> Iterator[Finding]:
    """An extension in millimeters that does not end at the center of the garment's button stand.

    ``pattern`` is the one before the step.
    """
    if parameters.extension is None:
        return
    uses = neck_uses(pattern, parameters.neck)
    found = center_of(pattern, uses)
    if found is None or abs(found.along - beginning.extension) <= SAME_PLACE:
        return
    yield worded(
        "collar",
        "collar-center-off",
        Severity.LOOK,
        Measured(beginning.extension, found.along),
        piece=piece,
        extension=beginning.extension,
        center=found.along,
    )
