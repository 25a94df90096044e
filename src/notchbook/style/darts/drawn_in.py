"""A dart left unsewn and drawn in along its edge: gathers or ease in place of its two legs."""

from dataclasses import dataclass, replace
from typing import Literal

from notchbook.errors import StepRefused
from notchbook.geometry import Path, run_on
from notchbook.pattern import Edge, Intake, Piece, child_name, part_name, spoken
from notchbook.pattern.slashing.naming import FAR
from notchbook.style.darts.drawn_out import drawn_out
from notchbook.units import TOLERANCES

DrawnIn = Literal["gather", "ease"]

_ROLES: dict[DrawnIn, str] = {"gather": "gathered", "ease": "eased"}


@dataclass(frozen=True, slots=True)
class DrawnInDart:
    """The piece with the dart drawn in, the two parts of the stretch in order, and the account of names."""

    piece: Piece
    intake: Intake
    stretch: tuple[str, str]
    splits: dict[str, tuple[str, ...]]
    merges: dict[str, tuple[str, ...]]
    removals: dict[str, str]


def drawn_in_dart(piece: Piece, dart: Intake, kind: DrawnIn, beside: float, owner: str) -> DrawnInDart:
    """The dart as gathers or ease: the edge runs across its open mouth as one smooth line.

    What it took up is drawn in evenly from ``beside`` mm before the mouth to as far behind it, so that the
    edge is as long as before when sewn. ``owner`` is the name under which the new points are named.
    StepRefused ``dart-edge-too-short`` when an edge beside the mouth has no room for that.
    """
    before, after = _edges_beside(piece, dart)
    for edge in (before, after):
        if edge.length < beside + TOLERANCES.closure:
            raise StepRefused(
                "dart-edge-too-short",
                dart=spoken(dart.name),
                edge=spoken(edge.name),
                length=edge.length,
                beside=beside,
            )
    kept_before, _ = before.path.split_at(before.length - beside)
    _, kept_after = after.path.split_at(beside)
    kept_before, line, kept_after = drawn_out(kept_before, _blended(kept_before, kept_after), kept_after)
    first, second = line.split_at(line.length / 2.0)
    word = dart.name.rsplit("/", 1)[-1].split("@")[0]
    points = [part_name(owner, word, role) for role in ("begin", "middle", "finish")]
    role = _ROLES[kind]
    edges = (
        replace(before, name=child_name(before.name, FAR), path=kept_before, end=points[0]),
        replace(before, name=child_name(before.name, role), path=first, start=points[0], end=points[1]),
        replace(after, name=child_name(after.name, role), path=second, start=points[1], end=points[2]),
        replace(after, name=child_name(after.name, FAR), path=kept_after, start=points[2]),
    )
    stretch = (edges[1].name, edges[2].name)
    drawn = Intake(
        dart.name, dart.mouth, kind=kind, edge=part_name(owner, word, role), amount=line.length - 2.0 * beside
    )
    gone = dict.fromkeys((dart.first_leg, dart.second_leg, dart.point), f"the dart became {_said(kind)}")
    return DrawnInDart(
        _with_stretch(piece, dart, drawn, edges),
        drawn,
        stretch,
        splits={before.name: (edges[0].name, edges[1].name), after.name: (edges[2].name, edges[3].name)},
        merges={before.end: (points[1],), after.start: (points[1],)},
        removals=gone,
    )


def _said(kind: DrawnIn) -> str:
    return "gathers" if kind == "gather" else "ease"


def _edges_beside(piece: Piece, dart: Intake) -> tuple[Edge, Edge]:
    """The edges before and after the dart; StepRefused ``dart-beside-dart`` where another dart begins."""
    before, after = piece.edge_before(dart.first_leg), piece.edge_after(dart.second_leg)
    if "leg" in (before.kind, after.kind):
        raise StepRefused("dart-beside-dart", dart=spoken(dart.name))
    return before, after


def _blended(before: Path, after: Path) -> Path:
    """One smooth line from the end of one path to the start of the other, running on from both."""
    return Path.of(run_on(before, before.length, after, 0.0))


def _with_stretch(piece: Piece, dart: Intake, drawn: Intake, edges: tuple[Edge, ...]) -> Piece:
    """The piece with the two edges beside the dart and its legs replaced by these edges, in one go."""
    count = len(piece.outline)
    begin = (piece.edge_index(dart.first_leg) - 1) % count
    rest = [piece.outline[(begin + step) % count] for step in range(4, count)]
    return replace(piece, outline=(*rest, *edges)).with_intake(drawn)
