"""Proposals for steps that move, shape and take up darts."""

from __future__ import annotations

from random_recipes.families import Parameters, Proposer
from random_recipes.look import Look

CENTERS = ("center_front", "center_back", "crotch_seam")

TARGETS = ("shoulder", "neck", "armhole", "side_seam", "waist")
"""Edges into which a dart is moved."""


def _still(look: Look, piece: str) -> str | None:
    """The edge that lies still: none where the piece lies on the fold, else the one at its center."""
    if any(edge.kind == "fold" for edge in look.pattern.pieces[piece].outline):
        return None
    return next((run.members[0] for run in look.of_role(*CENTERS) if run.pieces == (piece,)), None)


def transfer_dart(look: Look) -> Parameters | None:
    """A dart turned to another edge of its piece, whole or in part."""
    dart = look.dart()
    if dart is None:
        return None
    piece = look.pattern.carriers[dart.name]
    edges = [run for run in look.of_role(*TARGETS) if run.pieces == (piece,) and run.name != dart.mouth]
    if not edges:
        return None
    edge = look.part_of(look.chance.choice(edges))
    new: Parameters = {"at": look.place(edge, least=0.35, most=0.65)}
    if look.chance.random() < 0.3:
        new["share"] = 0.5
    pivot, still = look.bust_point(piece), _still(look, piece)
    return {"darts": [dart.name], "places": [new], "pivot": pivot, "still": still}


def shorten_dart(look: Look) -> Parameters | None:
    """A dart a little shorter."""
    dart = look.dart()
    return None if dart is None else {"darts": [dart.name], "amount": look.mm(5, 25)}


def convert_dart(look: Look) -> Parameters | None:
    """A dart as gathers, ease, tuck or pleat."""
    dart = look.dart()
    if dart is None:
        return None
    into = look.chance.choice(("gather", "ease", "tuck", "pleat"))
    return {"darts": [dart.name], "into": into, "beside": look.mm(15, 25)}


def fold_dart(look: Look) -> Parameters | None:
    """A dart pressed to one side or the other."""
    dart = look.dart()
    if dart is None:
        return None
    center = _still(look, look.pattern.carriers[dart.name])
    return {"darts": [dart.name], "toward": look.chance.choice(("as_usual", "other_way")), "center": center}


def true_dart(look: Look) -> Parameters | None:
    """A dart trued."""
    dart = look.dart()
    return None if dart is None else {"dart": dart.name}


def dart_to_flare(look: Look) -> Parameters | None:
    """A waist dart let out at the hem."""
    dart = look.dart("waist")
    if dart is None:
        return None
    piece = look.pattern.carriers[dart.name]
    hem = next((run for run in look.of_role("hem") if run.pieces == (piece,)), None)
    still = next((run for run in look.of_role("center_front", "center_back") if run.pieces == (piece,)), None)
    if hem is None or still is None:
        return None
    return {"intake": dart.name, "hem": hem.name, "still": still.name}


def double_ended_dart(look: Look) -> Parameters | None:
    """A dart with two points beside the center of a piece without a waist seam."""
    center = look.one("center_front", "center_back")
    if center is None or look.length(center) < 450.0 or look.piece(center).inner_darts:
        return None
    if not any("neck" in edge.name for edge in look.piece(center).outline):
        return None
    at = {"edge": center.name, "from_point": look.upper_end(center), "distance": look.mm(330, 380)}
    sizes = {"width": look.mm(10, 20), "above": look.mm(100, 130), "below": look.mm(80, 110)}
    return {"at": at, "inside": look.mm(70, 90), **sizes}


def reshape_double_dart(look: Look) -> Parameters | None:
    """A dart with two points made another."""
    dart = look.inner_dart()
    if dart is None:
        return None
    return {"darts": [dart.name], "width": look.mm(8, 20), "above": look.mm(90, 130)}


DARTS: dict[str, Proposer] = {
    "transfer_dart": transfer_dart,
    "shorten_dart": shorten_dart,
    "convert_dart": convert_dart,
    "fold_dart": fold_dart,
    "true_dart": true_dart,
    "dart_to_flare": dart_to_flare,
    "double_ended_dart": double_ended_dart,
    "reshape_double_dart": reshape_double_dart,
}
