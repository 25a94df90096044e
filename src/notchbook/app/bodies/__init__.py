"""Bodies, dress forms and their sets of measures: entered, edited, estimated, repaired."""
