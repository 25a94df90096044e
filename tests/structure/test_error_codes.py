"""Each refusal has its words, each word its refusal, and the facts that the words need are given."""

import re
import string
from functools import cache
from pathlib import Path

from house import ROOT
from measure_house import Source, read, sources
from notchbook.errors import Entry, catalogue
from support.error_codes import Raised, raised_codes, text_constants

SOURCE = sources(ROOT / "src")


def needed_facts(item: Entry) -> set[str]:
    """The facts that the templates of a message name."""
    names = set()
    for template in (item.message, item.next_step):
        for _text, name, _format, _conversion in string.Formatter().parse(template):
            if name is not None:
                names.add(re.split(r"[.\[]", name)[0])
    return names


def sentences(text: str) -> int:
    """How many sentences a text has: full stops, question and exclamation marks that end a word."""
    return len(re.findall(r"[.!?](?=\s|$)", text.strip()))


@cache
def raised_in_source() -> list[Raised]:
    return raised_codes(SOURCE)


def test_every_raised_code_is_in_the_catalogue() -> None:
    unknown = {raised.code: raised.place for raised in raised_in_source() if raised.code not in catalogue()}
    assert not unknown, f"codes without words in src/notchbook/errors/messages: {unknown}"


def test_every_message_is_used() -> None:
    used = text_constants(SOURCE)
    unused = [code for code in catalogue() if code not in used]
    assert not unused, f"messages that no code uses: {unused}"


def test_the_facts_of_a_message_are_given_where_it_is_raised() -> None:
    lacking = {}
    for raised in raised_in_source():
        if raised.is_open or raised.code not in catalogue():
            continue
        missing = needed_facts(catalogue()[raised.code]) - raised.facts
        if missing:
            lacking[raised.place] = (raised.code, sorted(missing))
    assert not lacking, f"facts that the words name and the raise does not give: {lacking}"


def test_every_message_explains_itself() -> None:
    short = [item.code for item in catalogue().values() if sentences(item.why) < 2]
    assert not short, f"help pages (why) of fewer than two sentences: {short}"
    wordless = [
        code for code, item in catalogue().items() if not sentences(item.message + " " + item.next_step)
    ]
    assert not wordless, f"messages that are not sentences: {wordless}"


def test_codes_are_kebab_case() -> None:
    odd = [code for code in catalogue() if not re.fullmatch(r"[a-z][a-z0-9]*(-[a-z0-9]+)+", code)]
    assert not odd, f"codes that are not of the form measure-missing: {odd}"


PLANTED = """
class Torn(NotchbookError): ...
def direct(): raise Torn("cloth-torn", where="sleeve")
def refuse(code, **facts): raise Torn(code, step="hem", **facts)
def stop(code): raise Torn(code, step="hem")
def branch(x): raise Torn("hem-up" if x else "hem-down", amount=x)
def caller():
    refuse("seam-open", amount=3)
    stop(code="seam-shut")
    refuse("seam-unknown", **rest)
class Room:
    def fail(self, code): refuse(code, room="Table")
    def use(self): self.fail("room-shut")
"""


def planted(folder: Path) -> Source:
    (folder / "planted.py").write_text(PLANTED)
    return read(folder / "planted.py")


def test_the_scan_sees_direct_raises_branches_and_helpers(tmp_path: Path) -> None:
    found = {
        raised.code: (sorted(raised.facts), raised.is_open) for raised in raised_codes([planted(tmp_path)])
    }
    assert found == {
        "cloth-torn": (["where"], False),
        "hem-up": (["amount"], False),
        "hem-down": (["amount"], False),
        "seam-open": (["amount", "step"], False),
        "seam-shut": (["step"], False),
        "seam-unknown": (["step"], True),
        "room-shut": (["room", "step"], False),
    }


def test_needed_facts_and_sentences() -> None:
    item = Entry("a-b", "The {edge.name} is {amount:length} long.", "See {keys[0]}.", "One. Two.", "units")
    assert needed_facts(item) == {"edge", "amount", "keys"}
    assert sentences("It is 0.5 mm too long. Walk it again!") == 2
