"""The bodice as pieces: dart places, outlines with their names, levels, notches, seams, closures, notes.

The numbers come from ``notchbook.blocks.upper``; here they get names. What is where:

- ``panel``: one panel as runs of edges with darts open in them, before names
- ``dart_places``: where the bust dart opens; ``dart_point``: its point and the edge across it
- ``cups``, ``eases``, ``substitutes``: tables with sources; ``bodice_measures``: what the body gives the
  numbers
- ``front_panel``, ``back_panel``: the panels with their levels; ``outline``: their names
- ``cut_data``: seams, notches, allowances; ``promises``: the closures
- ``draft_notes``: what the draft has to say of itself
"""
