"""Pieces traced off others: facings, linings, interfacings; made anew after the last shaping step."""
