"""Drafts: one block a file, found by its name. A block is a step that starts from measures.

A block's file ties measures and parameters to its numbers (which know no names) and to its pieces (which
name what the numbers drew):

- ``skirt``: numbers in ``_skirt_halves`` and ``_closed_waist``, pieces in ``_skirt_pieces``;
- ``bodice``: its measures judged in ``upper_measures``, numbers in ``upper``, pieces in ``bodice_pieces``;
- ``sleeve``: numbers in ``set_in``, pieces in ``sleeve_pieces``;
- ``torso`` and ``dress``: the bodice's, and what goes on below the waist in ``joined``.
"""
