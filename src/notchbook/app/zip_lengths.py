"""Which zip is bought for an opening: of the lengths that are sold the one that serves, and what is done
to it."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final, Literal

from notchbook.finish.stock import Stock
from notchbook.recipe.style_figure import StyleFigure
from notchbook.units import LengthStyle

ZipKind = Literal["closed", "invisible", "parting"]
"""Closed at its lower end, invisible and closed, or one that parts."""

INVISIBLE_BEYOND: Final = StyleFigure(
    20.0,
    "what an invisible zip is longer than its opening: the slider keeps the foot from its end",
    "invisible zip at least 2 to 3 cm longer than the opening",
    "common practice",
)

HOOK_CLOSES: Final = StyleFigure(
    15.0,
    "how much shorter than its opening a zip that parts may be: a hook closes it above",
    "hook and eye above a zip, over 1 to 1.5 cm",
    "common practice",
)

AS_LONG: Final = StyleFigure(
    5.0,
    "how much longer than its opening a zip may be and nothing is done: its top reaches into the allowance",
    "zip begins 3 to 5 mm below the seam at its top",
    "common practice",
)

LEFT_BELOW_STOP: Final = StyleFigure(
    20.0, "what is left of the tape below a new stop", "cut off 2 cm or 3/4 in below it", "common practice"
)

_LEFT_IN_INCHES: Final = 0.75 * 25.4


@dataclass(frozen=True, slots=True)
class BoughtZip:
    """The length that is asked for, mm, and what is to be done where it is not that of the opening."""

    length: float
    advice: str = ""


def bought_zip(kind: ZipKind, opened: float, zips: Mapping[str, Stock], style: LengthStyle) -> BoughtZip:
    """The zip for an opening of this length, mm. Where a table does not say what is sold, one as long."""
    stock = zips.get(kind)
    if stock is None:
        return BoughtZip(opened)
    opens = f"opens {style.text(opened)}"
    if kind == "parting":
        shorter = stock.shorter(opened, style.unit)
        if shorter is not None and style.step < opened - shorter <= HOOK_CLOSES.value:
            return BoughtZip(shorter, f"{opens}: close what is left above it with a hook and eye")
    wanted = opened + (INVISIBLE_BEYOND.value if kind == "invisible" else 0.0)
    found = stock.longer(wanted, style.unit)
    if found is None:
        return BoughtZip(
            opened, "longer than those sold: have it made, or take zip by the length and a slider"
        )
    if kind != "invisible" and found - opened <= AS_LONG.value:
        return BoughtZip(found)
    return BoughtZip(found, f"{opens}: {_done(kind, style)}")


def _done(kind: ZipKind, style: LengthStyle) -> str:
    """What is done to a zip that is longer than its opening."""
    if kind == "invisible":
        return "its end hangs free below the notch"
    if kind == "parting":
        return "shorten it at the top, with new stops"
    left = style.text(_LEFT_IN_INCHES if style.unit == "in" else LEFT_BELOW_STOP.value)
    return f"sew a new stop over the teeth there and cut the rest off {left} below"
