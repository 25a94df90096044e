"""The sleeve as a piece: its edges, points, dart, levels and marks under their names."""

from notchbook.blocks.set_in.shapes import SleeveHalf
from notchbook.geometry import Line, Path, Point
from notchbook.pattern import Edge, Group, Intake, InternalLine, Mark, Piece, part_name, piece_name

_MOUTHS = ("upper_mouth", "lower_mouth")


def draw_sleeve(slug: str, half: SleeveHalf) -> Piece:
    """The wearer's right sleeve, face up: front toward +x, biceps line at y = 0; cut as a pair."""
    name = piece_name(slug, "sleeve")

    def edge(word: str, path: Path, start: str, end: str) -> Edge:
        return Edge(part_name(name, word), path, part_name(name, start), part_name(name, end))

    hem = Edge(
        part_name(name, "hem"), half.hem, part_name(name, "hem_back"), part_name(name, "hem_front"), "hem"
    )
    outline = (
        hem,
        edge("front_seam", half.front_seam.reversed(), "hem_front", "underarm_front"),
        edge("cap_front", half.cap_front, "underarm_front", "cap_top"),
        edge("cap_back", half.cap_back.reversed(), "cap_top", "underarm_back"),
        *_back_seam(name, half),
    )
    return Piece(
        name=name,
        title="Sleeve",
        outline=outline,
        intakes=_intakes(name, half),
        lines=_levels(name, half),
        marks=(
            Mark(part_name(name, "crown"), half.crown, "datum"),
            Mark(part_name(name, "hem_middle"), half.hem_middle, "datum"),
        ),
        cut="pair",
    )


def sleeve_groups(slug: str, step: str, half: SleeveHalf) -> dict[str, Group]:
    """The back seam as its parts where a dart opens in it."""
    if half.elbow_dart is None:
        return {}
    seam = part_name(piece_name(slug, "sleeve"), "back_seam")
    return {seam: Group((part_name(seam, "above"), part_name(seam, "below")), step)}


def _back_seam(name: str, half: SleeveHalf) -> tuple[Edge, ...]:
    seam = part_name(name, "back_seam")
    ends = part_name(name, "underarm_back"), part_name(name, "hem_back")
    dart = half.elbow_dart
    if dart is None:
        return (Edge(seam, half.back_seam[0], *ends),)
    own = part_name(name, "elbow_dart")
    upper, lower = (part_name(own, mouth) for mouth in _MOUTHS)
    point = part_name(own, "point")
    return (
        Edge(part_name(seam, "above"), half.back_seam[0], ends[0], upper),
        Edge(part_name(own, "upper_leg"), _line(dart.first, dart.point), upper, point, "leg"),
        Edge(part_name(own, "lower_leg"), _line(dart.point, dart.second), point, lower, "leg"),
        Edge(part_name(seam, "below"), half.back_seam[1], lower, ends[1]),
    )


def _line(start: Point, end: Point) -> Path:
    return Path((Line(start, end),))


def _intakes(name: str, half: SleeveHalf) -> tuple[Intake, ...]:
    if half.elbow_dart is None:
        return ()
    own = part_name(name, "elbow_dart")
    return (
        Intake(
            name=own,
            mouth=part_name(name, "back_seam"),
            first_leg=part_name(own, "upper_leg"),
            second_leg=part_name(own, "lower_leg"),
            point=part_name(own, "point"),
            fold_toward="second_leg",
        ),
    )


def _levels(name: str, half: SleeveHalf) -> tuple[InternalLine, ...]:
    biceps = Path.line(half.cap_back.start, half.cap_front.start)
    found = [InternalLine(part_name(name, "biceps_line"), biceps, "level")]
    if half.elbow_line is not None:
        found.append(InternalLine(part_name(name, "elbow_line"), half.elbow_line, "level"))
    return tuple(found)
