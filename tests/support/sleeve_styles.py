"""Sleeves shaped by steps on the invented woman, each run once for all tests that look at it."""

from functools import cache
from typing import Any

from notchbook.body import MeasureSet
from notchbook.recipe import Recipe, Replay, add_step, replay
from support.sleeve_bodies import woman
from support.yoke_skirt import with_steps

Step = tuple[str, str, dict[str, Any]]

SLEEVE = "sleeve.sleeve"

PUFF: Step = ("puff_sleeve", "full", {})
BISHOP: Step = ("bishop_sleeve", "full", {})
BELL: Step = ("bell_sleeve", "full", {})
CAPPED: Step = ("cap_sleeve", "capped", {})
MUTTON: Step = ("leg_of_mutton_sleeve", "full", {})
TWO_PIECE: Step = ("two_piece_sleeve", "arm", {})
RAGLAN: Step = ("raglan_sleeve", "raglan", {})
KIMONO: Step = ("kimono_sleeve", "kimono", {})
GUSSET: Step = ("kimono_sleeve", "kimono", {"angle": 20, "depth": "4 cm", "gusset": "9 cm"})
PLACKET: Step = ("sleeve_placket", "placket", {})
CUFF: Step = ("cuff", "cuff", {})


def sleeve_style(
    steps: list[Step],
    measures: MeasureSet | None = None,
    top: dict[str, Any] | None = None,
    base: MeasureSet | None = None,
    **sleeve: Any,
) -> Replay:
    """Bodice and sleeve of a body with these steps; ``length="none"``: without a sleeve."""
    body = measures or woman()
    of = base or body
    recipe = add_step(Recipe("Sleeve"), "bodice", top or {}, base=of)
    if sleeve.get("length") != "none":
        recipe = add_step(recipe, "sleeve", {"fabric": "wool_dress", **sleeve}, base=of)
    return replay(with_steps(recipe, *steps, base=of), body)


@cache
def plain(length: str = "long") -> Replay:
    """The sleeve as it was drafted."""
    return sleeve_style([], length=length)


@cache
def puffed() -> Replay:
    """A short sleeve, spread at cap and hem."""
    return sleeve_style([PUFF], length="short")


@cache
def bishop() -> Replay:
    """A long sleeve gathered to its cuff, with a placket."""
    return sleeve_style([BISHOP, PLACKET, CUFF])


@cache
def belled() -> Replay:
    """A three quarter sleeve flared at its hem."""
    return sleeve_style([BELL], length="three_quarter")


@cache
def mutton() -> Replay:
    """A long sleeve, full above the elbow."""
    return sleeve_style([MUTTON])


@cache
def two_piece() -> Replay:
    """A top and an under sleeve."""
    return sleeve_style([TWO_PIECE])


@cache
def raglan() -> Replay:
    """A raglan on a bodice whose back shoulder is eased."""
    return sleeve_style([RAGLAN], top={"back_shoulder": "ease"}, fabric="shirting")


@cache
def kimono() -> Replay:
    """A cut-on sleeve, the bust dart at the shoulder."""
    return sleeve_style([KIMONO], top={"bust_dart": "shoulder"}, length="none")


@cache
def gusseted() -> Replay:
    """The same hanging closer, with a gusset."""
    return sleeve_style([GUSSET], top={"bust_dart": "shoulder"}, length="none")


def stopped_with(done: Replay) -> str:
    """The code of the refusal."""
    assert done.suspended is not None
    return done.suspended.error.code
