"""What stands on the papers beside the pieces themselves."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Final

from notchbook.body.quantity_words import ESTIMATE_SIGN
from notchbook.units import LengthStyle

_MOST_NAMED: Final = 2
"""Estimates that are named on a label; more are counted."""


@dataclass(frozen=True, slots=True)
class PaperEstimate:
    """A measure that nobody took: its name (``hip depth``) and all that is said of it
    (``hip depth 20.3 ± 1.8 cm``)."""

    name: str
    text: str


@dataclass(frozen=True, slots=True)
class PaperEase:
    """A line of the ease table as it is read: body, ease, pattern, finished, the usual range (may be empty).

    ``name`` is the girth or length (``bodice, bust girth``), ``remark`` what it was drafted as and which
    steps changed it since, empty where it is as drafted."""

    name: str
    body: str
    ease: str
    pattern: str
    finished: str
    usual: str
    remark: str = ""


@dataclass(frozen=True, slots=True)
class PaperTrim:
    """What is cut or laid beside the pieces: what and how much, and what else is to be said of it."""

    cut: str
    remark: str = ""

    @property
    def words(self) -> str:
        """All of it in one line."""
        return ", ".join(part for part in (self.cut, self.remark) if part)


@dataclass(frozen=True, slots=True)
class DraftedFrom:
    """What a pattern was drafted from: measures (name and value), the settings of each block in words, and
    the ease table."""

    measures: tuple[tuple[str, str], ...] = ()
    settings: tuple[str, ...] = ()
    eases: tuple[PaperEase, ...] = ()


@dataclass(frozen=True, slots=True)
class PaperInfo:
    """The head of every paper of one style. Everything is text as it is to be read.

    ``size`` is a size of the chart or the name of the body or form. ``date`` is written as given, so that
    the same style gives the same bytes. ``materials`` names the cloth behind each material of the pattern
    (``self``: ``wool crepe, 150 cm``). ``lengths`` says how lengths are written. ``estimates`` are the
    measures that the pattern rests on and that nobody took, ``drafted_from`` what the card says of the draft,
    ``stitches`` with what it is sewn, ``sewing`` the lines of the sewing order.
    """

    style_number: str
    title: str
    revision: str = ""
    date: str = ""
    size: str = ""
    maker: str = ""
    materials: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    trims: tuple[PaperTrim, ...] = ()
    notes: tuple[str, ...] = ()
    lengths: LengthStyle = field(default_factory=LengthStyle)
    estimates: tuple[PaperEstimate, ...] = ()
    drafted_from: DraftedFrom = field(default_factory=DraftedFrom)
    stitches: tuple[str, ...] = ()
    sewing: tuple[str, ...] = ()

    @property
    def heading(self) -> str:
        """Style number and title."""
        return f"{self.style_number} {self.title}".strip()

    @property
    def size_words(self) -> str:
        """``size 38``, ``size XL``; a body or form by its name alone."""
        is_size = self.size[:1].isdigit() or (len(self.size) <= 4 and self.size.isupper())
        return f"size {self.size}" if is_size else self.size

    @property
    def issue(self) -> str:
        """That the pattern rests on estimates; size, revision and date, as far as they are given."""
        parts = [self.estimate_sign, self.size_words, self.revision and f"rev. {self.revision}", self.date]
        return " · ".join(part for part in parts if part)

    @property
    def estimate_sign(self) -> str:
        """What is estimated, for paper that has no room for the list: ``hip depth est.``, or how many
        measures are (``3 measures est.``); empty when nothing is."""
        if not self.estimates:
            return ""
        names = [one.name for one in self.estimates]
        said = " and ".join(names) if len(names) <= _MOST_NAMED else f"{len(names)} measures"
        return f"{said} {ESTIMATE_SIGN}"

    @property
    def estimate_note(self) -> str:
        """The measures that nobody took, in one line; empty when there are none."""
        if not self.estimates:
            return ""
        return f"{ESTIMATE_SIGN} = estimated, not measured: {'; '.join(one.text for one in self.estimates)}."

    @property
    def all_notes(self) -> tuple[str, ...]:
        """The notes of the papers, what rests on estimates first."""
        return (self.estimate_note, *self.notes) if self.estimates else self.notes

    def material(self, key: str) -> str:
        """The material's word with the cloth behind it: ``self, wool crepe``."""
        cloth = self.materials.get(key, "")
        return f"{key}, {cloth}" if cloth and cloth != key else key
