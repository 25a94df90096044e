"""What to lay on a dress form for a client, and which form of the book needs least, as the page shows it."""

from collections.abc import Sequence

from notchbook.app.bodies.padding_forms import FormPlan, written_layer
from notchbook.body.charts import LengthChange, LevelPlan, PaddingPlan, not_compared_sentences
from notchbook.body.charts.padding.level_plan import Fit
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.answers.quantities import (
    label_of,
    remarks_of,
    said_difference,
    said_keys,
    said_value,
)
from notchbook.workroom.answers.refusal import Refusal, refusal
from notchbook.workroom.reader import Reader

THINNEST_FELT = 1.0
"""mm of felt that lies evenly all round; for less a strip of it does (common practice, no source)."""


class LevelLine(Answer):
    """One level, from the neck down.

    ``fit``: pad, fits, or too_large; ``words`` say what is to be done there. Thicknesses stand in the
    reader's unit; ``form``, ``client``, ``front`` and ``back`` (mm)
    draw them. ``layers_front`` and ``layers_back`` are whole.
    """

    key: str
    label: str
    form: float
    client: float
    form_text: str
    client_text: str
    difference_text: str
    fit: Fit
    words: str
    front: float
    back: float
    front_text: str
    back_text: str
    layers_front: int
    layers_back: int
    reached_text: str
    grade: str


class LengthLine(Answer):
    """A length that differs: it is marked, not padded."""

    key: str
    label: str
    form_text: str
    client_text: str
    difference_text: str
    advice: str


class PlanAnswer(Answer):
    """The padding of one form for the client; ``order`` names the levels from the fullest on.

    ``not_compared`` are sentences: what the form, the client or both lack. ``larger_form_is_better``: more is
    to be laid on at most levels than holds its shape; a remark says so. ``by_share`` are the levels whose
    front and back follow from a usual share, since the arcs were not measured.
    """

    can_be_padded: bool
    levels: tuple[LevelLine, ...]
    order: tuple[str, ...]
    lengths: tuple[LengthLine, ...]
    by_share: tuple[str, ...]
    not_compared: tuple[str, ...]
    larger_form_is_better: bool
    remarks: tuple[Refusal, ...]


class FormLine(Answer):
    """A form of the book: ``plan`` is null, and ``words`` say why, where it cannot be held to the client."""

    id: int
    number: str
    name: str
    label_size: str
    words: str
    plan: PlanAnswer | None


class PaddingAnswer(Answer):
    """Every form of the book for one client, the one that needs least first."""

    client: str
    layer_text: str
    sentence: str
    forms: tuple[FormLine, ...]


def padding_answer(client: str, layer: float, plans: Sequence[FormPlan], reader: Reader) -> PaddingAnswer:
    """The answer in the reader's unit; ``plans`` stand in order, the best first."""
    return PaddingAnswer(
        client=client,
        layer_text=written_layer(layer, reader.unit),
        sentence=_sentence(client, plans),
        forms=tuple(_form(plan, reader) for plan in plans),
    )


def _sentence(client: str, plans: Sequence[FormPlan]) -> str:
    known = [(one, one.plan) for one in plans if one.plan is not None]
    if not known:
        return f"For {client}: no form of the book has a girth in common."
    first, plan = known[0]
    name = first.entry.name
    if not plan.can_be_padded:
        return f"For {client}: no form of the book can be padded; {name} is least too large."
    so_far = f", so far as known: {_not_compared(plan)}" if plan.unknown else ""
    if plan.needs_larger_form:
        return f"For {client}: better a larger form than any in the book; {name} is nearest{so_far}."
    if len(known) == 1:
        return f"For {client}: {name} can be padded{so_far}."
    return f"For {client}: of the forms in the book {name} needs least{so_far}."


def _not_compared(plan: PaddingPlan) -> str:
    return f"{', '.join(said_keys(plan.unknown))} not compared"


def _form(one: FormPlan, reader: Reader) -> FormLine:
    words = "" if one.problem is None else refusal(one.problem, reader).message
    if one.plan is not None:
        words = _verdict(one.plan, reader)
    return FormLine(
        id=one.entry.id,
        number=one.entry.number,
        name=one.entry.name,
        label_size=one.form.label_size,
        words=words,
        plan=None if one.plan is None else _plan(one.plan, reader),
    )


def _verdict(plan: PaddingPlan, reader: Reader) -> str:
    if plan.too_large:
        worst, *others = plan.too_large
        more = f", {len(others)} more" if others else ""
        return f"too large: {said_keys((worst.key,))[0]} by {reader.text(-worst.difference)}{more}"
    words = f"{reader.text(plan.added)} to add, all levels together" if plan.added else "fits as it is"
    if plan.needs_larger_form:
        words = f"better a larger form: {words}"
    return f"{words}; {_not_compared(plan)}" if plan.unknown else words


def _plan(plan: PaddingPlan, reader: Reader) -> PlanAnswer:
    return PlanAnswer(
        can_be_padded=plan.can_be_padded,
        levels=tuple(_level(level, reader) for level in plan.levels),
        order=said_keys(plan.order),
        lengths=tuple(_length(change, reader) for change in plan.lengths),
        by_share=said_keys(level.key for level in plan.levels if level.has_layers and not level.by_arcs),
        not_compared=not_compared_sentences(plan.not_compared),
        larger_form_is_better=plan.needs_larger_form,
        remarks=remarks_of(plan.remarks, reader),
    )


def _level(level: LevelPlan, reader: Reader) -> LevelLine:
    padded = level.fit == "pad"
    return LevelLine(
        key=level.key,
        label=label_of(level.key),
        form=level.form,
        client=level.client,
        form_text=said_value(level.key, level.form, reader),
        client_text=said_value(level.key, level.client, reader),
        difference_text=said_difference(level.key, level.difference, reader),
        fit=level.fit,
        words=_level_words(level, reader),
        front=level.front,
        back=level.back,
        front_text=reader.text(level.front) if padded else "",
        back_text=reader.text(level.back) if padded else "",
        layers_front=level.front_layers,
        layers_back=level.back_layers,
        reached_text=said_value(level.key, level.reached, reader) if padded else "",
        grade=level.grade,
    )


def _level_words(level: LevelPlan, reader: Reader) -> str:
    if level.fit == "fits":
        return "fits within two readings of the tape"
    if level.fit == "too_large":
        return f"cannot be padded: the form is {reader.text(-level.difference)} larger"
    short = _short_words(level, reader)
    if not level.front_layers and not level.back_layers:
        return f"no whole layer; {short}"
    front, back = (_layers(count) for count in (level.front_layers, level.back_layers))
    words = f"{front} in front, {back} behind, then {said_value(level.key, level.reached, reader)}"
    return f"{words}; {short}" if short else words


def _short_words(level: LevelPlan, reader: Reader) -> str:
    if not level.still_short:
        return ""
    felt = "a strip of thin felt" if level.felt_thickness < THINNEST_FELT else "thin felt all round"
    return f"{reader.text(level.still_short)} short: {felt}"


def _layers(count: int) -> str:
    return "no layer" if not count else "1 layer" if count == 1 else f"{count} layers"


def _length(change: LengthChange, reader: Reader) -> LengthLine:
    return LengthLine(
        key=change.key,
        label=label_of(change.key),
        form_text=said_value(change.key, change.form, reader),
        client_text=said_value(change.key, change.client, reader),
        difference_text=said_difference(change.key, change.difference, reader),
        advice=change.advice,
    )
