"""Where buttons lie down a center: counted once, spaced evenly, one of them at a level of the body."""

from dataclasses import dataclass

from notchbook.errors import StepRefused
from notchbook.style.closures.figures import SPACING

_SPARE = 1.12
"""By how much the spacing of the base may grow in another size before its last button no longer fits: neck to
bust level differs by about a tenth between the sizes of a chart. Own judgment."""


@dataclass(frozen=True, slots=True)
class ButtonRoom:
    """The stretch of a center that takes buttons, mm down from its top.

    ``first``: where the first lies; ``last``: where the last may lie at most; ``level``: where one of them is
    wanted, such as at the bust, or None.
    """

    first: float
    last: float
    level: float | None = None


@dataclass(frozen=True, slots=True)
class ButtonPlaces:
    """Where the buttons lie, mm down from the top, how far apart they are, and by how much the one that was
    wanted at the level misses it."""

    places: tuple[float, ...]
    spacing: float
    off_level: float


def usual_number(room: ButtonRoom, spacing: float) -> int:
    """How many buttons lie about so far apart from first to last."""
    return max(2, round((room.last - room.first) / spacing) + 1)


def number_apart(room: ButtonRoom, spacing: float) -> int:
    """How many buttons there are when they lie so far apart in every size, with room to spare in the base."""
    return 1 + max(0, int((room.last - room.first) / (_SPARE * spacing) + 1e-9))


def usual_above_level(room: ButtonRoom, spacing: float) -> int | None:
    """How many buttons lie above the one at the level when they are about so far apart.

    None without a level, and where the first lies so near above it that the others would be crowded.
    """
    if room.level is None or room.level - room.first < SPACING.least:
        return None
    return max(1, round((room.level - room.first) / spacing))


def number_from_level(room: ButtonRoom, above: int) -> int:
    """How many buttons there are when so many lie above the level, and the others as far apart below it.

    There is room to spare below the last, so that sizes whose level lies lower keep all of them.
    """
    assert room.level is not None
    spacing = _SPARE * (room.level - room.first) / above
    return 1 + max(above, int((room.last - room.first) / spacing + 1e-9))


def button_places(
    room: ButtonRoom, number: int, spacing: float | None, above_level: int | None
) -> ButtonPlaces:
    """The places of so many buttons.

    With ``spacing`` (mm) they lie so far apart in every size, from the first down. Else they are shared out
    evenly; with ``above_level`` so that the one below as many lies at the level, where there is room.
    StepRefused ``buttons-past-end`` where a given spacing leads past the last place.
    """
    gaps = number - 1
    if room.last < room.first:
        raise StepRefused("buttons-no-room", first=room.first, last=room.last)
    if gaps == 0:
        return ButtonPlaces((room.first,), 0.0, _off(room, (room.first,)))
    most = (room.last - room.first) / gaps
    step = most
    if spacing is not None:
        if spacing > most + 1e-6:
            raise StepRefused("buttons-past-end", number=number, spacing=spacing, most=most)
        step = spacing
    elif room.level is not None and above_level:
        step = min(most, (room.level - room.first) / above_level)
    if step <= 0.0:
        raise StepRefused("buttons-no-room", first=room.first, last=room.last)
    places = tuple(room.first + step * index for index in range(number))
    return ButtonPlaces(places, step, _off(room, places))


def _off(room: ButtonRoom, places: tuple[float, ...]) -> float:
    if room.level is None:
        return 0.0
    return min(abs(place - room.level) for place in places)
