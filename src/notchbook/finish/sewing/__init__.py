"""In which order a pattern is sewn: worked out from its seams and intakes, with what its steps add."""

from notchbook.finish.sewing.order import SewingLine, SewingOrder, sewing_order

__all__ = ["SewingLine", "SewingOrder", "sewing_order"]
