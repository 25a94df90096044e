"""What the finished torso or bodysuit must measure.

What is promised is what was asked for: the measure with its reduction or ease, and by how much a lever that
the draft speaks of gave way. Never what came out: a promise made of that could not be broken.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from notchbook.blocks._panel_names import PanelNames
from notchbook.blocks.stretch.given import BodysuitGiven, TorsoGiven
from notchbook.blocks.stretch.shapes import BodysuitHalf, TorsoHalf
from notchbook.blocks.stretch_fabric.reductions import Reduced
from notchbook.blocks.upper.shapes import Lever
from notchbook.pattern import Expectation, Piece, part_name
from notchbook.units import TOLERANCES


@dataclass(frozen=True)
class Drafted:
    """What the promises speak of: names, what was asked and read, what came out, and the pieces by word."""

    names: PanelNames
    given: TorsoGiven
    taken: dict[str, Reduced]
    half: TorsoHalf | BodysuitHalf
    pieces: dict[str, Piece]

    def pulled(self, lever: str) -> float:
        """How far a lever was pulled; 0 where there is none of this name."""
        return next((one.pulled for one in self.half.levers if one.name == lever), 0.0)

    def lever(self, name: str) -> Lever | None:
        """A lever by its name."""
        return next((one for one in self.half.levers if one.name == name), None)

    def lines(self, word: str) -> tuple[str, ...]:
        """The names of a level's lines, front and back."""
        named = [part_name(self.pieces[which].name, word) for which in ("front", "back")]
        there = {line.name for which in ("front", "back") for line in self.pieces[which].lines}
        return tuple(name for name in named if name in there)

    def across(self, of: str) -> tuple[tuple[str, ...], tuple[tuple[str, str], ...]]:
        """How the panels measure from center to side at bust, waist or hip: level lines that run all the way,
        and pairs of points for those that a low neck or a high leg cuts short."""
        lines, pairs = [], []
        for which, center in (("front", "neck_pit"), ("back", "nape")):
            piece = self.pieces[which]
            side = part_name(piece.name, "underarm" if of == "bust" else f"{of}_side")
            name = part_name(piece.name, f"{of}_line")
            line = next((line for line in piece.lines if line.name == name), None)
            if line is None:
                continue
            if side in piece.points and abs(line.path.length - abs(piece.points[side].x)) > TOLERANCES.join:
                pairs.append((part_name(piece.name, center), side))
            else:
                lines.append(name)
        return tuple(lines), tuple(pairs)

    def edges(self, word: str) -> tuple[str, ...]:
        """The names of an edge of front and back."""
        return tuple(self.names.at(which, word) for which in ("front", "back"))


def torso_promises(drafted: Drafted) -> tuple[Expectation, ...]:
    """Girths, lengths and the cap against its armhole."""
    return (*_girths(drafted), *_lengths(drafted), *_neck(drafted), *_sleeve(drafted))


def bodysuit_promises(drafted: Drafted, given: BodysuitGiven) -> tuple[Expectation, ...]:
    """As the torso's, and the crotch, its join and the leg opening."""
    return (*torso_promises(drafted), *_crotch(drafted, given), *_leg_opening(drafted, given))


def _girths(drafted: Drafted) -> Iterator[Expectation]:
    given = drafted.given
    waist = None if given.waist is None else given.waist + drafted.pulled("waist_wider")
    bust = given.bust + drafted.pulled("bust_wider")
    for of, wanted in (("bust", bust), ("waist", waist), ("hip", given.hip)):
        whole, cut_short = drafted.across(of)
        if wanted is not None and len(whole) + len(cut_short) == 2:
            yield replace(
                _girth(drafted, f"{of}_girth", whole, wanted),
                chains=cut_short,
                reach="across" if cut_short else "straight",
            )


def _girth(drafted: Drafted, key: str, names: tuple[str, ...], wanted: float, times: int = 2) -> Expectation:
    taken = drafted.taken[key]
    return Expectation(
        drafted.names.whole(key),
        key,
        names,
        times,
        taken.body,
        wanted - taken.body,
        "the cloth must stretch round the body by so much",
        usual_ease=taken.usual,
    )


def _lengths(drafted: Drafted) -> Iterator[Expectation]:
    given, back = drafted.given, drafted.pieces["back"]
    nape, underarm, waist = (part_name(back.name, word) for word in ("neck_base", "underarm", "waist_center"))
    if nape not in back.points:
        nape = part_name(back.name, "nape")
    depth = given.armhole_depth + drafted.pulled("underarm_lowered")
    yield _length(drafted, "scye_depth", depth, chains=((nape, underarm),))
    if waist not in back.points:  # the hem lies at the waist
        waist = part_name(back.name, "hem_center")
    yield _length(drafted, "back_waist_length", given.back_length, chains=((nape, waist),))
    yield from _shoulder(drafted)
    names = drafted.lines("across_back_line")
    if names and given.sleeve is not None:  # a shoulder that is cut in draws the armhole in with it
        wanted = given.across_back + drafted.pulled("across_back")
        yield _length(drafted, "across_back", wanted, names=names, times=2)


