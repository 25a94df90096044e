"""What every skirt block has in common: eases, levels of the body, arcs, lengths."""
