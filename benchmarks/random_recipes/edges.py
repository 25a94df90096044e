"""Proposals for steps that move and redraw edges."""

from __future__ import annotations

from random_recipes.families import Parameters, Proposer
from random_recipes.look import Look, Run

SIDES = ("side_seam", "front_seam", "back_seam", "inseam")


def change_length(look: Look) -> Parameters | None:
    """Hems longer or shorter."""
    hems = look.both_panels("hem")
    return {"hems": [hem.name for hem in hems], "amount": look.mm(-50, 80)} if hems else None


def _sides(look: Look) -> list[Run]:
    sides = [run for run in look.both_panels("side_seam") if run.is_in_one_piece]
    return [run for run in sides if look.length(run) > 150.0 and len(run.members) == 1]


def change_width(look: Look) -> Parameters | None:
    """A waist wider or narrower at the side seams, running to nothing below."""
    sides = _sides(look)
    if not sides:
        return None
    level: Parameters = {"distance": "0 mm"}
    nothing: Parameters = {"distance": look.mm(120, 145)}
    seams: list[Parameters] = [
        {
            "level": {"edge": one.name, "from_point": look.upper_end(one), **level},
            "nothing_at": [{"edge": one.name, "from_point": look.upper_end(one), **nothing}],
        }
        for one in sides
    ]
    return {"amount": look.mm(-20, 30), "seams": seams}


def taper(look: Look) -> Parameters | None:
    """Side seams swung in or out below a place."""
    sides = [run for run in _sides(look) if any("hem" in end for end in run.ends)]
    if not sides:
        return None
    length = min(look.length(run) for run in sides)
    distance = look.mm(0.35 * length, 0.6 * length)
    places = [{"edge": one.name, "from_point": look.upper_end(one), "distance": distance} for one in sides]
    return {"amount": look.mm(-25, 40), "nothing_at": places}


def reshape_edge(look: Look) -> Parameters | None:
    """A side seam drawn fuller or hollower, its mate with it."""
    sides = _sides(look)
    if not sides:
        return None
    first, *rest = sides
    points = [{"along": 0.5, "out": look.mm(-5, 6)}]
    mates = [{"edge": one.name, "from_point": look.upper_end(one)} for one in rest[:1]]
    start = look.upper_end(first)
    return {"edge": first.name, "from_point": start, "points": points, "mates": mates, "may_wave": True}


def change_neckline(look: Look) -> Parameters | None:
    """Front and back neck wider and lower."""
    necks = look.both_panels("neck")
    if not necks:
        return None
    shapes = ("round", "scoop", "v", "square")
    parts = [
        {
            "edge": run.name,
            "center": look.center_end(run),
            "shape": look.chance.choice(shapes) if "front" in run.home else "round",
            "depth": look.mm(20, 90) if "front" in run.home else look.mm(0, 20),
        }
        for run in necks
    ]
    return {"necks": parts, "width": look.mm(5, 30)}


def change_armhole(look: Look) -> Parameters | None:
    """Front and back armhole lower and the shoulder narrower."""
    armholes = look.both_panels("armhole")
    if not armholes:
        return None
    parts = [{"edge": one.name, "underarm": look.lower_end(one), "hollow": look.mm(0, 5)} for one in armholes]
    return {"armholes": parts, "shoulder": look.mm(0, 25), "lower": look.mm(-10, 20)}


def curve_hem(look: Look) -> Parameters | None:
    """Hems dipped or lifted from center to side."""
    hems = look.both_panels("hem")
    if not hems:
        return None
    side = look.mm(-40, 20)
    parts = [
        {"edge": hem.name, "from_point": look.center_end(hem), "start": look.mm(-60, 40), "end": side}
        for hem in hems
    ]
    return {"hems": parts}


def bias_grain(look: Look) -> Parameters | None:
    """Pieces cut on the bias."""
    pieces = look.cloth_pieces()
    return {"pieces": pieces[: look.chance.randint(1, 2)]} if pieces else None


def unfold(look: Look) -> Parameters | None:
    """A half piece drawn whole."""
    folded = [piece.name for piece in look.pattern.pieces.values() if piece.cut == "fold"]
    return {"pieces": [look.chance.choice(folded)]} if folded else None


def turn_sleeve(look: Look) -> Parameters | None:
    """The sleeve turned a little in its armhole."""
    if "sleeve.sleeve" not in look.pattern.pieces:
        return None
    return {"degrees": look.chance.choice((-3.0, -1.5, 2.0, 4.0))}


EDGES: dict[str, Proposer] = {
    "change_length": change_length,
    "change_width": change_width,
    "taper": taper,
    "reshape_edge": reshape_edge,
    "change_neckline": change_neckline,
    "change_armhole": change_armhole,
    "curve_hem": curve_hem,
    "bias_grain": bias_grain,
    "unfold": unfold,
    "turn_sleeve": turn_sleeve,
}
