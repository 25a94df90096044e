"""What every family of proposals is made of."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from random_recipes.look import Look

Parameters = dict[str, Any]

Proposer = Callable[[Look], Parameters | None]
"""Parameters that a hand could write for one step on this pattern; None where nothing there fits it."""
