"""`notchbook client erase`: a client's data erased from the book."""

from dataclasses import replace
from typing import TYPE_CHECKING, Annotated, Any

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
from notchbook.units import counted

if TYPE_CHECKING:
    from notchbook.app.personal_data.erasures import ErasurePlan, ErasureReport, FrozenLine


def erase(
    number: ClientNumber,
    book: BookFile = None,
    with_styles: Annotated[
        bool, typer.Option("--with-styles", help="Erase the styles that are drafted for her too.")
    ] = False,
    styles_to: Annotated[
        str | None,
        typer.Option(
            "--styles-to",
            metavar="NUMBER",
            help="Styles for her go on for this body or form, such as M-101.",
            show_default=False,
        ),
    ] = None,
    keep_revisions: Annotated[
        bool,
        typer.Option(
            "--keep-revisions",
            help="Keep revisions that were made on her measures in styles that stay; they hold her measures.",
        ),
    ] = False,
    in_other_texts: InOtherTexts = False,
    also: FurtherSpellings = None,
    delete_copies: DeleteCopies = False,
    yes: Confirmed = False,
    as_json: AsJson = False,
) -> None:
    """Erase a client: her measures, their history, and what was made on them.

    Shows first what holds her data. It cannot be undone, and says what it does not reach.

    Example: notchbook client erase M-102 --with-styles --delete-copies --yes
    """
    from notchbook.app.personal_data.erasures import ErasureWish

    further = tuple(also or ())
    with open_studio(book) as studio:
        body = studio.find_client(number)
        plan = studio.erasure_plan(body, further)
        wish = ErasureWish(
            also_styles=with_styles,
            keep_frozen=keep_revisions,
            in_other_texts=in_other_texts,
            further=further,
            delete_copies=delete_copies,
        )
        if styles_to is not None:
            wish = replace(wish, other_body=studio.find_client(styles_to))

        def show_plan(screen: Screen) -> None:
            _show_plan(screen, plan, in_other_texts=in_other_texts)

        if not confirmed(show_plan, f"Erase {plan.number} {plan.name}?", yes=yes, as_json=as_json):
            not_done(_plan_data(plan), show_plan, as_json=as_json)
        with stop_noted():
            report = studio.erase_client(body, plan.version, wish)
            _tell(report, plan, as_json=as_json)


def _tell(report: "ErasureReport", plan: "ErasurePlan", *, as_json: bool) -> None:
    def show(screen: Screen) -> None:
        _show_report(screen, report, plan)

    answer(_report_data(report, plan), show, as_json=as_json, to_check=not report.whole)


def _show_plan(screen: Screen, plan: "ErasurePlan", *, in_other_texts: bool) -> None:
    lines, texts = counted(plan.journal_lines, "line"), counted(plan.texts, "text")
    screen.line(f"{plan.number} {plan.name}: {lines} of its journal, {texts}")
    for style in plan.styles:
        screen.line(f"a style for this body: {style.number} {style.name}")
    for frozen in (*plan.own_revisions, *plan.frozen):
        screen.line(f"a revision that holds these measures: {_revision(frozen)}")
    show_plan_of_mentions(screen, plan.mentions, in_other_texts=in_other_texts)
    show_copies(screen, plan.copies)
    _show_beyond(screen, plan)


def _show_report(screen: Screen, report: "ErasureReport", plan: "ErasurePlan") -> None:
    screen.line(f"erased: {', '.join(report.erased)}")
    for frozen in report.kept:
        screen.line(f"kept, with the measures in it: {_revision(frozen)}")
    show_changed(screen, report.changed)
    show_mentions(screen, report.mentions)
    show_copies(screen, report.copies)
    show_unclean(screen, clean=report.clean)
    _show_beyond(screen, plan)


def _show_beyond(screen: Screen, plan: "ErasurePlan") -> None:
    screen.line("Not reached from here:")
    for place in plan.beyond:
        screen.line(f"  {place}")


def _revision(frozen: "FrozenLine") -> str:
    approved = ", approved" if frozen.approved else ""
    return f"{frozen.number} revision {frozen.revision}{approved}"


def _plan_data(plan: "ErasurePlan") -> dict[str, Any]:
    return {
        "number": plan.number,
        "name": plan.name,
        "journal_lines": plan.journal_lines,
        "texts": plan.texts,
        "styles": [{"number": style.number, "name": style.name} for style in plan.styles],
        "revisions": [_revision_data(frozen) for frozen in (*plan.own_revisions, *plan.frozen)],
        "mentions": mention_data(plan.mentions),
        "copies": copy_data(plan.copies),
        "not_reached": list(plan.beyond),
    }


def _report_data(report: "ErasureReport", plan: "ErasurePlan") -> dict[str, Any]:
    return {
        "done": True,
        "erased": list(report.erased),
        "kept_revisions": [_revision_data(frozen) for frozen in report.kept],
        "changed": mention_data(report.changed),
        "mentions": mention_data(report.mentions),
        "copies": copy_data(report.copies),
        "clean": report.clean,
        "not_reached": list(plan.beyond),
    }


def _revision_data(frozen: "FrozenLine") -> dict[str, Any]:
    return {"number": frozen.number, "revision": frozen.revision, "approved": frozen.approved}
