"""Where the crease lies in each panel: how far from the side, so that the leg hangs and does not twist."""

from dataclasses import dataclass

from notchbook.blocks.legs.large_bodies import of_size
from notchbook.blocks.legs.proportions import proportion


@dataclass(frozen=True, slots=True)
class CreasePlaces:
    """How far each panel's hip lies toward the side from its crease, and by how much half the front's hem is
    narrower, and half the back's wider, than on a leg with a knee, mm."""

    front_side: float
    back_side: float
    narrowed: float = 0.0


def falling_places(front: float, back: float) -> CreasePlaces:
    """Of legs that fall straight; ``front`` and ``back`` are the widths of the panels from side to crotch
    point, mm."""
    return CreasePlaces(front / 2.0, back / 2.0)


def hanging_places(front: float, back: float, hip: float) -> CreasePlaces:
    """Of legs with a knee: the front's crease near its middle, the back's so that its crotch point lies no
    more uneven than is usual. ``hip`` is the girth with its ease, mm."""
    front_side = front / 2.0 - of_size("crease.to_side", hip)
    back_side = front_side + proportion("crease.back_wider")
    uneven = back - 2.0 * back_side - of_size("crease.uneven", hip) * back
    return CreasePlaces(front_side, back_side + max(0.0, uneven) / 2.0)


def short_places(front: float, back: float, hip: float, hem_half: float) -> CreasePlaces:
    """Of legs without a knee: what the two inseams run in down to the hem is shared out between front and
    back, and so are the sides, so that the leg does not twist; ``hem_half`` is a quarter of the hem, mm."""
    places = hanging_places(front, back, hip)
    narrower = proportion("crease.back_wider") / 2.0
    front_hem, back_hem = hem_half - narrower, hem_half + narrower
    inseams = _to_move("inseam", front - places.front_side - front_hem, back - places.back_side - back_hem)
    sides = _to_move("side", places.front_side - front_hem, places.back_side - back_hem)
    aside = (inseams - sides) / 2.0
    return CreasePlaces(places.front_side - aside, places.back_side + aside, (inseams + sides) / 2.0)


def _to_move(seam: str, front_runs: float, back_runs: float) -> float:
    """By how much more the front is to run in, and the back less, mm."""
    return proportion(f"hem.front_{seam}_run") * (front_runs + back_runs) - front_runs
