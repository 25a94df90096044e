"""With what a style may begin: each block and each style of the rack, what it asks of a body, its picture."""

from collections import Counter
from typing import Any, Literal

from notchbook.app.block_families import BlockFamily, family_of, family_place
from notchbook.app.needs.garment_parameters import blocks, blocks_in_order
from notchbook.app.needs.of_steps import needs_of_block, needs_of_recipe
from notchbook.app.picturing_blocks import pictured_block
from notchbook.app.rack.styles import RackStyle, rack
from notchbook.body import MeasureSet, measure_entry
from notchbook.geometry import Point
from notchbook.pattern import Piece
from notchbook.pattern.names import instance_of
from notchbook.recipe import StepDefinition
from notchbook.workroom.answers.form import Answer, At, Named
from notchbook.workroom.answers.lines import at, path_text
from notchbook.workroom.reader import Reader

AskedStanding = Literal["taken", "estimated", "missing"]


class PicturePiece(Answer):
    """One piece of a picture in its own frame, mm, y up: its outline and what is drawn inside.

    ``block`` is the block in whose frame it lies, ``low`` and ``high`` are its box.
    """

    name: str
    block: str
    outline: str
    lines: tuple[str, ...]
    low: At
    high: At


class AskedMeasure(Answer):
    """A measure that a block asks for: how it stands with this body, its ± where it is an estimate.

    ``not_on_form`` says that the body is a dress form and a form has no such measure: it can neither be
    taken there nor estimated.
    """

    key: str
    said: str
    standing: AskedStanding
    error_text: str
    not_on_form: bool


class AskedOfBody(Answer):
    """What a beginning needs of this body.

    ``needed`` it cannot do without; for a ``substituted`` one that is missing it takes a stated figure of
    its own; ``helpful`` ones make it better.
    """

    needed: tuple[AskedMeasure, ...]
    substituted: tuple[AskedMeasure, ...]
    helpful: tuple[AskedMeasure, ...]


class BlockBeginning(AskedOfBody):
    """A block: what it is, its family, and what it needs of this body; ``with_blocks`` are drafted before it,
    in the same style."""

    block: str
    said: str
    family: BlockFamily
    summary: str
    with_blocks: tuple[Named, ...]


class RackBeginning(AskedOfBody):
    """A style of the rack: its number, its name, what it is, and what it needs of this body."""

    number: str
    said: str
    about: str


def beginnings(measures: MeasureSet, reader: Reader) -> tuple[BlockBeginning, ...]:
    """Every block as a beginning for this body, by family."""
    steps = sorted(blocks(), key=lambda step: family_place(step.operation))
    return tuple(_beginning(step, measures, reader) for step in steps)


def rack_beginnings(measures: MeasureSet, reader: Reader) -> tuple[RackBeginning, ...]:
    """Every style of the rack as a beginning for this body, by number."""
    return tuple(_from_rack(style, measures, reader) for style in rack())


def block_picture(block: str) -> tuple[PicturePiece, ...]:
    """The pieces of the block as it is pictured; empty for one that has no picture."""
    pattern = pictured_block(block)
    return () if pattern is None else tuple(map(_piece, pattern.pieces.values()))


def _beginning(step: StepDefinition[Any], measures: MeasureSet, reader: Reader) -> BlockBeginning:
    companions = blocks_in_order(step.operation)[:-1]
    needs = needs_of_block(step.operation, measures)
    return BlockBeginning(
        block=step.operation,
        said=_said(step),
        family=family_of(step.operation),
        summary=(step.parameters.__doc__ or "").strip().split("\n", 1)[0],
        with_blocks=tuple(Named(name=one.operation, said=_said(one)) for one in companions),
        needed=_asked(needs.needed, measures, reader),
        substituted=_asked(needs.estimated, measures, reader),
        helpful=_asked(needs.helpful, measures, reader),
    )


def _from_rack(style: RackStyle, measures: MeasureSet, reader: Reader) -> RackBeginning:
    needs = needs_of_recipe(style.recipe, measures)
    return RackBeginning(
        number=style.recipe.number,
        said=style.recipe.name,
        about=style.about,
        needed=_asked(needs.needed, measures, reader),
        substituted=_asked(needs.estimated, measures, reader),
        helpful=_asked(needs.helpful, measures, reader),
    )


def _said(step: StepDefinition[Any]) -> str:
    return step.title.removeprefix("Draft ")


def _asked(keys: tuple[str, ...], measures: MeasureSet, reader: Reader) -> tuple[AskedMeasure, ...]:
    return tuple(_measure(key, measures, reader) for key in keys)


def _measure(key: str, measures: MeasureSet, reader: Reader) -> AskedMeasure:
    found = measures.find(key) if measures.has(key) else None
    standing: AskedStanding = "missing"
    if found is not None:
        standing = "estimated" if found.status == "estimated" else "taken"
    error = None if found is None else found.error
    entry = measure_entry(key)
    return AskedMeasure(
        key=key,
        said=entry.label_for(measures.population).lower(),
        standing=standing,
        error_text="" if error is None else f"± {reader.text(error)}",
        not_on_form=measures.kind == "form" and not entry.on_form,
    )


def _piece(piece: Piece) -> PicturePiece:
    box = piece.bounds
    drafted = Counter(instance_of(edge.name) for edge in piece.outline)
    return PicturePiece(
        name=piece.name,
        block=drafted.most_common(1)[0][0],
        outline=path_text(piece.sew_line) + "Z",
        lines=tuple(path_text(line.path) for line in piece.lines),
        low=at(Point(box.min_x, box.min_y)),
        high=at(Point(box.max_x, box.max_y)),
    )
