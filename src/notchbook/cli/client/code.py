"""`notchbook client code`: a client's measures under a code."""

from typing import TYPE_CHECKING, Annotated

import typer

from notchbook.cli.answer import answer
from notchbook.cli.client.confirming import confirmed, not_done
from notchbook.cli.client.showing import (
    copy_data,
    mention_data,
    show_changed,
    show_copies,
    show_mentions,
    show_plan_of_mentions,
    show_unclean,
)
from notchbook.cli.client.words import (
    BookFile,
    ClientNumber,
    Confirmed,
    DeleteCopies,
    FurtherSpellings,
    InOtherTexts,
    open_studio,
)
from notchbook.cli.options import AsJson
from notchbook.cli.screen import Screen
from notchbook.cli.stopping import stop_noted

if TYPE_CHECKING:
    from notchbook.app.personal_data.codes import CodeReport


def code(
    number: ClientNumber,
    book: BookFile = None,
    wanted: Annotated[
        str | None,
        typer.Option(
            "--code",
            metavar="CODE",
            help="The code; the one that is free when not given.",
            show_default=False,
        ),
    ] = None,
    in_other_texts: InOtherTexts = False,
    also: FurtherSpellings = None,
    delete_copies: DeleteCopies = False,
    yes: Confirmed = False,
    as_json: AsJson = False,
) -> None:
    """Put a code in the stead of a client's name, in old versions and revisions too.

    Shows first where her name stands. It cannot be undone: who is behind the code is for you to write down.

    Example: notchbook client code M-102 --in-other-texts --yes
    """
    from notchbook.app.personal_data.codes import CodeWish

    with open_studio(book) as studio:
        body = studio.open_body(studio.find_client(number))
        further = tuple(also or ())
        chosen = wanted or studio.free_code(body.id)
        found = studio.name_stands_in(body.id, further, chosen)

        def plan(screen: Screen) -> None:
            screen.line(
                f"{body.number} {body.measures.name} becomes {chosen}, in all versions and revisions."
            )
            show_plan_of_mentions(screen, found, in_other_texts=in_other_texts)

        if not confirmed(plan, f"Put {chosen} in the stead of the name?", yes=yes, as_json=as_json):
            looked_at = {"number": body.number, "code": chosen, "mentions": mention_data(found)}
            not_done(looked_at, plan, as_json=as_json)
        wish = CodeWish(chosen, in_other_texts, further, delete_copies)
        with stop_noted():
            report = studio.keep_under_code(body.id, body.version, wish)
            _tell(body.number, report, as_json=as_json)


def _tell(number: str, report: "CodeReport", *, as_json: bool) -> None:
    def show(screen: Screen) -> None:
        screen.line(f"{number} is kept as {report.code}.")
        show_changed(screen, report.changed)
        show_mentions(screen, report.mentions)
        show_copies(screen, report.copies)
        show_unclean(screen, clean=report.clean)

    data = {
        "done": True,
        "number": number,
        "code": report.code,
        "changed": mention_data(report.changed),
        "mentions": mention_data(report.mentions),
        "copies": copy_data(report.copies),
        "clean": report.clean,
    }
    left = bool(report.mentions or report.copies or not report.clean)
    answer(data, show, as_json=as_json, to_check=left)
