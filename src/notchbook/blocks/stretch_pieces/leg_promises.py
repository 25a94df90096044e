"""What the finished leggings must measure: what was asked for, never what came out."""

from collections.abc import Iterator
from dataclasses import dataclass

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.stretch.given import LeggingsGiven
from notchbook.blocks.stretch.shapes import LeggingsLeg
from notchbook.blocks.stretch_fabric.reductions import Reduced
from notchbook.blocks.upper.shapes import Lever
from notchbook.pattern import Expectation, Piece, part_name


@dataclass(frozen=True)
class DraftedLeg:
    """What the promises speak of: names, what was asked and read, what came out, and the pieces by word."""

    names: PanelNames
    given: LeggingsGiven
    taken: dict[str, Reduced]
    leg: LeggingsLeg
    pieces: dict[str, Piece]
    ends_at_ankle: bool

    def lever(self, name: str) -> Lever | None:
        """A lever by its name."""
        return next((one for one in self.leg.levers if one.name == name), None)

    def pulled(self, name: str) -> float:
        """How far a lever was pulled; 0 where there is none of this name."""
        lever = self.lever(name)
        return 0.0 if lever is None else lever.pulled

    def edges(self, word: str) -> tuple[str, ...]:
        """The names of an edge on every piece that has it."""
        named = [part_name(piece.name, word) for piece in self.pieces.values()]
        return tuple(
            name for name, piece in zip(named, self.pieces.values(), strict=True) if piece.has_edge(name)
        )

    def lines(self, word: str) -> tuple[str, ...]:
        """The names of a level's lines."""
        return tuple(
            line.name
            for piece in self.pieces.values()
            for line in piece.lines
            if line.name == part_name(piece.name, word)
        )


def leggings_promises(drafted: DraftedLeg) -> tuple[Expectation, ...]:
    """The girths of trunk and leg, the crotch, and a hem above the ankle."""
    return (*_girths(drafted), _crotch(drafted), *_hem(drafted))


def _girths(drafted: DraftedLeg) -> Iterator[Expectation]:
    given, ease = drafted.given, drafted.leg.ease
    calf = None if given.calf is None else given.calf - ease.calf
    for key, wanted, names, times in (
        ("waist_girth", given.waist + drafted.pulled("waist_left_wide"), drafted.edges("waist"), 2),
        ("hip_girth", given.hip, drafted.lines("hip_line"), 2),
        ("thigh_girth", given.thigh - ease.thigh, drafted.lines("thigh_line"), 1),
        ("knee_girth", given.knee + ease.knee, drafted.lines("knee_line"), 1),
        ("calf_girth", calf, drafted.lines("calf_line"), 1),
        ("ankle_girth", given.ankle, drafted.edges("hem") if drafted.ends_at_ankle else (), 1),
    ):
        if wanted is not None and names:
            taken = drafted.taken[key]
            yield Expectation(
                drafted.names.whole(key),
                key,
                names,
                times,
                taken.body,
                wanted - taken.body,
                "the cloth must stretch round the body by so much",
                usual_ease=taken.usual,
            )


def _crotch(drafted: DraftedLeg) -> Expectation:
    given, body = drafted.given, drafted.taken["crotch_length"].body
    words = ("crotch_seam", "front_crotch_seam", "back_crotch_seam")
    return Expectation(
        drafted.names.whole("crotch_length"),
        "crotch_length",
        tuple(name for word in words for name in drafted.edges(word)),
        1,
        body,
        given.crotch_front + given.crotch_back - body,
        "the seam lies through the crotch from waist to waist",
        kind="length",
    )


def _hem(drafted: DraftedLeg) -> Iterator[Expectation]:
    """A hem above the ankle: nobody measured the leg there."""
    if not drafted.ends_at_ankle:
        name, hem, wanted = drafted.names.whole("hem_girth"), drafted.edges("hem"), drafted.given.ankle
        reason = "the hem is as wide as the leg between the levels above and below it"
        yield Expectation(name, "", hem, 1, wanted, 0.0, reason, kind="length")
