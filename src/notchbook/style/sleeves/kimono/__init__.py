"""A sleeve cut on to the bodice: its lines at front and back, how they are sewn, and a gusset."""
