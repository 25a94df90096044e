"""What must be laid on a dress form at one level."""

import math
from dataclasses import dataclass
from typing import Final, Literal

from notchbook.body.charts.comparing.tolerance import tolerance_of
from notchbook.body.charts.padding.padding_level import PaddingLevel, girth_added, thickness_for
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry

Fit = Literal["pad", "fits", "too_large"]

MOST_OVER: Final = 3.0
"""mm by which whole layers may end above the client's girth: a form that is too large spoils every fitting on
it, what is missing can still be laid on (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class LevelPlan:
    """One level. ``difference`` is the client's girth minus the form's, mm.

    ``fit``: ``pad`` where something is laid on, ``fits`` where two readings of a tape would differ as much,
    ``too_large`` where the form is larger and nothing can be laid on. ``front`` and ``back`` are thicknesses
    in mm, ``front_layers`` and ``back_layers`` whole layers of wadding, ``reached`` the girth of the form
    with these layers, never more than MOST_OVER above the client's. ``by_arcs`` says that front and back
    follow from the arcs of both and not from a usual share (``grade``); ``half_too_large`` is then by how
    many mm one half of the form is larger than the client's, although the girth is smaller. ``error`` is the
    ± where a girth is an estimate, else 0.
    """

    key: str
    form: float
    client: float
    difference: float
    fit: Fit
    front: float = 0.0
    back: float = 0.0
    front_layers: int = 0
    back_layers: int = 0
    reached: float = 0.0
    half_too_large: float = 0.0
    by_arcs: bool = False
    grade: str = ""
    error: float = 0.0

    @property
    def left_over(self) -> float:
        """mm by which the girth with whole layers still lies off the client's; above 0: too small."""
        return self.client - self.reached

    @property
    def still_short(self) -> float:
        """mm of girth that whole layers leave missing at a level to be padded; 0 up to MOST_OVER."""
        return self.left_over if self.fit == "pad" and self.left_over > MOST_OVER else 0.0

    @property
    def felt_thickness(self) -> float:
        """mm of felt that laid on all round would add what is still short."""
        return thickness_for(self.still_short) / 2

    @property
    def even_thickness(self) -> float:
        """The thickness in mm that laid on evenly all round would give the client's girth; 0 if too large."""
        return thickness_for(max(self.difference, 0.0)) / 2


def level_plan(
    level: PaddingLevel, form: MeasureSet, client: MeasureSet, layer: float, share: float | None
) -> LevelPlan:
    """The plan at a level whose girth both have; ``share`` goes before arcs and usual share."""
    on_form, on_client = form.get(level.key), client.get(level.key)
    difference = on_client.value - on_form.value
    tolerance = measure_entry(level.key).repeat
    base = LevelPlan(
        key=level.key,
        form=on_form.value,
        client=on_client.value,
        difference=difference,
        fit="pad" if difference > tolerance else "fits" if difference >= -tolerance else "too_large",
        reached=on_form.value,
        error=tolerance_of(measure_entry(level.key), on_form, on_client)
        if "estimated" in (on_form.status, on_client.status)
        else 0.0,
    )
    return base if base.fit != "pad" else _padded(base, level, form, client, layer, share)


def _padded(
    plan: LevelPlan,
    level: PaddingLevel,
    form: MeasureSet,
    client: MeasureSet,
    layer: float,
    share: float | None,
) -> LevelPlan:
    arcs = _arc_difference(level, form, client)
    by_arcs = share is None and arcs is not None
    if share is None and arcs is not None:
        # What the arcs would take away at one half cannot be taken away: all goes on the other.
        front_added, grade = min(max(arcs, 0.0), plan.difference), "from the arcs of both"
    elif share is None:
        front_added, grade = level.front_share * plan.difference, level.grade
    else:
        front_added, grade = share * plan.difference, "as given"
    front, back = thickness_for(front_added), thickness_for(plan.difference - front_added)
    front_layers, back_layers = whole_layers(front, back, layer)
    return LevelPlan(
        key=plan.key,
        form=plan.form,
        client=plan.client,
        difference=plan.difference,
        fit="pad",
        front=front,
        back=back,
        front_layers=front_layers,
        back_layers=back_layers,
        reached=plan.form + girth_added(front_layers * layer, back_layers * layer),
        half_too_large=max(-(arcs or 0.0), (arcs or 0.0) - plan.difference, 0.0) if by_arcs else 0.0,
        by_arcs=by_arcs,
        grade=grade,
        error=plan.error,
    )


def whole_layers(front: float, back: float, layer: float) -> tuple[int, int]:
    """Whole layers in front and behind for these thicknesses, mm.

    Together they come as near the wanted girth as they can without ending more than MOST_OVER above it; then
    the front takes its share of them, to the nearest whole, and the back the rest.
    """
    wanted = (front + back) / layer
    total = round_half_up(wanted)
    if girth_added(total * layer, 0.0) - girth_added(front, back) > MOST_OVER:
        total -= 1
    in_front = round_half_up(total * front / (front + back)) if total else 0
    return in_front, total - in_front


def round_half_up(value: float) -> int:
    """The nearest whole number; a half goes up."""
    return math.floor(value + 0.5)


def _arc_difference(level: PaddingLevel, form: MeasureSet, client: MeasureSet) -> float | None:
    if level.front_arc is None:
        return None
    on_form, on_client = form.find(level.front_arc), client.find(level.front_arc)
    return None if on_form is None or on_client is None else on_client.value - on_form.value
