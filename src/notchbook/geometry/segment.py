"""Segments: what paths are made of."""

from notchbook.geometry.cubic import Cubic
from notchbook.geometry.line import Line

Segment = Line | Cubic
"""A straight or a cubic segment."""
