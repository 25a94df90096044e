"""Proposals for style lines, joining, truing and cut data."""

from __future__ import annotations

from random_recipes.families import Parameters, Proposer
from random_recipes.look import Look, Run


def cut_style_line(look: Look) -> Parameters | None:
    """A line from the side seam to the center, through front and back of one garment."""
    sides = [look.part_of(run) for run in look.both_panels("side_seam") if run.is_in_one_piece]
    lines = []
    share = round(look.chance.uniform(0.2, 0.4), 2)
    for side in sides:
        center = look.beside(side, "center_front", "center_back")
        if center is None or center.pieces != side.pieces:
            continue
        center = look.part_of(center)
        start = {"edge": side.name, "from_point": look.upper_end(side), "fraction": share}
        end = {"edge": center.name, "from_point": look.upper_end(center), "fraction": share}
        lines.append({"start": start, "end": end, "darts": _darts_across(look, side)})
    return {"lines": lines} if lines else None


def _darts_across(look: Look, *sides: Run) -> list[Parameters]:
    """The waist darts of skirt pieces, which a yoke takes in."""
    pieces = [look.piece(side) for side in sides]
    skirts = [one for one in pieces if not any("armhole" in edge.name for edge in one.outline)]
    darts = [one for piece in skirts for one in piece.intakes if one.kind == "dart" and "waist" in one.mouth]
    return [{"intake": one.name, "rest": "stays"} for one in darts]


def cut_all_round(look: Look) -> Parameters | None:
    """A line from the center over the side seam to the other center, below the darts or through them."""
    sides = [run for run in look.both_panels("side_seam") if run.is_in_one_piece]
    centers = [look.beside(side, "center_front", "center_back") for side in sides[:2]]
    first, last = (*centers, None, None)[:2]
    if first is None or last is None or first.pieces == last.pieces:
        return None
    start = look.upper_end(first)
    distance = look.mm(0.2 * look.length(first), 0.4 * look.length(first))
    crosses: list[Parameters] = [{"edge": first.name, "distance": distance}]
    crosses += [{"edge": sides[0].name}, {"edge": last.name}]
    return {"from_point": start, "crosses": crosses, "darts": _darts_across(look, *sides[:2])}


def center_seam(look: Look) -> Parameters | None:
    """A fold opened to a seam, or a center seam laid on the fold."""
    center = look.one("center_front", "center_back")
    if center is None:
        return None
    return {"center": center.name, "becomes": "seam" if center.kind == "fold" else "fold"}


def princess_seam(look: Look) -> Parameters | None:
    """A princess seam through the waist dart of a bodice."""
    dart = look.dart("waist")
    if dart is None:
        return None
    piece = look.pattern.carriers[dart.name]
    upper = [run for run in look.of_role("armhole", "shoulder") if run.pieces == (piece,)]
    centers = [run for run in look.of_role("center_front", "center_back") if run.pieces == (piece,)]
    if not upper or not centers:
        return None
    start = look.part_of(look.chance.choice(upper))
    asked: Parameters = {
        "center": centers[0].name,
        "start": [look.place(start, look.upper_end(start), 0.4, 0.6)],
    }
    bust = look.bust_point(piece)
    if bust is not None:
        asked["bust_point"] = bust
        darts = (one for one in look.pattern.pieces[piece].intakes if one.name.endswith("bust_dart"))
        closed = next(darts, None)
        asked["closed_dart"] = None if closed is None else closed.name
    return {**asked, "waist_dart": dart.name}


def join_pieces(look: Look) -> Parameters | None:
    """Two pieces that a line parted, joined again; or a straight seam sewn away."""
    pairs = [
        (seam.first[0].edge, seam.second[0].edge)
        for seam in look.pattern.seams.values()
        if len(seam.first) == len(seam.second) == 1 and "style_line" in seam.first[0].edge
    ]
    if not pairs:
        return None
    first, second = look.chance.choice(pairs)
    return {"first_edge": second, "second_edge": first}


def leave_away(look: Look) -> Parameters | None:
    """The parts above a line, or those above all lines: front and back of a slip are cut by one line each."""
    above = [name for name in look.pattern.pieces if name.split("@")[0].endswith("_above")]
    lines = sorted({name.split(".")[0] for name in above})
    if not lines:
        return None
    some = lines if look.chance.random() < 0.7 else [look.chance.choice(lines)]
    return {"pieces": [name for name in above if name.split(".")[0] in some]}


def panel_notches(look: Look) -> Parameters | None:
    """Notches where panels meet at a waist or a style line."""
    seams = [name for name in look.pattern.seams if "waist" in name or "style_line" in name]
    return {"seam": look.chance.choice(seams)} if seams else None


def declare_ease(look: Look) -> Parameters | None:
    """A little ease in a seam."""
    seam = look.seam()
    return None if seam is None else {"seam": seam, "ease": look.mm(-3, 5)}


def true_seam(look: Look) -> Parameters | None:
    """A seam trued at one end."""
    seam = look.seam()
    if seam is None:
        return None
    master, end = look.chance.choice(("first", "second")), look.chance.choice(("start", "end"))
    return {"seam": seam, "master": master, "end": end}


def true_junction(look: Look) -> Parameters | None:
    """The neck or hem drawn smooth across a shoulder or side seam."""
    seams = [name for name in look.pattern.seams if name.endswith(("/shoulder", "/side_seam"))]
    if not seams:
        return None
    return {"seam": look.chance.choice(seams), "end": look.chance.choice(("start", "end"))}


def true_notch(look: Look) -> Parameters | None:
    """A notch trued to its mate."""
    notches = [notch.name for notch in look.pattern.notches.values() if notch.seam is not None]
    return {"notch": look.chance.choice(notches)} if notches else None


def set_allowance(look: Look) -> Parameters | None:
    """An allowance of its own for an edge."""
    run = look.one("side_seam", "waist", "neck", "armhole", "shoulder", "inseam")
    return None if run is None else {"edges": [run.name], "width": look.mm(6, 20)}


def set_hem(look: Look) -> Parameters | None:
    """A hem of its own depth."""
    hems = look.both_panels("hem")
    return {"hems": [hem.name for hem in hems], "depth": look.mm(15, 40)} if hems else None


def zip_opening(look: Look) -> Parameters | None:
    """A zip in a side or center seam."""
    run = look.one("side_seam", "center_back")
    if run is None or run.kind == "fold":
        return None
    return {"edge": run.name, "from_point": look.upper_end(run), "length": look.mm(100, 180)}


def vent(look: Look) -> Parameters | None:
    """A vent at the lower end of a center seam."""
    run = look.one("center_back", "side_seam")
    if run is None or run.kind == "fold" or len(run.members) != 1 or "hem" not in look.lower_end(run):
        return None
    return {"edge": run.name, "hem_end": look.lower_end(run), "height": look.mm(100, 180)}


LINES: dict[str, Proposer] = {
    "cut_style_line": cut_style_line,
    "cut_all_round": cut_all_round,
    "center_seam": center_seam,
    "princess_seam": princess_seam,
    "join_pieces": join_pieces,
    "leave_away": leave_away,
    "panel_notches": panel_notches,
    "declare_ease": declare_ease,
    "true_seam": true_seam,
    "true_junction": true_junction,
    "true_notch": true_notch,
    "set_allowance": set_allowance,
    "set_hem": set_hem,
    "zip_opening": zip_opening,
    "vent": vent,
}
