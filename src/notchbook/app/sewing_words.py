"""The sewing order as it is read: each line with how much is eased in, in the reader's unit."""

import re
from typing import Final

from notchbook.finish.sewing import SewingLine, sewing_order
from notchbook.pattern import Pattern
from notchbook.units import LengthStyle

_FIGURE: Final = re.compile(r"(?:(\d+(?:\.\d+)?) to )?(\d+(?:\.\d+)?) mm\b")
"""A length, or from which to which, as the lines have them."""


def sewing_lines(pattern: Pattern, style: LengthStyle) -> tuple[str, ...]:
    """The lines in order, without their numbers."""
    return tuple(line_text(line, style) for line in sewing_order(pattern).lines)


def line_text(line: SewingLine, style: LengthStyle) -> str:
    """``Sew the front to the back: shoulder, 0.6 cm eased in.``; gathers: ``drawn in by 6.9 cm``."""
    said = style.text(line.amount)
    amount = f"drawn in by {said}" if line.how == "gathered" else f"{said} {line.how}"
    text = _FIGURE.sub(lambda found: _in_unit(found, style), line.text.removesuffix("."))
    return f"{text}{f', {amount}' if line.how else ''}."


def _in_unit(found: re.Match[str], style: LengthStyle) -> str:
    """A figure of the line in the reader's unit."""
    least, most = found.groups()
    said = style.text(float(most))
    return said if least is None else f"{style.text(float(least)).removesuffix(f' {style.unit}')} to {said}"
