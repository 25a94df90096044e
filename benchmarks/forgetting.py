"""What one draft keeps for the next, thrown away: so each job is timed as if it were the first."""

from __future__ import annotations

from notchbook.blocks.set_in.crown import crowned_cap
from notchbook.blocks.set_in.lower_armhole import lower_armhole
from notchbook.blocks.upper.kept_bodice import kept_bodice


def forget() -> None:
    """Throw away bodices, caps and armholes that were kept."""
    for kept in (kept_bodice, crowned_cap, lower_armhole):
        kept.cache_clear()
