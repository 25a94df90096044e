"""What a hand sees of a pattern before it chooses the next step: runs, centers, ends, mates."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from random import Random
from typing import Final

from notchbook.pattern import InnerDart, Intake, Pattern, Piece
from notchbook.pattern.names import split_side
from notchbook.pattern.resolve import Found, resolve
from notchbook.pattern.sewn import sewn_length

WHOLE_RUN: Final = 0.8
"""How often the whole of an edge that has become several is taken, instead of one part of it."""


@dataclass(frozen=True)
class Run:
    """An edge, or all that it has become: ``home`` and ``role`` are the words of its name."""

    name: str
    members: tuple[str, ...]
    start: str
    end: str
    home: str
    role: str
    kind: str
    pieces: tuple[str, ...]

    @property
    def ends(self) -> tuple[str, str]:
        """The points at its two ends."""
        return self.start, self.end

    @property
    def is_in_one_piece(self) -> bool:
        """Whether one piece carries all of it."""
        return len(self.pieces) == 1


class Look:
    """A pattern with a source of chance: every choice below is one that a hand could make there."""

    def __init__(self, pattern: Pattern, chance: Random) -> None:
        self.pattern = pattern
        self.chance = chance

    @cached_property
    def runs(self) -> tuple[Run, ...]:
        """Every edge and every group of edges, legs of darts left out."""
        edges = self.pattern.edges
        heads = dict.fromkeys(_heads(self.pattern))
        found = (self._run(name) for name in (*heads, *(e for e in edges if edges[e].kind != "leg")))
        return tuple(dict.fromkeys(run for run in found if run is not None))

    def _run(self, name: str) -> Run | None:
        answer = resolve(self.pattern, name, "run")
        if not isinstance(answer, Found):
            return None
        edges = [self.pattern.edges[member] for member in answer.members]
        base, _ = split_side(name)
        home, _, rest = base.partition("/")
        pieces = tuple(dict.fromkeys(self.pattern.carriers[edge.name] for edge in edges))
        ends = edges[0].start, edges[-1].end
        role = rest.split("/")[0]
        return Run(name, answer.members, *ends, home, role, edges[0].kind, pieces)

    def of_role(self, *roles: str) -> list[Run]:
        """Runs with one of these roles: as a rule whole ones, now and then a part."""
        fitting = [run for run in self.runs if run.role in roles]
        if self.chance.random() >= WHOLE_RUN:
            return fitting
        inner = {member for run in fitting for member in run.members if len(run.members) > 1}
        return [run for run in fitting if run.name not in inner]

    def one(self, *roles: str) -> Run | None:
        """A run with one of these roles, by chance."""
        fitting = self.of_role(*roles)
        return self.chance.choice(fitting) if fitting else None

    def beside(self, run: Run, *roles: str) -> Run | None:
        """A run with one of these roles that the same piece carries."""
        fitting = [other for other in self.of_role(*roles) if set(other.pieces) & set(run.pieces)]
        fitting = [other for other in fitting if other.name != run.name]
        return self.chance.choice(fitting) if fitting else None

    def both_panels(self, *roles: str) -> list[Run]:
        """The runs of one role on all pieces of one garment: front and back of it."""
        first = self.one(*roles)
        if first is None:
            return []
        slug = first.home.split(".")[0]
        return [one for one in self.of_role(first.role) if one.home.split(".")[0] == slug]

    def center_end(self, run: Run) -> str:
        """The end of a run at the center of its piece; either end where none is there."""
        for end in run.ends:
            if any(word in end for word in ("center", "neck_pit", "nape")):
                return end
        return self.chance.choice(run.ends)

    def upper_end(self, run: Run) -> str:
        """The end of a run that lies higher on the piece."""
        edges = self.pattern.edges
        first, last = edges[run.members[0]].path.start, edges[run.members[-1]].path.end
        return run.start if first.y > last.y else run.end

    def lower_end(self, run: Run) -> str:
        """The other end."""
        return run.end if self.upper_end(run) == run.start else run.start

    def length(self, run: Run) -> float:
        """As sewn, mm."""
        return sewn_length(self.pattern, run.name)

    def piece(self, run: Run) -> Piece:
        """The piece that carries the beginning of a run."""
        return self.pattern.pieces[run.pieces[0]]

    def dart(self, mouth: str = "") -> Intake | None:
        """One dart, whose mouth has this word in its name."""
        intakes = self.pattern.intakes.values()
        fitting = [one for one in intakes if one.kind == "dart" and mouth in one.mouth]
        return self.chance.choice(fitting) if fitting else None

    def inner_dart(self) -> InnerDart | None:
        """One dart with two points."""
        fitting = [dart for piece in self.pattern.pieces.values() for dart in piece.inner_darts]
        return self.chance.choice(fitting) if fitting else None

    def part_of(self, run: Run) -> Run:
        """The run itself, or one part of it where it has become several: a place on it must be plain."""
        part = self.chance.choice(run.members)
        return next(one for one in self.runs if one.members == (part,))

    def bust_point(self, piece: str) -> str | None:
        """The bust point, where the piece carries one."""
        marks = (mark.name for mark in self.pattern.pieces[piece].marks)
        return next((name for name in marks if name.endswith("/bust_point")), None)

    def seam(self) -> str | None:
        """One seam."""
        seams = list(self.pattern.seams)
        return self.chance.choice(seams) if seams else None

    def cloth_pieces(self) -> list[str]:
        """The pieces that no rule derived."""
        return [piece.name for piece in self.pattern.pieces.values() if piece.rule is None]

    def mm(self, least: float, most: float) -> str:
        """A length between two, as a hand writes it: whole mm."""
        return f"{self.chance.randint(round(least), round(most))} mm"

    def place(self, run: Run, end: str = "", least: float = 0.3, most: float = 0.7) -> dict[str, object]:
        """A place on a run between two shares of its length."""
        share = round(self.chance.uniform(least, most), 2)
        return {"edge": run.name, "from_point": end or self.chance.choice(run.ends), "fraction": share}


def _heads(pattern: Pattern) -> Iterator[str]:
    for name in pattern.groups:
        base, _ = split_side(name)
        if base.count("/") == 1:
            yield name
