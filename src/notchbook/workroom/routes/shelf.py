"""What the book holds, and which steps there are."""

from collections.abc import Mapping
from typing import Any

from fastapi import APIRouter

from notchbook.app.studio import StepChoice
from notchbook.recipe import StepKind, definition
from notchbook.workroom.answers.body import span_text
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.answers.shelf import Shelf, shelf
from notchbook.workroom.asked.amounts import written
from notchbook.workroom.reader import Reader, ReaderOf
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api")


class StepOffer(Answer):
    """A step that can be added: its form follows from ``form``, the JSON schema of its parameters.

    ``defaults`` are its own values, in the reader's unit; ``range_texts`` say, by parameter and choice, which
    range of lengths a choice stands for (a cloth for the ease that it takes); ``sided`` says that it may be
    done on one of the wearer's sides only; ``superseded_by`` names the step that serves in the place of an
    older one, which is not offered but has its form in recipes that have it.
    """

    operation: str
    title: str
    summary: str
    kind: StepKind
    sided: bool
    form: dict[str, Any]
    defaults: dict[str, Any]
    range_texts: dict[str, dict[str, str]]
    superseded_by: str


@router.get("/shelf")
def read_shelf(studio: StudioOf) -> Shelf:
    """All styles and bodies of the book."""
    return shelf(studio)


@router.get("/steps")
def read_steps(studio: StudioOf, reader: ReaderOf) -> tuple[StepOffer, ...]:
    """Every step that can be added to a style, blocks first."""
    return tuple(
        StepOffer(
            operation=choice.operation,
            title=choice.title,
            summary=choice.summary,
            kind=choice.kind,
            sided=_sided(choice),
            form=dict(choice.schema),
            defaults=_defaults(choice.schema, reader),
            range_texts=_range_texts(choice.schema, reader),
            superseded_by=choice.superseded_by,
        )
        for choice in studio.step_choices()
    )


def _sided(choice: StepChoice) -> bool:
    """A block drafts both sides, and a step of the whole garment runs when they are laid together."""
    return choice.kind != "block" and definition(choice.operation).phase != "whole"


def _defaults(form: Mapping[str, Any], reader: Reader) -> dict[str, Any]:
    own = {name: part["default"] for name, part in form["properties"].items() if "default" in part}
    return dict(written(form, own, reader))


def _range_texts(form: Mapping[str, Any], reader: Reader) -> dict[str, dict[str, str]]:
    """The ranges (mm) that the schema states beside a choice, in the reader's unit."""
    found: dict[str, dict[str, str]] = {}
    for name, part in form["properties"].items():
        ranges = part.get("ranges", {})
        if ranges:
            found[name] = {
                choice: span_text(reader.text(least), reader.text(most))
                for choice, (least, most) in ranges.items()
            }
    return found
