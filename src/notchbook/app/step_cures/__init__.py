"""Steps that cure what a check found: offered with what else they do, taken only on request."""

from notchbook.app.step_cures.offering import NUMBER_SIGN, step_cures

__all__ = ["NUMBER_SIGN", "step_cures"]
