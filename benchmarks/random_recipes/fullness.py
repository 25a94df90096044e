"""Proposals for steps that let cloth in: spread, gathered, pleated, flared, hung on."""

from __future__ import annotations

from random_recipes.families import Parameters, Proposer
from random_recipes.look import Look, Run


def _opposite(look: Look) -> tuple[Run, Run] | None:
    """A hem and the upper edge that lies across from it in its piece."""
    hem = look.one("hem")
    if hem is None or not hem.is_in_one_piece:
        return None
    across = look.beside(hem, "waist", "style_line")
    return None if across is None or not across.is_in_one_piece else (hem, across)


def _ends(look: Look, hem: Run, across: Run) -> tuple[str, str]:
    """The ends of both on the same side of the piece."""
    edges = look.pattern.edges
    begins_left = {
        run.role: edges[run.members[0]].path.start.x < edges[run.members[-1]].path.end.x
        for run in (hem, across)
    }
    left, across_left = (run.start if begins_left[run.role] else run.end for run in (hem, across))
    return left, across_left


def slash_and_spread(look: Look) -> Parameters | None:
    """A skirt slashed from the hem to its upper edge."""
    found = _opposite(look)
    if found is None:
        return None
    ends = _ends(look, *found)
    return {
        "edge": found[0].name,
        "from_point": ends[0],
        "across": found[1].name,
        "across_point": ends[1],
        "number": look.chance.randint(2, 6),
        "opens": look.mm(8, 30),
    }


def gather_edge(look: Look) -> Parameters | None:
    """The upper edge gathered, the hem with it by a share."""
    found = _opposite(look)
    if found is None:
        return None
    hem_end, end = _ends(look, *found)
    return {
        "edge": found[1].name,
        "from_point": end,
        "across": found[0].name,
        "across_point": hem_end,
        "ratio": look.chance.choice((1.2, 1.5, 2.0)),
        "across_share": look.chance.choice((0.5, 1.0)),
    }


def pleats(look: Look) -> Parameters | None:
    """Pleats in the upper edge."""
    found = _opposite(look)
    if found is None:
        return None
    hem_end, end = _ends(look, *found)
    number = look.chance.randint(1, 3)
    room = look.length(found[1]) / (number + 1)
    return {
        "edge": found[1].name,
        "from_point": end,
        "across": found[0].name,
        "across_point": hem_end,
        "kind": look.chance.choice(("knife", "box", "inverted")),
        "number": number,
        "depth": look.mm(10, max(10.0, min(30.0, 0.4 * room))),
        "first_distance": look.mm(0.9 * room, room),
        "spacing": look.mm(0.9 * room, room),
    }


def _seamed_sides(look: Look) -> list[Run]:
    sides = [run for run in look.both_panels("side_seam") if len(run.members) == 1]
    return [run for run in sides if any("hem" in end for end in run.ends)][:2]


def godet(look: Look) -> Parameters | None:
    """A godet in the side seam."""
    sides = _seamed_sides(look)
    if not sides:
        return None
    height = min(look.length(run) for run in sides) * look.chance.uniform(0.25, 0.45)
    parts = [{"edge": one.name, "hem_end": look.lower_end(one)} for one in sides]
    return {
        "sides": parts,
        "height": look.mm(height, height),
        "angle": look.chance.choice((30.0, 45.0, 60.0)),
    }


def tiers(look: Look) -> Parameters | None:
    """Tiers hung from the hem."""
    hems = look.both_panels("hem")[:2]
    if not hems:
        return None
    parts = [{"edge": hem.name, "center": look.center_end(hem)} for hem in hems]
    return {"edges": parts, "number": look.chance.randint(1, 3), "ratio": look.chance.choice((1.3, 1.5, 2.0))}


def gores(look: Look) -> Parameters | None:
    """A skirt piece divided into gores."""
    waist = look.one("waist")
    if waist is None or len(waist.members) != 1:
        return None
    hem = look.beside(waist, "hem")
    if hem is None or len(hem.members) != 1 or look.piece(waist).intakes:
        return None
    parts = {"waist": waist.name, "waist_center": look.center_end(waist)}
    ends = {"hem": hem.name, "hem_center": look.center_end(hem)}
    return {**parts, **ends, "number": look.chance.randint(2, 3), "flare": look.mm(10, 50)}


def cowl(look: Look) -> Parameters | None:
    """A cowl in a front neck."""
    center = look.one("center_front")
    if center is None:
        return None
    neck = look.beside(center, "neck")
    if neck is None or len(neck.members) != 1:
        return None
    parts = {"center": center.name, "neck": neck.name, "neck_center": look.center_end(neck)}
    waist = look.beside(center, "waist")
    if waist is None or len(waist.members) != 1 or look.piece(center).intakes:
        return {**parts, "spread": "0 mm"}
    across = {"across": waist.name, "across_center": look.center_end(waist)}
    return {**parts, **across, "spread": look.mm(20, 60)}


FULLNESS: dict[str, Proposer] = {
    "slash_and_spread": slash_and_spread,
    "gather_edge": gather_edge,
    "pleats": pleats,
    "godet": godet,
    "tiers": tiers,
    "gores": gores,
    "cowl": cowl,
}
