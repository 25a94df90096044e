"""The stretch of a cloth as the hand tests it: ``10 cm to 14 cm back to 10.4 cm``, or ``40 %``.

A length marked on the folded cloth is pulled along a ruler to where it is still comfortable, then let go.
Stretch is what it gained over its rest, recovery how much of that it gave back: 10 to 14 is 40 percent, and
back to 10.4 a recovery of 90 percent. Source: the bench test of knit cloth; growth and recovery are reckoned
as ASTM D3107 reckons them, (B - A) / A and (B - C) / (B - A).
"""

import re
from dataclasses import dataclass
from typing import Final

from notchbook.errors import InputError
from notchbook.units.length import parse_length, written_unit
from notchbook.units.number import NUMBER_PATTERN, check_text, exact_number, not_a_number
from notchbook.units.quoted import quoted
from notchbook.units.signs import plain_signs
from notchbook.units.unit import Unit

MOST_STRETCH: Final = 4.0
"""No cloth is cut for a garment that stretches to more than five times its length (common practice)."""

_TEST: Final = re.compile(r"(.+?) to (.+?)(?: back to (.+))?")
_PERCENT: Final = re.compile(rf"({NUMBER_PATTERN}) ?(?:%|percent)")


@dataclass(frozen=True, slots=True)
class StretchTest:
    """One test: ``stretch`` as a share of the rest (0.4: 10 cm to 14 cm), ``recovery`` as a share of the
    stretch (None: not tested), ``text`` how it was written."""

    stretch: float
    recovery: float | None
    text: str


def parse_stretch(text: str) -> StretchTest:
    """The test that the text means: two lengths, and where it was looked at a third; or a percentage.

    Understood: ``10 cm to 14 cm``, ``10 to 14 cm``, ``4 in to 5 in``, ``10 cm to 14 cm back to 10.4 cm``,
    ``40 %``. Refused with InputError: ``number-*`` and ``length-*`` for the lengths, and
    ``stretch-not-understood``, ``stretch-shorter``, ``stretch-recovery-outside``, ``stretch-too-much``.
    """
    check_text(text)
    plain = plain_signs(text)
    stretch = _percent(plain, text)
    recovery = None
    if stretch is None:
        rest, stretched, back = _lengths(plain, text)
        stretch = (stretched - rest) / rest
        recovery = None if back is None else _recovery(rest, stretched, back, text)
    if stretch > MOST_STRETCH:
        raise InputError("stretch-too-much", text=quoted(text), stretch=100.0 * stretch, where="")
    return StretchTest(stretch, recovery, plain)


def parse_recovery(text: str) -> float:
    """The recovery, 0 to 1, that a percentage or a whole test with its third length means.

    Refused with InputError as :func:`parse_stretch`, and ``recovery-not-understood``.
    """
    check_text(text)
    share = _percent(plain_signs(text), text)
    if share is None:
        share = parse_stretch(text).recovery
    if share is None or share > 1.0:
        raise InputError("recovery-not-understood", text=quoted(text), where="")
    return share


def stretch_needed(length: float, over: float) -> float:
    """The share by which a length must stretch to pass over a girth, both mm; 0 where it is long enough."""
    return max(over / length - 1.0, 0.0)


def _percent(plain: str, text: str) -> float | None:
    match = _PERCENT.fullmatch(plain)
    return None if match is None else float(exact_number(match.group(1), text)) / 100.0


def _lengths(plain: str, text: str) -> tuple[float, float, float | None]:
    """At rest, stretched and let go, mm; a unit that is written once holds for all."""
    match = _TEST.fullmatch(plain)
    if match is None:
        raise _not_understood(plain, text)
    parts = [part for part in match.groups() if part is not None]
    written: list[Unit | None] = [written_unit(part) for part in parts]
    default: Unit = next((unit for unit in reversed(written) if unit is not None), "mm")
    rest, stretched, *back = (parse_length(part, default) for part in parts)
    if rest <= 0.0 or stretched < rest:
        raise InputError("stretch-shorter", text=quoted(text), where="")
    return rest, stretched, back[0] if back else None


def _not_understood(plain: str, text: str) -> InputError:
    """The refusal: what is wrong with the number, where only a number was written wrongly."""
    refusal = not_a_number(plain, text)
    if refusal.code != "number-text":
        return refusal
    return InputError("stretch-not-understood", text=quoted(text), where="")


def _recovery(rest: float, stretched: float, back: float, text: str) -> float:
    if not rest <= back <= stretched or stretched == rest:
        raise InputError("stretch-recovery-outside", text=quoted(text), where="")
    return (stretched - back) / (stretched - rest)
