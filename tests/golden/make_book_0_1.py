"""Makes the golden book of the first schema; run once, at the release of 0.1.

    python tests/golden/make_book_0_1.py

The book is invented. It is opened in the tests for ever, so it is never made anew: the program refuses to
replace it. What stands in it is written down beside it, by the version that made it.
"""

import json
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from integration.test_book_migration import facts
from notchbook.book import Book, Frozen, Settings
from support.books import ticking_clock

PATH = Path(__file__).with_name("book-0.1.sqlite")


def main() -> None:
    """Add a body, a block and a style; edit, undo, rename, retire; freeze and approve."""
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
        style = book.add("style", "S-104", "Gored skirt", '{"dart":20}')
        book.save(style.id, '{"dart":25}', 1, "move-dart", "closer to the side")
        book.save(style.id, '{"dart":30}', 2, "move-dart")
        book.undo(style.id, 3, "too far")
        book.rename(style.id, "Jupe à godets, Łódź", 4)
        frozen = Frozen(
            '{"waist":720}',
            '{"outline":[[0,0],[260,0],[260,600]]}',
            {"draft-skirt": 1, "move-dart": 1},
            (old.hash,),
        )
        made = book.freeze_revision(style.id, 5, frozen, "fits the form")
        book.approve(made.id, 6, "cut it", "Teo")
        other = book.add("style", "S-105", "Wrap skirt", "{}")
        book.retire(other.id, 1, "never cut")
        text = json.dumps(facts(book), indent=1, ensure_ascii=False)
        PATH.with_suffix(".json").write_text(f"{text}\n", encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
