"""Fullness: how slashes open, how opened edges are trued, how folds lie, what is taken up again.

Numbers that know no names: ``opening``, ``truing`` with ``stretch`` and ``rising_curve``, ``fold_shape``,
``figures``. On a piece: ``slash_lines`` (where slashes run), ``spread``, ``folds`` and ``fold_edge``,
``take_up``, ``notch_places``, ``gore_names``, ``notes``.
"""
