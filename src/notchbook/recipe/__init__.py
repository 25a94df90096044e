"""Recipes: steps as data, names that are kept, the ledger, and replay. Knows no garment."""

from notchbook.recipe.context import StepContext
from notchbook.recipe.definition import Change, Phase, StepDefinition, StepKind
from notchbook.recipe.editing import (
    add_step,
    change_step,
    move_step,
    rebind,
    remove_step,
    rename_step,
)
from notchbook.recipe.estimated_reads import estimated_reads, keys_read
from notchbook.recipe.ledger import LedgerEntry
from notchbook.recipe.measure_needs import MeasureNeeds, SometimesNeeded, needs_together
from notchbook.recipe.parameters import (
    AllowanceClass,
    AmountText,
    EdgeName,
    InnerDartName,
    IntakeName,
    MaterialWord,
    PieceName,
    PivotName,
    PlaceParameters,
    PointName,
    RecoveryText,
    StepParameters,
    StretchText,
    Word,
    names_in,
)
from notchbook.recipe.recipe import Recipe, StepRecord, Target
from notchbook.recipe.registry import all_definitions, definition, operation_sources
from notchbook.recipe.replay import Replay, replay
from notchbook.recipe.storage import (
    canonical_json,
    recipe_from_data,
    recipe_from_json,
    recipe_schema,
    recipe_to_data,
    recipe_to_json,
)
from notchbook.recipe.track import StepState, Suspension
from notchbook.recipe.usual_ease import UsualEase

__all__ = [
    "AllowanceClass",
    "AmountText",
    "Change",
    "EdgeName",
    "InnerDartName",
    "IntakeName",
    "LedgerEntry",
    "MaterialWord",
    "MeasureNeeds",
    "Phase",
    "PieceName",
    "PivotName",
    "PlaceParameters",
    "PointName",
    "Recipe",
    "RecoveryText",
    "Replay",
    "SometimesNeeded",
    "StepContext",
    "StepDefinition",
    "StepKind",
    "StepParameters",
    "StepRecord",
    "StepState",
    "StretchText",
    "Suspension",
    "Target",
    "UsualEase",
    "Word",
    "add_step",
    "all_definitions",
    "canonical_json",
    "change_step",
    "definition",
    "estimated_reads",
    "keys_read",
    "move_step",
    "names_in",
    "needs_together",
    "operation_sources",
    "rebind",
    "recipe_from_data",
    "recipe_from_json",
    "recipe_schema",
    "recipe_to_data",
    "recipe_to_json",
    "remove_step",
    "rename_step",
    "replay",
]
