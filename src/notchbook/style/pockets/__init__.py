"""Pockets: where they lie on a piece, their shapes, bags, facings, welts and flaps."""
