"""Makes the golden book of the second schema; run once, at the release of 0.2.

    python tests/golden/make_book_0_2.py

As the book of 0.1 (same invented entries), and besides: a size chart, a client who was put under a code, and
an entry that was erased. It is opened in the tests for ever, so it is never made anew: the program refuses to
replace it. What stands in it is written down beside it, by the version that made it.
"""

import json
import sys
from dataclasses import replace
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from integration.test_book_migration import facts
from notchbook.book import Book, Erasure, Frozen, Settings, StoredText, UnderCode
from support.books import ticking_clock

PATH = Path(__file__).with_name("book-0.2.sqlite")


def main() -> None:
    """Add a body, a block, a style and a chart; freeze and approve; a code, an erasure."""
    with Book.create(PATH, Settings("Ines", ticking_clock())) as book:
        body = book.add("measures", "M-101", "Form 40 (invented)", '{"hip":980,"waist":720}', note="by tape")
        book.save(body.id, '{"hip":982,"waist":720}', 1, "measure-again", "after lunch", "Teo")
        block = book.add("block", "B-101", "Skirt block", '{"draft":"skirt"}')
        old = book.freeze_revision(
            block.id,
            1,
            Frozen('{"waist":720}', '{"outline":[[0,0],[250,0],[250,600]]}', {"draft-skirt": 1}),
            "first",
        )
        book.approve(old.id, 2)
        book.add("chart", "C-101", "House chart (invented)", '{"sizes":["36","38"],"waist":[680,720]}')
        style = book.add("style", "S-104", "Gored skirt", '{"dart":20}')
        book.save(style.id, '{"dart":25}', 1, "move-dart", "closer to the side")
        book.save(style.id, '{"dart":30}', 2, "move-dart")
        book.undo(style.id, 3, "too far")
        made = book.freeze_revision(
            style.id,
            4,
            Frozen('{"waist":720}', '{"outline":[[0,0],[260,0],[260,600]]}', {"move-dart": 1}, (old.hash,)),
            "fits the form",
        )
        book.approve(made.id, 5, "cut it", "Teo")
        _put_under_code(book)
        _erase(book)
        text = json.dumps(facts(book), indent=1, ensure_ascii=False)
        PATH.with_suffix(".json").write_text(f"{text}\n", encoding="utf-8", newline="\n")


def _put_under_code(book: Book) -> None:
    client = book.add("measures", "M-102", "Rosa Q. (invented)", '{"name":"Rosa Q. (invented)","waist":700}')

    def reworded(stored: StoredText) -> str:
        return stored.text.replace("Rosa Q. (invented)", "K-102")

    book.put_under_code(UnderCode(client.id, 1, book.last_line(), reworded))


def _erase(book: Book) -> None:
    gone = book.add("measures", "M-103", "Ada T. (invented)", '{"waist":733}')
    erasure = Erasure({gone.id: 1}, seen=0)
    book.erase(replace(erasure, seen=book.last_line()))


if __name__ == "__main__":
    main()
