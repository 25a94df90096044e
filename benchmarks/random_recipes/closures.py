"""Proposals for stands, flies, bands, belts, strips and other closures."""

from __future__ import annotations

from random_recipes.families import Parameters, Proposer
from random_recipes.look import Look, Run
from random_recipes.traced import waist_edges


def button_stand(look: Look) -> Parameters | None:
    """Buttons down the center front or back."""
    center = look.one("center_front", "center_back")
    if center is None:
        return None
    at = [{"center": center.name, "top": look.upper_end(center)}]
    facing, holes = (
        look.chance.choice(("cut_on", "separate", "none")),
        look.chance.choice(("across", "along")),
    )
    return {"centers": at, "facing": facing, "holes": holes, "button": look.mm(10, 25)}


def _opening(look: Look, *roles: str) -> Run | None:
    """A seam that can be left open."""
    seams = [run for run in look.of_role(*roles) if run.kind != "fold"]
    return look.chance.choice(seams) if seams else None


def button_loops(look: Look) -> Parameters | None:
    """Loops down the upper part of a center seam."""
    run = _opening(look, "center_back", "center_front")
    if run is None:
        return None
    at = {"edge": run.name, "top": look.upper_end(run)}
    return {**at, "length": look.mm(80, 200), "button": look.mm(8, 14)}


def fly(look: Look) -> Parameters | None:
    """A fly in the front crotch seam, or in a center front seam."""
    seams = [run for run in look.of_role("crotch_seam", "center_front") if run.kind != "fold"]
    run = next((one for one in seams if "front" in one.home), None)
    if run is None:
        return None
    over = look.chance.choice(("left", "right"))
    asked: Parameters = {"edge": run.name, "top": look.upper_end(run), "over": over}
    notch = next((name for name in look.pattern.notches if name.endswith("front/crotch_notch")), None)
    if notch is not None and look.chance.random() < 0.6:
        return {**asked, "notch": notch}
    return {**asked, "length": look.mm(120, 180), "width": look.mm(32, 45)}


def seat_seam(look: Look) -> Parameters | None:
    """Cloth to let out in the center back of trousers."""
    seams = look.of_role("crotch_seam", "center_back")
    run = next((one for one in seams if one.kind != "fold" and "back" in one.home), None)
    if run is None:
        return None
    place = {"edge": run.name, "from_point": look.upper_end(run), "distance": look.mm(60, 160)}
    return {"until": place}


def contoured_waistband(look: Look) -> Parameters | None:
    """A curved band for a waist that opens at the center back."""
    edges = waist_edges(look)
    if not edges:
        return None
    cut_in = look.chance.choice(("one", "two", "three"))
    return {"edges": edges, "depth": look.mm(30, 70), "cut_in": cut_in}


def belt(look: Look) -> Parameters | None:
    """A belt round the waist."""
    if look.one("waist") is None:
        return None
    end, holes = look.chance.choice(("pointed", "square")), look.chance.choice((0, 3, 5))
    return {"width": look.mm(25, 60), "end": end, "holes": holes}


def belt_loops(look: Look) -> Parameters | None:
    """Loops for a belt on a waist."""
    edges = waist_edges(look)
    return {"edges": edges, "belt": look.mm(25, 50), "first": look.mm(40, 90)} if edges else None


def elastic_casing(look: Look) -> Parameters | None:
    """Elastic in the waist."""
    if look.one("waist") is None:
        return None
    made, share = look.chance.choice(("cut_on", "separate")), look.chance.choice((0.85, 0.9, 0.95))
    return {"made": made, "elastic": look.mm(10, 40), "share": share}


def tie(look: Look) -> Parameters | None:
    """Ties, loose or caught in a seam."""
    run = look.one("center_back", "side_seam")
    caught = run is not None and look.chance.random() < 0.6
    places = [look.place(run)] if run is not None and caught else []
    return {"places": places, "length": look.mm(300, 800), "width": look.mm(10, 40)}


def strap(look: Look) -> Parameters | None:
    """Straps from the front neck over the shoulder to the back neck."""
    necks = sorted(look.both_panels("neck")[:2], key=lambda run: "back" in run.home)
    if len(necks) != 2:
        return None
    front, back = ({**look.place(neck, look.upper_end(neck), 0.1, 0.8)} for neck in necks)
    asked: Parameters = {"front": front, "back": back, "width": look.mm(6, 20)}
    waist, bust = look.beside(necks[1], "waist"), look.bust_point(necks[0].pieces[0])
    if waist is None or bust is None or look.chance.random() < 0.3:
        return {**asked, "length": look.mm(300, 450)}
    return {**asked, "bust_point": bust, "waist": look.center_end(waist)}


def hook_and_eye(look: Look) -> Parameters | None:
    """A hook at the end of a band, or at the top of a seam that opens."""
    ends = sorted(look.of_role("left_end", "right_end"), key=lambda run: run.role)
    if len(ends) == 2:
        hook, eye = ({"edge": one.name, "from_point": one.start, "fraction": 0.5} for one in ends)
        return {"hook": hook, "eye": eye}
    run = _opening(look, "center_back", "side_seam")
    if run is None:
        return None
    at = {"edge": run.name, "from_point": look.upper_end(run), "distance": look.mm(3, 10)}
    return {"hook": at, "eye": at, "kind": look.chance.choice(("hook_and_eye", "press_stud"))}


def hem_slit(look: Look) -> Parameters | None:
    """A slit at the lower end of a seam."""
    run = _opening(look, "side_seam", "center_back")
    if run is None or "hem" not in look.lower_end(run):
        return None
    return {"edge": run.name, "hem_end": look.lower_end(run), "height": look.mm(80, 250)}


CLOSURES: dict[str, Proposer] = {
    "belt": belt,
    "belt_loops": belt_loops,
    "button_loops": button_loops,
    "button_stand": button_stand,
    "contoured_waistband": contoured_waistband,
    "elastic_casing": elastic_casing,
    "fly": fly,
    "seat_seam": seat_seam,
    "hem_slit": hem_slit,
    "hook_and_eye": hook_and_eye,
    "strap": strap,
    "tie": tie,
}
