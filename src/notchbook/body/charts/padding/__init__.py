"""Padding a dress form to the measures of a client."""
