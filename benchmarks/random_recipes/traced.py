"""Proposals for pieces that are derived from others: facings, linings, bands, bags."""

from __future__ import annotations

from random_recipes.families import Parameters, Proposer
from random_recipes.look import Look, Run


def _in_order(runs: list[Run]) -> list[Run]:
    """Front before back, as a facing runs round."""
    return sorted(runs, key=lambda run: "back" in run.home)


def edges_in_order(runs: list[Run], look: Look) -> list[Parameters]:
    """Runs of neck or armhole, front before back, each with the end at which it is come to."""
    ordered = _in_order(runs)
    if not ordered:
        return []
    first, *rest = ordered
    edges: list[Parameters] = [{"edge": first.name, "starts_at": _far_end(first, look)}]
    for run in rest:
        far = _far_end(run, look)
        edges.append({"edge": run.name, "starts_at": run.end if far == run.start else run.start})
    return edges


def _far_end(run: Run, look: Look) -> str:
    """The end of a neck at its center, of an armhole under the arm."""
    return look.center_end(run) if run.role == "neck" else look.lower_end(run)


def facing(look: Look) -> Parameters | None:
    """A facing of neck or armhole."""
    edges = edges_in_order(_in_order(look.both_panels("neck", "armhole"))[:2], look)
    return {"edges": edges, "depth": look.mm(30, 60)} if edges else None


def all_in_one_facing(look: Look) -> Parameters | None:
    """Neck and armhole faced in one."""
    parts = []
    for neck in _in_order(look.both_panels("neck"))[:2]:
        shoulder, armhole = look.beside(neck, "shoulder"), look.beside(neck, "armhole")
        if shoulder is None or armhole is None:
            return None
        center = look.center_end(neck)
        parts.append(
            {"neck": neck.name, "center": center, "shoulder": shoulder.name, "armhole": armhole.name}
        )
    return {"parts": parts} if parts else None


def lining(look: Look) -> Parameters | None:
    """All pieces lined, their hems shorter."""
    pieces = look.cloth_pieces()
    hems = [run.name for run in look.of_role("hem") if set(run.pieces) <= set(pieces)]
    return {"pieces": pieces, "hems": hems} if pieces else None


def interfacing(look: Look) -> Parameters | None:
    """A piece interfaced."""
    pieces = list(look.pattern.pieces)
    return {"pieces": [look.chance.choice(pieces)], "trimmed": look.mm(0, 3)} if pieces else None


def fused_facing(look: Look) -> Parameters | None:
    """A facing that is cut on, fused up to its fold."""
    free = [
        edge.name
        for piece in look.pattern.pieces.values()
        for edge in piece.outline
        if edge.name.endswith("/facing_edge") and any(line.kind == "fold_line" for line in piece.lines)
    ]
    return {"facings": free} if free else None


def interlining(look: Look) -> Parameters | None:
    """Pieces interlined."""
    pieces = look.cloth_pieces()
    return {"pieces": pieces[:2]} if pieces else None


def pocket_bag(look: Look) -> Parameters | None:
    """Bags in the side seam."""
    sides = [run for run in look.both_panels("side_seam") if look.length(run) > 350.0]
    if len(sides) != 2:
        return None
    edges = [{"edge": one.name, "upper_end": look.upper_end(one)} for one in sides]
    return {"edges": edges, "distance": look.mm(30, 60), "opening": look.mm(140, 160)}


def waist_facing(look: Look) -> Parameters | None:
    """A facing of the waist."""
    waists = look.both_panels("waist")[:2]
    if not waists:
        return None
    parts = [{"edge": waist.name, "center": look.center_end(waist)} for waist in waists]
    return {"edges": parts, "depth": look.mm(40, 60)}


def waist_edges(look: Look) -> list[Parameters]:
    """The waist of a skirt or trousers that open at the center back, round to the center front."""
    waists = sorted(look.both_panels("waist"), key=lambda run: "front" in run.home)
    if len(waists) != 2 or not all("skirt" in run.home or "trousers" in run.home for run in waists):
        return []
    back, front = waists
    center = look.center_end(front)
    front_start = front.end if center == front.start else front.start
    return [
        {"edge": back.name, "starts_at": look.center_end(back)},
        {"edge": front.name, "starts_at": front_start},
    ]


def waistband(look: Look) -> Parameters | None:
    """A straight band for a waist that opens at the center back."""
    edges = waist_edges(look)
    return {"edges": edges, "depth": look.mm(25, 45)} if edges else None


def stretch_band(look: Look) -> Parameters | None:
    """A band on an opening of a stretch garment."""
    if not any(piece.stretches for piece in look.pattern.pieces.values()):
        return None
    opening = look.chance.choice(("neck", "waist", "hem", "armhole", "sleeve_hem", "leg_opening"))
    return {"opening": opening, "stretch": "100 %", "depth": look.mm(15, 30)}


TRACED: dict[str, Proposer] = {
    "facing": facing,
    "all_in_one_facing": all_in_one_facing,
    "lining": lining,
    "interfacing": interfacing,
    "fused_facing": fused_facing,
    "interlining": interlining,
    "pocket_bag": pocket_bag,
    "waist_facing": waist_facing,
    "waistband": waistband,
    "stretch_band": stretch_band,
}
