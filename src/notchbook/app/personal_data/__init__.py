"""Personal data of a client: keep her under a code, hand her data out, erase her.

None of this knows a law: it does what a studio may be asked for, and says what it cannot reach.
"""

from notchbook.book import Copy

__all__ = ["Copy"]
