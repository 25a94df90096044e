"""`notchbook rack`: the styles that come with the book, to run on any body."""

from typing import TYPE_CHECKING, Annotated, Any

import typer

from notchbook.cli.answer import answer
from notchbook.cli.options import AsJson
from notchbook.cli.screen import Screen

if TYPE_CHECKING:
    from notchbook.app.rack.styles import RackStyle
    from notchbook.recipe import StepRecord


def rack(
    number: Annotated[
        str, typer.Argument(metavar="[NUMBER]", help="Only this style, with its steps and its measures.")
    ] = "",
    as_json: AsJson = False,
) -> None:
    """List the styles of the rack, each a recipe to run on any body. They are invented.

    Example: notchbook rack

    Example: notchbook rack S-205
    """
    from notchbook.app.rack.styles import rack as whole_rack
    from notchbook.app.rack.styles import rack_style

    styles = (rack_style(number),) if number else whole_rack()

    def show(screen: Screen) -> None:
        if number:
            _show_style(screen, styles[0])
        else:
            rows = [(style.recipe.number, style.recipe.name, style.about) for style in styles]
            screen.table(("style", "", ""), rows)
        first = styles[0].recipe.number
        screen.next_steps(
            (
                f"notchbook draft {first} --measures FILE --out style.json",
                *([] if number else [f"notchbook rack {first}   (its steps and measures)"]),
            )
        )

    answer({"styles": [_style_data(style) for style in styles]}, show, as_json=as_json)


def _show_style(screen: Screen, style: "RackStyle") -> None:
    from notchbook.app.needs.of_steps import needs_of_recipe
    from notchbook.body import measure_entry

    screen.line(style.title)
    screen.line(style.about)
    screen.line()
    screen.table(("step", ""), [(step.slug, _step_words(step)) for step in style.recipe.steps])
    screen.line()
    rows = [
        (key, measure_entry(key).label, standing) for key, standing in needs_of_recipe(style.recipe).standings
    ]
    screen.table(("measure", "", ""), rows)
    screen.line()
    screen.line("What can be set of each step, with --set STEP.NAME=VALUE, and how it stands:")
    settable = [(step.slug, _settable(step)) for step in style.recipe.steps]
    screen.table(("step", ""), [(slug, words) for slug, words in settable if words])


def _step_words(step: Any) -> str:
    from notchbook.app.step_sentence import sentence
    from notchbook.recipe import definition

    made = definition(step.operation)
    words = sentence(made.sentence, step.parameters)
    return f"{made.title}: {words}" if words else made.title


def _settable(step: "StepRecord") -> str:
    """``waist_ease=2 cm, own_length as usual``: the names that can be set, each as it is kept."""
    from notchbook.app.settings import settable

    words = settable(step).items()
    return ", ".join(f"{name} as usual" if kept is None else f"{name}={kept}" for name, kept in words)


def _style_data(style: "RackStyle") -> dict[str, Any]:
    from notchbook.app.needs.of_steps import needs_of_recipe

    needs = needs_of_recipe(style.recipe)
    return {
        "number": style.recipe.number,
        "name": style.recipe.name,
        "about": style.about,
        "steps": [
            {"step": one.id, "operation": one.operation, "parameters": one.parameters}
            for one in style.recipe.steps
        ],
        "needed": list(needs.needed),
        "estimated": list(needs.estimated),
        "helpful": list(needs.helpful),
    }
