"""Which seam is meant, in words of the workroom: ``neck``, ``yoke seam``, ``gore seam``.

The name of a seam is made to be unlike all others; what is sewn is said in the line, so that the word need
only tell which of its edges.
"""

import re
from collections.abc import Mapping, Sequence
from typing import Final

from notchbook.finish.sewing.joints import steps
from notchbook.finish.sewing.task import key_of
from notchbook.pattern import EdgeUse, Pattern, Seam, spoken
from notchbook.pattern.names import instance_of, last_word
from notchbook.pattern.operation import listed
from notchbook.pattern.seam import TURNED_SEAM

_DART: Final = "dart"

_CAP: Final = "cap"
"""How the edges of a sleeve begin that go into an armhole."""

_WORDS: Final[Mapping[str, str]] = {
    "outer": "outer edge",
    "bound": "edge",
    "band_end": "ends",
    "binding_end": "ends",
    "casing_end": "ends",
    "cuff_end": "ends",
    "stand_end": "ends",
    "fall": "lower edge of the fall",
    "upper_fall": "lower edge of the fall",
    "inner_stand_neck": "neck",
    "upper_neck": "neck",
    "facing_gorge": "gorge",
    "band_center": "center of the band",
    "waist_right": "waist",
    "waist_left": "waist",
}
"""Names of seams that say more than the edge, or less."""

_ENDINGS: Final[tuple[tuple[re.Pattern[str], str], ...]] = tuple(
    (re.compile(ending), word)
    for ending, word in (
        (r"gore_seam", "gore seam"),
        (r"(?:^|_)(center_back|center_front)$", r"\1"),
        (r"(?:^|/)(front|back)_center$", r"center_\1"),
        (r"tier_\d+_center$", "center of the tier"),
        (r"side_seam_tier_\d+$", "side seam"),
        (r"tier_\d+$", "tier seam"),
        (r"_center$", "center"),
        (r"opening$", "pocket opening"),
        (r"flap_edge$", "edge of the flap"),
    )
)
"""Ends of names that say which piece it is too, or count them."""

_BY_CLASS: Final[Mapping[str, str]] = {
    "pocket_opening": "pocket opening",
    "pocket_bag": "round the bag",
    "lining": "edge of the facing",
    "fly": "fly edge",
    "facing_edge": "edge of the opening",
    "center_back": "center back",
    "center_front": "center front",
    "waistband_center": "seam of the band",
}
"""Classes of allowance that tell which edge it is, whatever the seam is called."""

_WHICH: Final = frozenset({"front", "back", "right", "left", "upper", "lower", "inner", "outer"})
"""Words by which pieces of one kind are told apart."""

_PLACES: Final = ("waist", "neck", "armhole")
"""Edges of a facing: which half of them it is, its title tells."""


def seam_word(pattern: Pattern, seam: Seam) -> str:
    """What the seam is called in a line that says what it joins."""
    name = key_of(seam.name)
    word = last_word(name)
    if word == "stand_end" and "upper" in _edge_words(pattern, seam):
        return "ends and upper edge"
    return _WORDS.get(word) or _by_ending(name) or _by_class(pattern, seam, word) or said(name)


def _by_ending(name: str) -> str | None:
    """The word for names that end, or that are, as ``_ENDINGS`` has them."""
    found = (ending.sub(word, match.group()) for ending, word in _ENDINGS if (match := ending.search(name)))
    return next(found, "").replace("_", " ").strip() or None


def _by_class(pattern: Pattern, seam: Seam, word: str) -> str | None:
    """The word for seams whose class tells which they are, or which half of a faced edge."""
    if seam.allowance_class == "style_line" or word.endswith("style_line"):
        return _line_word(pattern, seam)
    if _is_raglan(pattern, seam):
        return "raglan seam"
    halves = (place for place in _PLACES if word.endswith(f"_{place}"))
    place = next(halves, None)
    if place == "armhole" and seam.seam_class != TURNED_SEAM:
        return None
    return place or _BY_CLASS.get(seam.allowance_class)


def is_cap(edge: str) -> bool:
    """Whether the edge is of the cap of a sleeve."""
    return any(word.startswith(_CAP) for word in edge.split("/")[1:2])


def titled(titles: Sequence[str]) -> str:
    """The titles in a row, what several end with said once: ``back and front neck facing``."""
    alike: dict[tuple[str, str], list[str]] = {}
    for title in titles:
        before, which, rest = _parted(title)
        alike.setdefault((before, rest), []).append(which)
    said_once = [
        " ".join(word for word in (before, listed(tuple(which)), rest) if word)
        for (before, rest), which in alike.items()
    ]
    is_plain = len(said_once) == len(titles)
    return listed(tuple(said_once)) if is_plain else " and the ".join(said_once)


def _parted(title: str) -> tuple[str, str, str]:
    """What a title says before and after the word that tells it from others of its kind; all of it before
    where nothing comes after."""
    words = title.split()
    place = next((index for index, word in enumerate(words[:-1]) if word in _WHICH), None)
    if place is None:
        return title, "", ""
    return " ".join(words[:place]), words[place], " ".join(words[place + 1 :])


def said(name: str) -> str:
    """As it is said: ``waist dart``, and of two the ``center waist dart``."""
    words = spoken(last_word(key_of(name)))
    kind, found, which = words.partition(f" {_DART} ")
    return f"{which} {kind} {_DART}" if found and which.isalpha() else words


def titles_of(pattern: Pattern, uses: Sequence[EdgeUse]) -> tuple[str, ...]:
    """The titles of the pieces that a run goes over, each once."""
    run = steps(pattern, tuple(uses))
    return tuple(dict.fromkeys(pattern.piece_of(step.edge.name).title.lower() for step in run))


def _line_word(pattern: Pattern, seam: Seam) -> str:
    """A seam along a style line: that of a yoke, a princess seam, one between panels."""
    titles = titles_of(pattern, (*seam.first, *seam.second))
    if any("yoke" in title for title in titles):
        return "yoke seam"
    if "princess" in instance_of(seam.name):
        return "princess seam"
    upright = ("center", "middle", "side")
    is_upright = bool(titles) and all(any(word in title for word in upright) for title in titles)
    return "panel seam" if is_upright else "style line"


def _is_raglan(pattern: Pattern, seam: Seam) -> bool:
    """Whether the seam goes on beyond the cap of its sleeve."""
    caps = [is_cap(step.edge.name) for step in steps(pattern, seam.second)]
    return seam.allowance_class == "armhole" and any(caps) and not all(caps)


def _edge_words(pattern: Pattern, seam: Seam) -> frozenset[str]:
    run = steps(pattern, (*seam.first,))
    return frozenset(last_word(step.edge.name) for step in run)
