"""The gored skirt: ``given``, ``shapes``, ``upper_seam`` and ``draft`` its numbers,
``arrangement`` which gores there are and how they are called, ``pieces`` and ``notes`` what becomes of them.
"""
