"""What must be laid on a dress form at one level."""

import math
from dataclasses import dataclass, replace
from typing import Final, Literal

from notchbook.body.charts.comparing.tolerance import tolerance_of
from notchbook.body.charts.padding.padding_level import PaddingLevel, girth_added, thickness_for
from notchbook.body.measure_set import MeasureSet
from notchbook.body.measure_table import measure_entry

Fit = Literal["pad", "fits", "too_large"]
Half = Literal["", "front", "back"]

MOST_OVER: Final = 3.0
"""mm by which whole layers may end above the client's girth: a form that is too large spoils every fitting on
it, what is missing can still be laid on (common practice, no source)."""


MOST_LAYERS: Final = 6
MOST_ADDED: Final = 80.0
"""Layers on one half, and mm of girth, beyond which wadding shifts and rounds off the shape, so that a larger
form is better (common practice, no source)."""

LEAST_TOLD: Final = 1.0
"""mm; a tape shows whole millimeters (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class LevelPlan:
    """One level. ``difference`` is the client's girth minus the form's, mm.

    ``fit``: ``pad`` where something is laid on, ``fits`` where two readings of a tape would differ as much,
    ``too_large`` where the form is larger and nothing can be laid on. ``front`` and ``back`` are thicknesses
    in mm, ``front_layers`` and ``back_layers`` whole layers of wadding, ``reached`` the girth of the form
    with these layers, never more than MOST_OVER above the client's. ``by_arcs`` says that front and back
    follow from the arcs of both and not from a usual share (``grade``). ``half_too_large`` is by how many mm
    the ``larger_half`` of the form is larger than the client's by these arcs, although the girth is not.
    ``error`` is the ± where a girth is an estimate, else 0.
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
    larger_half: Half = ""
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
    def is_much(self) -> bool:
        """Whether more is to be laid on than holds its shape (MOST_LAYERS, MOST_ADDED)."""
        layers = max(self.front_layers, self.back_layers)
        return self.fit == "pad" and (layers > MOST_LAYERS or self.difference > MOST_ADDED)

    @property
    def has_layers(self) -> bool:
        """Whether a whole layer is laid on."""
        return self.front_layers + self.back_layers > 0

    @property
    def half_to_tell(self) -> bool:
        """Whether one half of the form is larger by more than may pass without a word.

        Where layers are laid on, it is told from LEAST_TOLD on, since the plan then departs from the arcs;
        where the girth fits, beyond what two readings may differ by.
        """
        return self.half_too_large > (LEAST_TOLD if self.fit == "pad" else measure_entry(self.key).repeat)

    @property
    def felt_thickness(self) -> float:
        """mm of felt that laid on all round would add what is still short."""
        return thickness_for(self.still_short) / 2


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
    arcs = _arc_difference(level, form, client) if share is None else None
    if base.fit != "too_large" and arcs is not None:
        half, by = _larger_half(arcs, difference)
        base = replace(base, larger_half=half, half_too_large=by)
    return base if base.fit != "pad" else _padded(base, level, arcs, layer, share)


def _larger_half(arcs: float, difference: float) -> tuple[Half, float]:
    """The half of the form that is larger than the client's, and by how many mm; none and 0."""
    front, back = -arcs, arcs - difference
    if max(front, back) <= 0.0:
        return "", 0.0
    return ("front", front) if front >= back else ("back", back)


def _padded(
    plan: LevelPlan, level: PaddingLevel, arcs: float | None, layer: float, share: float | None
) -> LevelPlan:
    if arcs is not None:
        # What the arcs would take away at one half cannot be taken away: all goes on the other.
        front_added, grade = min(max(arcs, 0.0), plan.difference), "from the arcs of both"
    elif share is None:
        front_added, grade = level.front_share * plan.difference, level.grade
    else:
        front_added, grade = share * plan.difference, "as given"
    front, back = thickness_for(front_added), thickness_for(plan.difference - front_added)
    front_layers, back_layers = whole_layers(front, back, layer)
    return replace(
        plan,
        front=front,
        back=back,
        front_layers=front_layers,
        back_layers=back_layers,
        reached=plan.form + girth_added(front_layers * layer, back_layers * layer),
        by_arcs=arcs is not None,
        grade=grade,
    )


def whole_layers(front: float, back: float, layer: float) -> tuple[int, int]:
    """Whole layers in front and behind for these thicknesses, mm.

    Together they come as near the wanted girth as they can without ending more than MOST_OVER above it. What
    is then too little or too much is shared, so that neither half is off by more than a layer.
    """
    wanted = (front + back) / layer
    total = round_half_up(wanted)
    if girth_added(total * layer, 0.0) - girth_added(front, back) > MOST_OVER:
        total -= 1
    in_front = min(max(round_half_up((total + (front - back) / layer) / 2), 0), total)
    return in_front, total - in_front


def round_half_up(value: float) -> int:
    """The nearest whole number; a half goes up."""
    return math.floor(value + 0.5)


def _arc_difference(level: PaddingLevel, form: MeasureSet, client: MeasureSet) -> float | None:
    if level.front_arc is None:
        return None
    on_form, on_client = form.find(level.front_arc), client.find(level.front_arc)
    return None if on_form is None or on_client is None else on_client.value - on_form.value
