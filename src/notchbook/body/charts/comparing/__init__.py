"""Holding measures against others: the nearest size of a chart, a form against a client."""
