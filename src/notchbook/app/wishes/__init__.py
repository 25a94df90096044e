"""Make it measure: numbers sought for what she wishes."""
