"""What must be laid on a dress form, level by level, so that it has the measures of a client."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final

from notchbook.body.charts.comparing.waist_levels import at_level_of
from notchbook.body.charts.padding.length_changes import LengthChange, length_changes
from notchbook.body.charts.padding.level_plan import MOST_ADDED, MOST_LAYERS, LevelPlan, level_plan
from notchbook.body.charts.padding.not_compared import NotCompared, not_compared
from notchbook.body.charts.padding.padding_level import MAIN_GIRTHS, padding_levels
from notchbook.body.doubts.doubt import Doubt
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry
from notchbook.body.quantity_words import said_key
from notchbook.errors import InputError

LAYER_THICKNESS: Final = 5.0
"""mm of one layer of quilted wadding, as it lies pressed under the cover (common practice, no source; measure
your own: lay ten layers under a book)."""

LEAST_THICKNESS: Final = 0.5
MOST_THICKNESS: Final = 15.0
"""mm between which a layer of anything that forms are padded with lies (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class PaddingPlan:
    """The padding of one form for one client.

    ``levels`` stand from the neck down; ``order`` names those to be padded from the fullest on. ``lengths``
    is what cannot be padded but must be marked. ``not_compared`` are levels and lengths that one of the two
    lacks, and main girths that both lack. ``remarks`` say what makes the plan weaker.
    """

    form: str
    client: str
    layer_thickness: float
    levels: tuple[LevelPlan, ...]
    lengths: tuple[LengthChange, ...]
    not_compared: tuple[NotCompared, ...]
    remarks: tuple[Doubt, ...]

    @property
    def can_be_padded(self) -> bool:
        """Whether the form is nowhere larger than the client."""
        return not self.too_large

    @property
    def too_large(self) -> tuple[LevelPlan, ...]:
        """The levels at which the form is larger, the worst first."""
        found = [level for level in self.levels if level.fit == "too_large"]
        return tuple(sorted(found, key=lambda level: level.difference))

    @property
    def order(self) -> tuple[str, ...]:
        """The levels on which a whole layer is laid, from the fullest on."""
        found = [level for level in self.levels if level.has_layers]
        return tuple(level.key for level in sorted(found, key=lambda level: -level.difference))

    @property
    def absent(self) -> tuple[str, ...]:
        """The levels that were measured on one of the two only, or at waists tied elsewhere."""
        return tuple(one.key for one in self.not_compared if one.is_level and one.lacking != "both")

    @property
    def unknown(self) -> tuple[str, ...]:
        """The main girths that are not compared: without them nobody knows whether the form will do."""
        return tuple(one.key for one in self.not_compared if one.key in MAIN_GIRTHS)

    @property
    def much(self) -> tuple[str, ...]:
        """The levels at which more is to be laid on than holds its shape."""
        return tuple(level.key for level in self.levels if level.is_much)

    @property
    def needs_larger_form(self) -> bool:
        """Whether that is so at most of the levels that were compared."""
        return 2 * len(self.much) > len(self.levels)

    @property
    def added(self) -> float:
        """The girths that padding adds, all levels together, mm: how much work a form is."""
        return sum(level.difference for level in self.levels if level.fit == "pad")


def padding_plan(
    form: MeasureSet,
    client: MeasureSet,
    layer_thickness: float = LAYER_THICKNESS,
    front_shares: Mapping[str, float] | None = None,
) -> PaddingPlan:
    """What to lay on the form. ``layer_thickness`` mm; ``front_shares`` by key of a girth, 0 to 1.

    Where the front arc at a level is known on both, front and back follow from it; else the given share, else
    the usual one of ``levels.toml``. Refused: a thickness of no wadding (``padding-thickness``), a share
    outside 0 to 1 (``padding-share``), no girth known on both (``padding-nothing``).
    """
    if not LEAST_THICKNESS <= layer_thickness <= MOST_THICKNESS:
        raise InputError(
            "padding-thickness", given=layer_thickness, least=LEAST_THICKNESS, most=MOST_THICKNESS, where=""
        )
    for key, given in (front_shares or {}).items():
        if not 0.0 <= given <= 1.0:
            raise InputError("padding-share", key=key, share=given, where="")
    leveled = at_level_of(form, client)
    levels: list[LevelPlan] = []
    for key, level in padding_levels().items():
        if leveled.measures.find(key) is not None and client.find(key) is not None:
            share = (front_shares or {}).get(key)
            levels.append(level_plan(level, leveled.measures, client, layer_thickness, share))
    if not levels:
        raise InputError("padding-nothing", form=form.name, client=client.name, where="")
    plan = PaddingPlan(
        form.name,
        client.name,
        layer_thickness,
        tuple(levels),
        length_changes(leveled.measures, client),
        not_compared(form, client, leveled.measures),
        (*leveled.remarks, *_half_remarks(levels), *_estimate_remarks(levels)),
    )
    return replace(plan, remarks=(*_much_remarks(plan), *plan.remarks))


def _much_remarks(plan: PaddingPlan) -> list[Doubt]:
    if not plan.needs_larger_form:
        return []
    problem = InputError(
        "padding-much",
        form=plan.form,
        labels=tuple(map(said_key, plan.much)),
        layers=MOST_LAYERS,
        girth=MOST_ADDED,
        where="",
    )
    return [Doubt("check", plan.much, problem)]


def _half_remarks(levels: list[LevelPlan]) -> list[Doubt]:
    return [
        Doubt(
            "check",
            (level.key,),
            InputError(
                "padding-half-too-large",
                label=measure_entry(level.key).label,
                half=level.larger_half,
                by=level.half_too_large,
                whole="smaller" if level.fit == "pad" else "the same within the tape",
                where="",
            ),
        )
        for level in levels
        if level.half_to_tell
    ]


def _estimate_remarks(levels: list[LevelPlan]) -> list[Doubt]:
    return [
        Doubt(
            "check",
            (level.key,),
            InputError(
                "compare-estimated", label=measure_entry(level.key).label, error=level.error, where=""
            ),
        )
        for level in levels
        if level.error
    ]
