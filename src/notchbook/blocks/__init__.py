"""Drafts: one block a file, found by its name. A block is a step that starts from measures.

A block's file ties measures and parameters to its numbers (which know no names) and to its pieces (which
name what the numbers drew):

- ``skirt``: numbers in ``skirts.halves``, ``_closed_waist``, ``skirts.hem``, ``skirts.room_above_hip`` and
  ``skirts.yoke``, pieces in ``skirts.straight_pieces``;
- ``circle_skirt`` in ``circle``, ``gored_skirt`` in ``gores``; what all skirts share in ``skirts``;
- ``bodice``: its measures judged in ``upper_measures``, numbers in ``upper``, pieces in ``bodice_pieces``;
- ``sleeve``: numbers in ``set_in``, pieces in ``sleeve_pieces``;
- ``stretch_torso``, ``bodysuit`` and ``leggings``: what a cloth gives in ``stretch_fabric``, numbers in
  ``stretch``, pieces in ``stretch_pieces``;
- ``torso`` and ``dress``: the bodice's, and what goes on below the waist in ``joined``;
- ``trousers``: its measures judged in ``lower_measures``, numbers in ``legs``, pieces in ``trouser_pieces``.
"""
