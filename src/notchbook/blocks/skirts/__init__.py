"""What every skirt block has in common: eases, levels of the body, arcs, lengths; and the straight skirt in
numbers and pieces, which a dress shares."""