def _shoulder(drafted: Drafted) -> Iterator[Expectation]:
    """The shoulder seam, narrowed with the bust and opened at the neck, or the width of a strap; an armhole
    that is cut in sets its own."""
    given, names = drafted.given, (drafted.names.at("front", "shoulder"),)
    if given.strap is not None:
        reason = "the strap is as wide as asked"
        yield _plain(drafted, "strap_width", given.strap.width, names, reason)
    elif given.shoulder_in == 0.0:
        wanted = given.shoulder - drafted.pulled("shoulder_narrowed") - given.neck_wider
        yield _length(drafted, "shoulder_length", wanted, names=names)


def _length(
    drafted: Drafted,
    key: str,
    wanted: float,
    *,
    names: tuple[str, ...] = (),
    chains: tuple[tuple[str, ...], ...] = (),
    times: int = 1,
) -> Expectation:
    body = drafted.taken[key].body
    return Expectation(
        drafted.names.whole(key),
        key,
        names,
        times,
        body,
        wanted - body,
        "the cloth must stretch along the body by so much",
        kind="length",
        chains=chains,
        reach="down",
    )


def _neck(drafted: Drafted) -> Iterator[Expectation]:
    """The neck seam where it lies on the neck base."""
    given = drafted.given
    if given.neck_wider == given.front_neck_lower == given.back_neck_lower == 0.0:
        yield _girth(drafted, "neck_base_girth", drafted.edges("neck"), given.neck)


def _sleeve(drafted: Drafted) -> Iterator[Expectation]:
    """The girths and the length of the sleeve, and each half of the cap against its armhole."""
    given = drafted.given.sleeve
    if given is None or drafted.half.sleeve is None:
        return
    sleeve = drafted.names.piece("sleeve")
    biceps = given.biceps + drafted.pulled("sleeve_wider")
    yield _girth(drafted, "upper_arm_girth", (part_name(sleeve, "biceps_line"),), biceps, 1)
    hem = given.hem + drafted.pulled("sleeve_hem_wider")
    wide = _plain(drafted, "hem_girth", hem, (part_name(sleeve, "hem"),), "the hem is as wide as asked")
    yield replace(wide, name=part_name(sleeve, "hem_girth"))  # that of the garment is another
    yield Expectation(
        drafted.names.whole("sleeve_length"),
        "",
        (),
        1,
        given.length + drafted.pulled("shoulder_narrowed") + drafted.pulled("sleeve_longer"),
        0.0,
        "from the neck over the shoulder to the hem the sleeve is as long as asked",
        kind="length",
        chains=((part_name(sleeve, "cap_top"), part_name(sleeve, "hem_middle")),),
        reach="down",
    )
    for which, panel in (("front", drafted.half.front), ("back", drafted.half.back)):
        yield _plain(
            drafted,
            f"cap_{which}_length",
            panel.armhole.length,
            (part_name(sleeve, f"cap_{which}"),),
            "the cap goes into the armhole without ease",
        )


def _plain(
    drafted: Drafted, word: str, wanted: float, names: Iterable[str], reason: str, times: int = 1
) -> Expectation:
    """A length that comes from no measure of its own."""
    return Expectation(drafted.names.whole(word), "", tuple(names), times, wanted, 0.0, reason, kind="length")


def _crotch(drafted: Drafted, given: BodysuitGiven) -> Iterator[Expectation]:
    chains = tuple(
        (drafted.names.at(which, "waist_center"), drafted.names.at(which, "crotch_center"))
        for which in ("front", "back")
    )
    crotch = given.crotch_front + given.crotch_back + drafted.half.front_length.lower
    yield _length(drafted, "crotch_length", crotch, chains=chains)
    for which in ("front", "back"):
        yield _plain(
            drafted,
            f"{which}_crotch_width",
            given.crotch_width,
            (drafted.names.at(which, "crotch"),),
            "front, back and lining are joined over this width",
            times=2,
        )


def _leg_opening(drafted: Drafted, given: BodysuitGiven) -> Iterator[Expectation]:
    """The opening that was asked for; one that could not be reached is told by its lever instead."""
    height = drafted.lever("leg_height")
    if given.leg_opening is None or height is None or height.at_limit:
        return
    names = drafted.edges("leg_opening")
    if "thigh_girth" in drafted.taken:
        yield _girth(drafted, "thigh_girth", names, given.leg_opening, 1)
    else:
        yield _plain(
            drafted, "leg_opening_length", given.leg_opening, names, "the opening is as long as asked"
        )
