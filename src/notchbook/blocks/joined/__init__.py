"""Torso and dress: what goes on from the bodice below the waist.

``lengths`` where the hem lies, ``hem_promise`` its closure; ``skirt_to_waist`` the skirt drafted to the
bodice's waist in numbers, ``skirt_pieces`` its pieces and the seam at the
waist; ``parameters``, ``needs`` and ``notes`` of the blocks.
"""
