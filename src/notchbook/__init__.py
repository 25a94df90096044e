"""Notchbook: the working book of a one-person pattern studio."""

__version__ = "0.1.0"
