"""Proposals for collars, lapels, hoods and bindings."""

from __future__ import annotations

from typing import Final

from random_recipes.families import Parameters, Proposer
from random_recipes.look import Look, Run
from random_recipes.traced import edges_in_order

_WHOLE_OPENINGS: Final = ("neck", "armhole", "waist", "hem", "sleeve_hem", "leg_opening")


def _neck(look: Look) -> list[Parameters]:
    """The neck from the center front round to the center back; from the front edge where there is a stand."""
    wholes: dict[str, Run] = {}
    for run in sorted(look.both_panels("neck"), key=lambda one: -len(one.members)):
        wholes.setdefault(run.home, run)
    necks = edges_in_order(list(wholes.values())[:2], look)
    if len(necks) != 2:
        return []
    top = _stand_top(look, necks[0]["starts_at"])
    return [{"edge": top.name, "starts_at": _other_end(top, necks[0]["starts_at"])}, *necks] if top else necks


def _stand_top(look: Look, center: str) -> Run | None:
    """The upper edge of a button stand that ends at the center of the neck."""
    tops = (run for run in look.of_role("lap_top") if center in run.ends)
    return next(tops, None)


def _other_end(run: Run, end: str) -> str:
    return run.start if end == run.end else run.end


def _on_neck(look: Look) -> Parameters | None:
    """The neck, the stand told apart as a hand would: that much of it lies before the center."""
    neck = _neck(look)
    if not neck:
        return None
    top = _stand_top(look, neck[1]["starts_at"])
    extension = "0 mm" if top is None else f"{look.length(top):.1f} mm"
    return {"neck": neck, "extension": extension}


def _in_layers(look: Look) -> Parameters | None:
    """The neck, and how upper collar and undercollar are cut."""
    at = _on_neck(look)
    if at is None:
        return None
    undercollar = look.chance.choice(("straight", "bias"))
    return {**at, "undercollar": undercollar, "interfaced": look.chance.random() < 0.7}


def flat_collar(look: Look) -> Parameters | None:
    """A collar that lies flat, or stands a little."""
    at = _in_layers(look)
    if at is None:
        return None
    shape = {
        "front": look.chance.choice(("pointed", "round")),
        "opens": look.chance.choice(("front", "back")),
    }
    return {**at, **shape, "width": look.mm(45, 90), "overlap": look.mm(10, 60), "lean": look.mm(-10, 20)}


def stand_collar(look: Look) -> Parameters | None:
    """A collar that only stands."""
    at = _on_neck(look)
    if at is None:
        return None
    shape = {"front": look.chance.choice(("round", "square")), "opens": look.chance.choice(("front", "back"))}
    return {**at, **shape, "height": look.mm(25, 50), "rise": look.mm(5, 20), "overlap": look.mm(0, 20)}


def shirt_collar(look: Look) -> Parameters | None:
    """A stand and a fall."""
    at = _in_layers(look)
    if at is None:
        return None
    height = look.chance.randint(25, 35)
    sizes = {"stand": f"{height} mm", "fall": look.mm(height + 8, height + 20), "overlap": look.mm(12, 20)}
    return {**at, **sizes, "rise": look.mm(6, 16), "point": look.mm(55, 90), "lean": look.mm(0, 25)}


def roll_collar(look: Look) -> Parameters | None:
    """Stand and fall in one."""
    at = _in_layers(look)
    if at is None:
        return None
    height = look.chance.randint(20, 35)
    sizes = {"stand": f"{height} mm", "fall": look.mm(height + 10, height + 25)}
    front = look.chance.choice(("pointed", "round"))
    return {**at, **sizes, "front": front, "point": look.mm(55, 90), "lean": look.mm(0, 25)}


def _lapel(look: Look) -> Parameters | None:
    """The neck and the front edge of a stand, or of a center front that is a seam."""
    neck = _neck(look)
    front = next((run for run in look.runs if neck and run.name == neck[0]["edge"]), None)
    edge = None if front is None else look.beside(front, "lap", "center_front")
    if edge is None or edge.kind == "fold":
        return None
    height = look.chance.randint(25, 35)
    sizes = {"stand": f"{height} mm", "fall": look.mm(height + 10, height + 20), "lapel": look.mm(65, 100)}
    return {"neck": neck, **sizes, "edge": edge.name, "breaks": look.mm(140, 260)}


def notched_lapel(look: Look) -> Parameters | None:
    """A lapel with a notch."""
    at = _lapel(look)
    if at is None:
        return None
    shape = {"slope": look.chance.choice((0.0, 10.0, 20.0)), "notch": look.chance.choice((60.0, 75.0, 90.0))}
    return {**at, **shape, "gorge": look.mm(35, 60), "top": look.mm(30, 45), "end": look.mm(30, 42)}


def shawl_collar(look: Look) -> Parameters | None:
    """Collar and lapel in one with the front."""
    return _lapel(look)


def hood(look: Look) -> Parameters | None:
    """A hood of two or three panels."""
    at = _on_neck(look)
    if at is None:
        return None
    return {**at, "panels": look.chance.choice(("two", "three")), "middle": look.mm(70, 110)}


def binding(look: Look) -> Parameters | None:
    """An opening bound: named by one word, or edge by edge."""
    sizes: Parameters = {"width": look.mm(5, 12), "fold": look.chance.choice(("double", "single"))}
    if look.chance.random() < 0.5:
        return {"opening": look.chance.choice(_WHOLE_OPENINGS), **sizes}
    edges = _neck(look)
    return {"edges": edges, **sizes} if edges else None


COLLARS: dict[str, Proposer] = {
    "binding": binding,
    "flat_collar": flat_collar,
    "hood": hood,
    "notched_lapel": notched_lapel,
    "roll_collar": roll_collar,
    "shawl_collar": shawl_collar,
    "shirt_collar": shirt_collar,
    "stand_collar": stand_collar,
}
