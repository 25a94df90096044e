"""Making a recipe that shows a fault as short as it can be: steps are left out while the fault stays."""

from __future__ import annotations

from notchbook.body import MeasureSet
from notchbook.errors import HouseFault, NotchbookError
from notchbook.recipe import Recipe, remove_step, replay
from random_recipes.judging import untold


def is_faulty(recipe: Recipe, measures: MeasureSet) -> bool:
    """Whether running it breaks the program, or gives an outline that crosses itself untold."""
    try:
        return bool(untold(replay(recipe, measures)))
    except HouseFault:
        return True
    except NotchbookError:
        return False
    except Exception:
        return True


def shrunk(recipe: Recipe, measures: MeasureSet) -> Recipe:
    """The recipe without every step that the fault does not need, tried from the last to the first."""
    for step in reversed([record.id for record in recipe.ordered()]):
        shorter = remove_step(recipe, step)
        if is_faulty(shorter, measures):
            recipe = shorter
    return recipe
