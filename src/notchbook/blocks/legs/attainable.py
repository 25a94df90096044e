"""What the crotch seam of a body's trousers can be."""

from notchbook.blocks.legs.belly_room import room_for
from notchbook.blocks.legs.corner_depths import share_of_adult, usual_depths
from notchbook.blocks.legs.crotch_fit import CrotchFit
from notchbook.blocks.legs.drawing import Drawn
from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.proportions import proportion
from notchbook.errors import DraftRefused

_STANDS = (0.0, -2.0, -4.0)
"""Steps of the levers at which a crotch in shape is looked for in turn."""

_FINE = 0.02
"""Of a step: a third of a millimeter of crotch seam."""


def attainable_crotch(given: TrousersGiven) -> tuple[float, float]:
    """The least and the most sewn length of the whole crotch seam that the levers reach, mm."""
    return CrotchFit(given, room_for(given)).attainable()


def usual_crotch(given: TrousersGiven) -> float:
    """The sewn length of the whole crotch seam with no lever pulled, mm."""
    return CrotchFit(given, room_for(given)).at(0.0).crotch


def well_shaped_crotch(given: TrousersGiven) -> float:
    """The wanted length of the whole crotch seam, or the nearest shorter one at which both curves keep their
    shape: as deep in their corners as is usual, no hook and no ramp. Where none keeps it, that with no lever
    pulled; mm.

    DraftRefused as the parts of the draft refuse.
    """
    fit = CrotchFit(given, room_for(given))
    drawn = fit.roughly()
    high = drawn.pulled.steps
    if high <= 0.0 or has_shape(drawn):
        return given.crotch
    low = next((stand for stand in _STANDS if has_shape(fit.at(stand))), None)
    if low is None:
        return fit.at(_STANDS[0]).crotch
    while high - low > _FINE:
        middle = (low + high) / 2.0
        try:
            is_good = has_shape(fit.at(middle))
        except DraftRefused:
            is_good = False
        low, high = (middle, high) if is_good else (low, middle)
    return fit.at(low).crotch


def has_shape(drawn: Drawn) -> bool:
    """Whether both crotch curves are as deep in their corners as is usual on such a body, no hook and no
    ramp."""
    for name, panel in (("front", drawn.front), ("back", drawn.back)):
        least, most = usual_depths(name, drawn.hip)
        radius = proportion(f"curve.radius_{name}") * share_of_adult(drawn.hip)
        if not least <= panel.curve.depth <= most or panel.curve.least_radius < radius:
            return False
        if panel.curve.end_hollow < proportion(f"curve.end_{name}"):
            return False
    return True
