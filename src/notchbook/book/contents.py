"""Texts under their hash: stored once, read back only when they are still what was stored."""

from sqlalchemy import select
from sqlalchemy.orm import Session

from notchbook.book.models import ContentRow
from notchbook.book.texts import check_text, digest
from notchbook.errors import BookError


def keep(session: Session, text: str) -> str:
    """Store a text if it is not there yet; its hash."""
    check_text(text, "content")
    key = digest(text)
    if session.scalar(select(ContentRow.hash).where(ContentRow.hash == key)) is None:
        session.add(ContentRow(hash=key, text=text))
        session.flush()
    return key


def text_of(session: Session, key: str) -> str:
    """The text with this hash; refused when it is gone or no longer gives its hash."""
    text = session.scalar(select(ContentRow.text).where(ContentRow.hash == key))
    if text is None or digest(text) != key:
        what = "is missing" if text is None else "was changed outside"
        raise BookError("book-text-damaged", hash=key, what=what)
    return text
