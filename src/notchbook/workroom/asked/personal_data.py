"""A code or an erasure as the page asks for it."""

from typing import Annotated

from pydantic import Field

from notchbook.app.personal_data.codes import CodeWish
from notchbook.app.personal_data.erasures import ErasureWish
from notchbook.workroom.asked.form import Expected, Text

Spellings = Annotated[tuple[Text, ...], Field(max_length=20)]


class PutUnderCode(Expected):
    """The code in the stead of her name; ``further`` are spellings that are looked for as well."""

    code: Text
    in_other_texts: bool = False
    further: Spellings = ()
    delete_copies: bool = False

    def wish(self) -> CodeWish:
        """The wish for the app."""
        return CodeWish(self.code, self.in_other_texts, self.further, self.delete_copies)


class EraseClient(Expected):
    """Erase her; styles for her go too, or go on for ``other_body``.

    ``confirm`` is her number or her name as she has typed it: what cannot be undone is not asked for by a
    slip of another program.
    """

    confirm: Text
    also_styles: bool = False
    other_body: int | None = None
    keep_frozen: bool = False
    in_other_texts: bool = False
    further: Spellings = ()
    delete_copies: bool = False

    def wish(self) -> ErasureWish:
        """The wish for the app."""
        return ErasureWish(
            also_styles=self.also_styles,
            other_body=self.other_body,
            keep_frozen=self.keep_frozen,
            in_other_texts=self.in_other_texts,
            further=self.further,
            delete_copies=self.delete_copies,
        )
