"""The sewing order as it is read: each line with how much is eased in, in the reader's unit."""

from notchbook.finish.sewing import SewingLine, sewing_order
from notchbook.pattern import Pattern
from notchbook.units import LengthStyle


def sewing_lines(pattern: Pattern, style: LengthStyle) -> tuple[str, ...]:
    """The lines in order, without their numbers."""
    return tuple(line_text(line, style) for line in sewing_order(pattern).lines)


def line_text(line: SewingLine, style: LengthStyle) -> str:
    """``Sew the front to the back: shoulder, 0.6 cm eased in.``"""
    amount = f", {style.text(line.amount)} {line.how}" if line.how else ""
    return f"{line.text.removesuffix('.')}{amount}."
