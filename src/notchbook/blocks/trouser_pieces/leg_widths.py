"""How wide the legs are at knee and hem and where the hem lies: as asked, else by the silhouette."""

from dataclasses import dataclass

from notchbook.blocks.trouser_pieces.body_reader import BodyReader
from notchbook.blocks.trouser_pieces.leg_figures import SILHOUETTE_LENGTHS, find_figure, leg_figure
from notchbook.blocks.trouser_pieces.parameters import LegLength, TrousersParameters


@dataclass(frozen=True, slots=True)
class LegWidths:
    """The legs as drafted, mm: ``knee`` and ``hem`` are girths (None: no knee, a leg that falls straight),
    ``knee_depth`` and ``length`` run down the side from the waist.

    ``must_pass`` is the girth that must get through the hem, ``passes`` what it is of ("heel" or "calf"),
    None where the hem lies above the knee.
    """

    knee: float | None
    hem: float | None
    knee_depth: float
    length: float
    must_pass: float | None
    passes: str


def length_of(parameters: TrousersParameters) -> LegLength:
    """The length by name: as asked, else that of the silhouette."""
    asked = parameters.length
    return SILHOUETTE_LENGTHS[parameters.silhouette] if asked == "auto" else asked


def leg_widths(reader: BodyReader, hip: float, thigh: float) -> LegWidths:
    """The legs of this body; ``hip`` is the body's, ``thigh`` has its ease, mm."""
    inside = reader.measure("inside_leg")
    rise = reader.rise.standing
    usual_level = rise + inside / 2.0 - leg_figure("substitute", "knee_level")
    knee_depth = reader.either("knee_depth", usual_level)
    length = _length(reader, rise, inside)
    knee = _knee(reader, hip, thigh) if length > knee_depth else None
    passes = _passes(reader, rise, inside, length)
    least = None if passes is None else _passing(reader, hip, passes)
    hem = _hem(reader, hip, thigh, knee, least)
    if passes is not None and hem is not None and least is not None and hem <= least:
        # Only where it decides: on every other leg nobody asks how wide the heel is.
        reader.either(f"{passes}_girth", least - leg_figure("pass", passes))
    return LegWidths(knee, hem, knee_depth, length, least, passes or "")


def _length(reader: BodyReader, rise: float, inside: float) -> float:
    """From the waist down the side to the hem, mm."""
    own = reader.positive("own_length")
    if own is not None:
        return own
    outside = reader.taken("outside_leg")
    whole = rise + inside if outside is None else outside
    return whole - (1.0 - leg_figure("length", length_of(reader.parameters))) * inside


def _knee(reader: BodyReader, hip: float, thigh: float) -> float | None:
    """The girth of the leg at the knee, mm; None where the silhouette has none and none is asked for."""
    own, more = reader.positive("own_knee"), find_figure("knee", reader.parameters.silhouette)
    if own is not None:
        return own
    if more is None:
        return None
    knee = reader.either("knee_girth", leg_figure("substitute", "knee_girth") * hip) + more
    return max(knee, leg_figure("least", "knee_of_thigh") * thigh)


def _passes(reader: BodyReader, rise: float, inside: float, length: float) -> str | None:
    """Over what the hem must pass: the heel, or the calf where it ends there; None above the knee."""
    share = (length - rise) / inside
    if share <= leg_figure("length", "knee"):
        return None
    return "heel" if share > (leg_figure("length", "calf") + leg_figure("length", "ankle")) / 2.0 else "calf"


def _passing(reader: BodyReader, hip: float, of: str) -> float:
    """The girth that the hem must let through, mm."""
    key = f"{of}_girth"
    found = reader.find(key)
    body = leg_figure("substitute", key) * hip if found is None else found
    return body + leg_figure("pass", of)


def _hem(
    reader: BodyReader, hip: float, thigh: float, knee: float | None, least: float | None
) -> float | None:
    """The girth of the hem, mm; None where the leg falls straight. What is asked for is not widened."""
    own = reader.positive("own_hem")
    if own is not None:
        return own
    share = find_figure("hem", reader.parameters.silhouette)
    if share is None:
        return None
    base = knee if knee is not None else hip if reader.parameters.silhouette == "wide" else thigh
    return max(share * base, least or 0.0)
