"""The levers of the crotch seam: they move together along one path, each within its own limits."""

from dataclasses import dataclass

from notchbook.blocks.legs.given import TrousersGiven
from notchbook.blocks.legs.large_bodies import of_size
from notchbook.blocks.legs.proportions import of_wearer, proportion


@dataclass(frozen=True, slots=True)
class Range:
    """From ``least`` to ``most``, and the ``usual`` value between them."""

    least: float
    usual: float
    most: float

    def at(self, value: float) -> float:
        """The value, kept within the range."""
        return min(self.most, max(self.least, value))


@dataclass(frozen=True, slots=True)
class CrotchRanges:
    """The ranges of the levers: extensions, raised centers and depth ease in mm, slant in degrees."""

    front_extension: Range
    back_extension: Range
    slant: Range
    raised: Range
    back_raised: Range
    depth: Range


@dataclass(frozen=True, slots=True)
class Pulled:
    """Where the levers stand. ``steps`` is how far they were pulled together, ``shift`` by how much of the
    back extension was given to the front, mm."""

    front_extension: float
    back_extension: float
    slant: float
    raised: float
    back_raised: float
    depth: float
    steps: float
    shift: float


def crotch_ranges(given: TrousersGiven, slant: float) -> CrotchRanges:
    """The ranges for a hip with its ease, and the usual slant of the back."""
    wide = given.crotch_limits == "wide"
    slant_room = proportion("wide.slant") if wide else 0.0
    raised_room = proportion("wide.raised") if wide else 0.0
    raised, back_raised = (proportion(f"raised.{word}") + raised_room for word in ("most", "back_most"))
    return CrotchRanges(
        _extension("front", given),
        _extension("back", given),
        Range(
            max(0.0, min(proportion("back.least_slant"), slant) - slant_room),
            slant,
            proportion("back.most_slant") + slant_room,
        ),
        Range(-raised, 0.0, raised),
        Range(-back_raised, 0.0, back_raised),
        _depth(given),
    )


def _extension(panel: str, given: TrousersGiven) -> Range:
    room = proportion("wide.extension") * given.hip if given.crotch_limits == "wide" else 0.0
    least = proportion(f"{panel}_extension.least") * given.hip - room
    if given.cut == "culottes":
        usual = proportion(f"culottes.{panel}_share") * given.hip
        most = proportion(f"culottes.most_{panel}") * given.hip
    else:
        more = proportion("front_extension.more") if panel == "front" else 0.0
        usual = of_wearer(f"{panel}_extension.share", given.wearer) * given.hip + more
        most = proportion(f"{panel}_extension.most") * given.hip
    return Range(least, usual, most + room)


def least_depth(given: TrousersGiven) -> float:
    """The least ease of the crotch depth that the levers come to, mm."""
    less = proportion("wide.less_depth") if given.crotch_limits == "wide" else 0.0
    return given.depth_ease - proportion("depth.most_less") - less


def _depth(given: TrousersGiven) -> Range:
    wide = proportion("wide.more_depth") if given.crotch_limits == "wide" else 0.0
    return Range(least_depth(given), given.depth_ease, max(given.depth_most, given.depth_ease) + wide)


def pulled(ranges: CrotchRanges, hip: float, steps: float, shift: float) -> Pulled:
    """The levers after so many steps, ``shift`` mm of extension moved from back to front."""
    front = ranges.front_extension.at(
        ranges.front_extension.usual + of_size("front_extension.step", hip) * hip * steps + shift
    )
    back = ranges.back_extension.at(
        ranges.back_extension.usual + of_size("back_extension.step", hip) * hip * steps - shift
    )
    return Pulled(
        front,
        back,
        ranges.slant.at(ranges.slant.usual + of_size("slant.step", hip) * steps),
        ranges.raised.at(proportion("raised.step") * steps),
        ranges.back_raised.at(of_size("raised.back_step", hip) * steps),
        ranges.depth.at(ranges.depth.usual + of_size("depth.step", hip) * steps),
        steps,
        shift,
    )
