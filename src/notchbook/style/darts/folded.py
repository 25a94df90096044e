"""A dart left open below its mouth and laid in a fold: a tuck or pleat in place of its two legs."""

from dataclasses import replace
from typing import Literal

from notchbook.errors import StepRefused
from notchbook.geometry import Path, Point, Transform
from notchbook.pattern import Edge, Intake, InternalLine, LineKind, Piece, closing_motion, part_name, spoken
from notchbook.units import TOLERANCES

Folded = Literal["tuck", "pleat"]


def folded_dart(piece: Piece, dart: Intake, kind: Folded, lengths: tuple[float, float], owner: str) -> Piece:
    """The dart as a tuck or pleat; ``lengths``: how far it is stitched down, how long its lines are, mm.

    The legs keep their names and become the edge in the fold: folded the way that the dart is pressed, it
    lies on the edge beside it. The fold line and the placement line run along the old legs. StepRefused
    ``dart-edge-too-short`` when the edge that it lies on is shorter than half the fold.
    """
    stitched, drawn = lengths
    first, second = piece.edge(dart.first_leg), piece.edge(dart.second_leg)
    cap = _cap(piece, dart)
    inner = cap.point_at(cap.length / 2.0)
    halves = cap.split_at(cap.length / 2.0)
    # The cap is a reflection, and traced legs differ by a hair: each half ends where its leg begins.
    before = halves[0].with_start(first.path.start).with_end(inner)
    after = halves[1].with_start(inner).with_end(second.path.end)
    piece = piece.with_edges(replace(first, path=before), replace(second, path=after))
    word = dart.name.rsplit("/", 1)[-1].split("@")[0]
    names = {
        "fold": part_name(owner, word, "fold_line"),
        "placement": part_name(owner, word, "placement_line"),
    }
    fold_first = dart.fold_toward == "first_leg"
    roles = ("fold", "placement") if fold_first else ("placement", "fold")
    paths = (first.path.between(0.0, drawn), second.path.reversed().between(0.0, drawn))
    kinds: dict[str, LineKind] = {"fold": "fold_line", "placement": "placement"}
    lines = tuple(
        InternalLine(names[role], path, kinds[role]) for role, path in zip(roles, paths, strict=True)
    )
    folded = replace(
        dart, kind=kind, first_line=names[roles[0]], second_line=names[roles[1]], stitched=stitched
    )
    return replace(piece.with_intake(folded), lines=(*piece.lines, *lines))


def _cap(piece: Piece, dart: Intake) -> Path:
    """The edge over the open mouth, such that folded it lies on the edge beside the dart."""
    first, second = piece.edge(dart.first_leg).path, piece.edge(dart.second_leg).path
    point = first.end
    middle = ((first.start - point).unit() + (second.end - point).unit()).unit()
    closing = closing_motion(piece, dart)
    before, after = piece.edge_before(dart.first_leg), piece.edge_after(dart.second_leg)
    reach = 2.0 * first.length + second.length
    center = Path.line(point, point + middle * reach)
    if dart.fold_toward == "second_leg":
        lying = after.path.transformed(closing)
        half = lying.between(0.0, _met(lying, center, dart, after))
        return half.joined(half.transformed(_across(point, middle)).reversed())
    lying = before.path.transformed(closing.inverse()).reversed()
    half = lying.between(0.0, _met(lying, center, dart, before))
    return half.transformed(_across(point, middle)).joined(half.reversed())


def _across(point: Point, middle: Point) -> Transform:
    return Transform.reflection(point, point + middle)


def _met(lying: Path, center: Path, dart: Intake, edge: Edge) -> float:
    """How far along the lying edge the inner fold is."""
    met = [crossing.at_self for crossing in lying.intersections(center)]
    if not met or met[0] <= TOLERANCES.sew_length:
        raise StepRefused(
            "dart-edge-too-short",
            dart=spoken(dart.name),
            edge=spoken(edge.name),
            length=edge.length,
            beside=edge.length,
        )
    return met[0]
