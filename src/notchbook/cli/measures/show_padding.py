"""The padding of dress forms, on the screen and as data."""

from typing import Any

from notchbook.app.bodies.padding_forms import written_layer
from notchbook.body.charts import LevelPlan, PaddingPlan, not_compared_sentences
from notchbook.body.charts.padding.level_plan import MOST_OVER
from notchbook.body.charts.padding.padding_level import girth_added
from notchbook.body.quantity_words import said_key
from notchbook.cli.measures.show_sets import remark_data, show_remarks, signed
from notchbook.cli.screen import Screen
from notchbook.units import LengthStyle


def show_choice(screen: Screen, plans: tuple[PaddingPlan, ...], style: LengthStyle) -> None:
    """Several forms side by side, the best first; nothing for a single one."""
    if len(plans) == 1:
        return
    rows = [
        (plan.form, _verdict(plan, style), style.text(plan.added) if plan.can_be_padded else "")
        for plan in plans
    ]
    screen.table(
        ("form", "can it be padded", "girths to add, together"), rows, numbers=("girths to add, together",)
    )
    screen.line()


def _verdict(plan: PaddingPlan, style: LengthStyle) -> str:
    unknown = f"; {', '.join(map(said_key, plan.unknown))} not compared" if plan.unknown else ""
    if plan.too_large:
        worst, *others = plan.too_large
        more = f", {len(others)} more" if others else ""
        return f"no: {said_key(worst.key)} {style.text(-worst.difference)} too large{more}"
    if plan.needs_larger_form:
        much = f"{len(plan.much)} of {len(plan.levels)} levels"
        return f"better a larger form, too much to lay on at {much}{unknown}"
    return f"yes, so far as known{unknown}" if unknown else "yes"


def show_plan(screen: Screen, plan: PaddingPlan, style: LengthStyle) -> None:
    """Whether the form will do, what to lay on it, and what the plan does not know."""
    screen.line(f"{plan.form} for {plan.client}, layers of {written_layer(plan.layer_thickness, style.unit)}")
    screen.line(f"Can it be padded: {_verdict(plan, style)}")
    screen.line()
    columns = ("level", "form", "client", "front", "back", "layers front", "layers back", "then", "short")
    screen.table(columns, [_level_cells(level, style) for level in plan.levels], numbers=columns[1:])
    screen.line()
    for sentence in not_compared_sentences(plan.not_compared):
        screen.line(sentence)
    _show_padding(screen, plan, style)
    for change in plan.lengths:
        words = signed(change.key, change.difference, style)
        screen.line(f"{said_key(change.key)} {words}: {change.advice}.")
    show_remarks(screen, plan.remarks, style)


def _show_padding(screen: Screen, plan: PaddingPlan, style: LengthStyle) -> None:
    if plan.order:
        screen.line(f"Pad in this order: {', '.join(map(said_key, plan.order))}.")
    if any(level.still_short for level in plan.levels):
        felt = style.text(girth_added(1.0, 1.0))
        screen.line(f"Fill what is short with thin felt: 1 mm all round adds {felt}, a strip of it less.")
    if plan.too_large:
        screen.line("Where the form is too large, padding cannot help.")
    by_share = [said_key(level.key) for level in plan.levels if level.has_layers and not level.by_arcs]
    if by_share:
        screen.line(f"Front and back by a usual share, no arcs measured: {', '.join(by_share)}.")
    if plan.order:
        screen.line("Thin each layer out toward the side seam and above and below its level; measure again")
        screen.line("over the cover before you trust it. Count the pins that go in and those that come out.")


def _level_cells(level: LevelPlan, style: LengthStyle) -> tuple[str, ...]:
    girths = (said_key(level.key), style.text(level.form), style.text(level.client))
    if level.fit == "pad":
        return (
            *girths,
            style.text(level.front),
            style.text(level.back),
            str(level.front_layers),
            str(level.back_layers),
            style.text(level.reached),
            style.text(level.still_short) if level.still_short else "",
        )
    over = f"{style.text(-level.difference)} over" if level.difference < -MOST_OVER else ""
    return (*girths, "", "", "", "", "fits" if level.fit == "fits" else "too large", over)


def padding_data(plan: PaddingPlan) -> dict[str, Any]:
    """A plan as data, mm."""
    return {
        "form": plan.form,
        "can_be_padded": plan.can_be_padded,
        "layer_thickness": plan.layer_thickness,
        "girths_added": round(plan.added, 6),
        "order": list(plan.order),
        "levels": [_level_data(level) for level in plan.levels],
        "lengths": [
            {
                "key": change.key,
                "form": change.form,
                "client": change.client,
                "difference": round(change.difference, 6),
                "advice": change.advice,
            }
            for change in plan.lengths
        ],
        "absent": list(plan.absent),
        "not_compared": [{"key": one.key, "lacking": one.lacking} for one in plan.not_compared],
        "main_girths_not_compared": list(plan.unknown),
        "larger_form_is_better": plan.needs_larger_form,
        "remarks": remark_data(plan.remarks),
    }


def _level_data(level: LevelPlan) -> dict[str, Any]:
    return {
        "key": level.key,
        "form": level.form,
        "client": level.client,
        "difference": round(level.difference, 6),
        "fit": level.fit,
        "front_thickness": round(level.front, 6),
        "back_thickness": round(level.back, 6),
        "front_layers": level.front_layers,
        "back_layers": level.back_layers,
        "reached": round(level.reached, 6),
        "still_short": round(level.still_short, 6),
        "by_arcs": level.by_arcs,
        "larger_half": level.larger_half,
        "half_too_large": round(level.half_too_large, 6),
        "grade": level.grade,
    }
