"""The nearest known name to one that is not known."""

from collections.abc import Iterable


def nearest_name(text: str, known: Iterable[str]) -> str | None:
    """The known name most like the text, or None when nothing is like it."""
    # Loaded only when a name is refused: the command line must start fast.
    from difflib import get_close_matches

    names = list(known)
    wanted = text[:60].lower()
    close = get_close_matches(wanted, names, n=1, cutoff=0.6)
    if close:
        return close[0]
    starting = [name for name in names if len(wanted) >= 3 and name.startswith(wanted)]
    return starting[0] if starting else None


def suggestion(text: str, known: Iterable[str]) -> str:
    """A sentence that offers the nearest name (``Did you mean hip_depth?``), or nothing."""
    name = nearest_name(text, known)
    return f"Did you mean {name}? " if name else ""
