"""Leather and coated cloth: hides, allowances, and what else is made otherwise than of cloth."""
