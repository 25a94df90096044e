"""What the papers say of a draft: measures used, settings, ease table; and pieces titled by their block."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import replace
from typing import Any, Final

from notchbook.app.amount_words import amount_in_words
from notchbook.app.eases.ease_rows import EaseRow, ease_table
from notchbook.app.eases.ease_words import changed_words
from notchbook.app.eases.row_words import row_words
from notchbook.body import PopulationName, measure_entry, measure_table, plain_key
from notchbook.body.quantity_words import measure_text, quantity_with_error, said_key
from notchbook.finish import CutPiece, ElasticCut
from notchbook.output.paper_info import DraftedFrom, PaperEase, PaperTrim
from notchbook.recipe import Recipe, Replay, StepRecord, definition, keys_read
from notchbook.recipe.parameters import holds_amount, read_amount
from notchbook.units import LengthStyle

_BLOCK: Final = "block"
_UNIT_SIGNS: Final = {"deg": "°"}
"""How the unit of a plain number is written; amounts hold their own."""
_SELF: Final = "self"
_ANY_CLOTH: Final = "fabric"
"""What a block calls the cloth of its self where it was not told which."""


def drafted_from(run: Replay, style: LengthStyle) -> DraftedFrom:
    """Measures that the steps read, in the order of the table, how each block was set, and the ease table."""
    measures, read = run.measures, set(keys_read(run))
    order = list(measure_table())
    names = [name for name in measures.values if plain_key(name) in read]
    return DraftedFrom(
        measures=tuple(
            (said_key(name, measures.population), measure_text(name, measures.values[name], style))
            for name in sorted(names, key=lambda name: (order.index(plain_key(name)), name))
        ),
        settings=tuple(_settings(record, style) for record in _blocks(run.recipe)),
        eases=tuple(
            paper_ease(row, style, measures.population) for row in ease_table(run) if not row.is_left_away
        ),
    )


def paper_ease(row: EaseRow, style: LengthStyle, population: PopulationName | None = None) -> PaperEase:
    """A line of the ease table as it is read, in the words for this population."""
    body = style.text(row.body)
    if row.error is not None:
        body = quantity_with_error(measure_entry(row.measure), row.body, row.error, style)
    return PaperEase(
        name=row_words(row.name, population),
        body=body,
        ease=style.text(row.shown_ease(style)),
        pattern="gone" if row.pattern is None else style.text(row.pattern),
        finished="gone" if row.finished is None else style.text(row.finished),
        usual="" if row.usual is None else " to ".join(style.text(ease) for ease in row.usual),
        remark=changed_words(row, style),
    )


def materials_of(run: Replay) -> dict[str, str]:
    """The cloth behind each material; the one that a block was told stands for a mere ``fabric``."""
    named = [
        str(record.parameters["fabric"]) for record in _blocks(run.recipe) if record.parameters.get("fabric")
    ]
    found = dict(run.pattern.materials)
    if named and found.get(_SELF) == _ANY_CLOTH:
        found[_SELF] = _value(named[-1])
    return found


def trims_of(elastics: Iterable[ElasticCut], style: LengthStyle) -> tuple[PaperTrim, ...]:
    """What is cut besides the pieces: ``leg elastic: cut 2 × 62.0 cm``."""
    return tuple(
        PaperTrim(
            f"{one.title}: cut {one.times} × {style.text(one.length)}",
            f"{style.text(one.width)} wide, {style.text(one.length - one.ring)} of it lapped",
        )
        for one in elastics
    )


def titled_by_block(pieces: Iterable[CutPiece], recipe: Recipe) -> tuple[CutPiece, ...]:
    """The pieces, those that another piece is titled like named after their block too: ``Bodice, Back``."""
    found = tuple(pieces)
    slugs = [record.slug for record in _blocks(recipe)]
    titles = Counter(piece.title.lower() for piece in found)
    return tuple(_titled(piece, slugs) if titles[piece.title.lower()] > 1 else piece for piece in found)


def _titled(piece: CutPiece, slugs: list[str]) -> CutPiece:
    slug = piece.name.split(".", 1)[0]
    block = slug.replace("_", " ").capitalize()
    if slug not in slugs or piece.title.lower().startswith(block.lower()):
        return piece
    return replace(piece, title=f"{block}, {piece.title}")


def _blocks(recipe: Recipe) -> tuple[StepRecord, ...]:
    return tuple(record for record in recipe.steps if definition(record.operation).kind == _BLOCK)


def _settings(record: StepRecord, style: LengthStyle) -> str:
    """``Sleeve: fabric shirting, length long``: what was chosen, and what was settled when it was drafted; a
    length in the reader's unit, shares of a measure as they stand."""
    step = definition(record.operation)
    fields = step.parameters.model_json_schema()["properties"]
    others = step.drafted_with
    chosen = {
        name: value for name, value in record.parameters.items() if value is not None and name not in others
    }
    words = ", ".join(
        f"{name.replace('_', ' ')} {_setting(value, fields[name], style)}" for name, value in chosen.items()
    )
    return f"{record.slug.replace('_', ' ').capitalize()}: {words}"


def _setting(value: Any, field: dict[str, Any], style: LengthStyle) -> str:
    if holds_amount(field):
        amount = read_amount(str(value))
        if not amount.measures:
            return style.text(amount.evaluate(lambda _: 0.0))
        if any(term.unit is not None for term in amount.terms):
            return amount_in_words(amount.text, style.unit)
    return f"{_value(value)}{_UNIT_SIGNS.get(field.get('unit', ''), '')}"


def _value(value: Any) -> str:
    return str(value).replace("_", " ")
