"""The words that stand on a piece beside its label: names of lines and edges, and what notches are for.

A place of the trade is written where it is seen: the center, a fold, the end of a zip, the underlap
of a band, and right and left on a piece whose halves differ.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from notchbook.finish import CutEdge, CutNotch, CutPiece
from notchbook.geometry import Path
from notchbook.pattern import spoken
from notchbook.units import TOLERANCES

_ZIP_STOP = "zip stop"

NOTCH_WORDS = {
    _ZIP_STOP: "zip ends here",
    "top of vent": "vent begins here",
    "underlap": "underlap begins here",
    "side seam": "side seam",
    "shoulder seam": "shoulder seam",
    "center": "center",
    "center front": "center front",
    "center back": "center back",
}
"""What is written at a notch, by its purpose; notches whose place is plain from the paper get no words."""

_PART = re.compile(r" \(.*\)$")
"""The part of a line, as :func:`notchbook.pattern.spoken` says it: ``waist line (side)``."""

_COUNT = re.compile(r" \d+$")
"""The number of one of several alike, such as the fold lines of a binding."""

_CENTERS = {"center_back": "center back", "center_front": "center front"}

_CAPS = {"cap_front": "front", "cap_back": "back"}
"""The halves of a cap, which look much alike: which is which is written along them."""


@dataclass(frozen=True, slots=True)
class NamedEdge:
    """Words along an edge, inside the piece."""

    words: str
    path: Path


def line_words(name: str) -> str:
    """``skirt.front/hip_line@right`` is written as ``hip line``; a part of the center as the center."""
    plain = name.split("@", 1)[0]
    center = next((said for word, said in _CENTERS.items() if word in plain.split("/")), "")
    return center or _COUNT.sub("", spoken(plain).split(", ", 1)[-1])


def named_lines(piece: CutPiece) -> dict[str, str]:
    """What is written along the inner lines of a piece, by the name of each line.

    A level that darts cut into parts (``waist_line/center``, ``waist_line/side``) is named once, on its
    longest part.
    """
    longest: dict[str, tuple[float, str]] = {}
    for line in piece.lines:
        if line.kind in ("buttonhole", "cut_line"):  # small, and seen for what they are
            continue
        words = _PART.sub("", line_words(line.name))
        longest[words] = max(longest.get(words, (0.0, "")), (line.path.length, line.name))
    return {name: words for words, (_, name) in longest.items()}


def named_edges(piece: CutPiece) -> Iterator[NamedEdge]:
    """The center seams by name, the halves of a cap; on a piece with two different halves, which side is the
    wearer's right."""
    for word, said in (_CENTERS | _CAPS).items():
        found = [edge for edge in piece.edges if edge.kind == "seam" and word in _says(edge)]
        if found:
            yield NamedEdge(said, max(found, key=lambda edge: edge.sew.length).sew)
    if piece.supplied != "as drawn" or piece.cut_as != "single":
        return
    for side in ("right", "left"):
        found = [edge for edge in piece.edges if edge.name.endswith(f"@{side}") and edge.kind == "seam"]
        others = [edge for edge in piece.edges if edge not in found and "@" in edge.name]
        if found and any(not edge.name.endswith(f"@{side}") for edge in others):
            longest = max(found, key=lambda edge: edge.sew.length)
            yield NamedEdge(f"wearer’s {side}", longest.sew)


def notch_words(piece: CutPiece, notch: CutNotch) -> str:
    """What is written at a notch; empty when nothing is. A center that has its line is named there; a zip
    that opens its edge from end to end goes on beyond it, or ends where the edge is seen to end."""
    words = NOTCH_WORDS.get(notch.purpose, "")
    if notch.purpose == "center" and (piece.fold is not None or _has_center_line(piece)):
        return ""
    if notch.purpose == _ZIP_STOP and _is_at_end(piece, notch):
        return ""
    side = notch.name.rsplit("/", 1)[-1].split("_", 1)[0]
    return f"{side} {words}" if words and side in ("right", "left") else words


def _is_at_end(piece: CutPiece, notch: CutNotch) -> bool:
    """Whether the notch stands at an end of its edge."""
    paths = (edge.sew for edge in piece.edges if edge.name == notch.edge)
    ends = (end for path in paths for end in (path.start, path.end))
    return any(notch.sew_position.distance_to(end) < TOLERANCES.seam_walk for end in ends)


def _has_center_line(piece: CutPiece) -> bool:
    return any(line.name.split("@", 1)[0].rsplit("/", 1)[-1].startswith("center") for line in piece.lines)


def _says(edge: CutEdge) -> tuple[str, ...]:
    """The words of an edge's name, and its class of allowance: a facing's center has only that."""
    return (*edge.name.split("@", 1)[0].split("/"), edge.allowance_class)
