"""Whether a cutter's must agrees with the pieces that it is hung to."""

from collections.abc import Iterator, Sequence

from notchbook.errors import entry
from notchbook.errors.catalogue import fill, length_in_mm
from notchbook.finish import CutPiece
from notchbook.output.card import CutterCard
from notchbook.pattern import Finding, Severity


def compare_card(card: CutterCard, pieces: Sequence[CutPiece]) -> tuple[Finding, ...]:
    """What disagrees between a card and the cut pieces: pieces missing or too many, numbers, names,
    quantities, panels and totals. Nothing when they agree."""
    return tuple(_disagreements(card, pieces))


def _disagreements(card: CutterCard, pieces: Sequence[CutPiece]) -> Iterator[Finding]:
    on_card = [(group.material, row) for group in card.groups for row in group.rows]
    keys = [(material, row.piece) for material, row in on_card]
    wanted = {(told.material, piece.name): (piece, told) for piece in pieces for told in piece.quantities}
    for material, name in sorted(set(wanted) - set(keys)):
        yield _stop("card-piece-missing", name, material=material)
    for material, row in on_card:
        if (material, row.piece) not in wanted:
            yield _stop("card-piece-extra", row.piece, material=material)
            continue
        if keys.count((material, row.piece)) > 1:
            yield _stop("card-piece-twice", row.piece, material=material)
        piece, told = wanted[material, row.piece]
        if (row.number, row.title) != (piece.number, piece.title):
            yield _stop("card-name-differs", row.piece, card=row.title, wanted=piece.title)
        if (row.quantity, row.panels) != (told.text, told.panels):
            yield _stop("card-quantity-differs", row.piece, card=row.quantity, wanted=told.text)
    panels = sum(piece.panels for piece in pieces)
    if (card.piece_count, card.panels) != (len(pieces), panels):
        yield _stop("card-total-differs", None, card=card.panels, wanted=panels)


def _stop(code: str, piece: str | None, **facts: object) -> Finding:
    words = entry(code)
    facts["piece"] = piece or ""
    return Finding(
        check="card",
        code=code,
        severity=Severity.STOP,
        message=fill(words.message, facts, length_in_mm),
        piece=piece,
        suggestion=fill(words.next_step, facts, length_in_mm),
    )
