"""The circle skirt: ``ring`` its numbers, ``sectors`` its pieces, ``notes`` what it has to say."""
