"""Parts that hang together: each cut moves all that lies beyond it, seen from the still part."""

from collections.abc import Mapping

from notchbook.geometry import Transform
from notchbook.pattern.slashing.dividing import Division


def chained(division: Division, still: str, openings: Mapping[str, Transform]) -> dict[int, Transform]:
    """The motion of every part, the one that holds the edge ``still`` lying still.

    ``openings`` tells for each cut, by its label, how what lies beyond it moves against what lies before it,
    in the frame of the piece as it was. For slashes that go through: every part is reached in one way.
    """
    first = division.part_of(still)
    motions = {first: Transform.identity()}
    waiting = [first]
    while waiting:
        part = waiting.pop(0)
        for label, opening in openings.items():
            sides = division.beside(label)
            if part not in sides:
                continue
            beyond = sides[1] if sides[0] == part else sides[0]
            if beyond not in motions:
                motions[beyond] = opening.then(motions[part])
                waiting.append(beyond)
    return motions
