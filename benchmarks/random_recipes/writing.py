"""Writing a recipe at random as a hand would: look at the pattern, choose a step that fits, keep what runs.

A step that is refused on the body on which the recipe is written is told, and is not kept: a hand would read
the message and do something else.
"""

from __future__ import annotations

import traceback
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from random import Random
from typing import Final

from notchbook.body import MeasureSet
from notchbook.errors import HouseFault, NotchbookError
from notchbook.recipe import Recipe, Replay, add_step, replay
from random_recipes.closures import CLOSURES
from random_recipes.collars import COLLARS
from random_recipes.darts import DARTS
from random_recipes.edges import EDGES
from random_recipes.families import Parameters, Proposer
from random_recipes.fullness import FULLNESS
from random_recipes.lines import LINES
from random_recipes.look import Look
from random_recipes.pockets import POCKETS
from random_recipes.sleeves import SLEEVES
from random_recipes.traced import TRACED

PROPOSERS: Final[Mapping[str, Proposer]] = {
    **DARTS,
    **EDGES,
    **FULLNESS,
    **LINES,
    **POCKETS,
    **TRACED,
    **CLOSURES,
    **COLLARS,
    **SLEEVES,
}
"""For every step that is no block: what a hand could ask of it."""

_STRETCH: Final[Parameters] = {"across": "50 %", "along": "50 %"}

GARMENTS: Final[Mapping[str, tuple[tuple[str, Parameters], ...]]] = {
    "skirt": (("skirt", {}),),
    "bodice": (("bodice", {}),),
    "bodice and sleeve": (("bodice", {}), ("sleeve", {"fabric": "light_woven"})),
    "dress": (("dress", {}),),
    "torso": (("torso", {}),),
    "trousers": (("trousers", {}),),
    "gored skirt": (("gored_skirt", {}),),
    "circle skirt": (("circle_skirt", {}),),
    "stretch torso": (("stretch_torso", _STRETCH),),
    "leggings": (("leggings", _STRETCH),),
    "bodysuit": (("bodysuit", _STRETCH),),
}
"""From which blocks a recipe begins."""

FEWEST: Final = 3
MOST: Final = 12
"""Steps of a recipe, its blocks among them."""

TRIES: Final = 40
"""Looks at a pattern before a recipe stays as short as it is."""

TWICE: Final = frozenset(
    {"lining", "interlining", "waistband", "tiers", "unfold", "all_in_one_facing"}
    | {"fly", "contoured_waistband", "elastic_casing", "button_stand", "fused_facing"}
    | COLLARS.keys() - {"binding"}
    | SLEEVES.keys()
)
"""Steps that nobody takes twice in a garment."""


@dataclass(frozen=True)
class Asked:
    """One step that was tried, and the code of the refusal that it met; empty when it ran."""

    operation: str
    refused: str = ""


@dataclass(frozen=True)
class Written:
    """A recipe, its run on the body on which it was written, all that was tried, and the recipe on which the
    program broke, if it did."""

    run: Replay
    asked: tuple[Asked, ...] = ()
    broken: Recipe | None = None
    words: str = ""

    @property
    def recipe(self) -> Recipe:
        """What was written."""
        return self.run.recipe


def written(garment: str, base: MeasureSet, chance: Random) -> Written | None:
    """A recipe of 3 to 12 steps; None where the blocks themselves refuse the body."""
    run = _begun(garment, base)
    if run is None:
        return None
    wanted = chance.randint(FEWEST, MOST)
    asked: list[Asked] = []
    for _ in range(TRIES):
        if len(run.recipe.steps) >= wanted:
            break
        proposal = _proposal(run, chance)
        if proposal is None:
            continue
        recipe = run.recipe
        try:
            recipe = add_step(recipe, *proposal, base=base)
            after = replay(recipe, base, run)
            refusal = None if after.suspended is None else after.suspended.error
        except Exception as error:
            if isinstance(error, HouseFault) or not isinstance(error, NotchbookError):
                return Written(run, tuple(asked), recipe, last_words(error))
            refusal = error
        asked.append(Asked(proposal[0], "" if refusal is None else refusal.code))
        run = run if refusal is not None else after
    return Written(run, tuple(asked))


def last_words(error: Exception) -> str:
    """What broke and where, without any place of this machine."""
    frame = traceback.extract_tb(error.__traceback__)[-1]
    return f"{type(error).__name__}: {error} ({Path(frame.filename).name}, {frame.name})"


def _begun(garment: str, base: MeasureSet) -> Replay | None:
    recipe = Recipe(f"{garment} at random")
    try:
        for block, settings in GARMENTS[garment]:
            recipe = add_step(recipe, block, settings, base=base)
    except NotchbookError:
        return None
    run = replay(recipe, base)
    return None if run.suspended is not None else run


def _proposal(run: Replay, chance: Random) -> tuple[str, Parameters] | None:
    taken = {record.operation for record in run.recipe.steps}
    operation = chance.choice([name for name in PROPOSERS if name not in TWICE & taken])
    parameters = PROPOSERS[operation](Look(run.pattern, chance))
    return None if parameters is None else (operation, parameters)
