"""Notes that say the same of many places are one note, and nothing graver is folded."""

from dataclasses import replace

from notchbook.app.finding_words import message_in
from notchbook.app.folded_notes import folded
from notchbook.pattern import Finding, Severity
from notchbook.units import LengthStyle

EASED = [
    Finding("seam-walks", code, Severity.NOTE, "Eased.", where=seam, measured=amount, names=(f"{seam}/edge",))
    for code, seam, amount in (
        ("seam-eased", "bodice/shoulder", 6.0),
        ("seam-stretched", "tailored/forearm_seam", 17.0),
        ("seam-eased", "collar/outer", 1.3),
    )
]


def blunted(piece: str, corner: str) -> Finding:
    facts = (("corner", corner), ("piece", piece))
    return Finding("finish", "corner-blunted", Severity.NOTE, "Cut off.", names=(corner,), facts=facts)


def test_all_declared_ease_is_one_note_in_the_place_of_the_first() -> None:
    other = Finding("names", "sleeve-pitch", Severity.NOTE, "A pitch.")
    told = folded([other, EASED[0], other, EASED[1], EASED[2]])
    assert [note.code for note in told] == ["sleeve-pitch", "seams-eased", "sleeve-pitch"]
    assert told[1].names == ("bodice/shoulder", "tailored/forearm_seam", "collar/outer")
    said = "3 seams are eased in or stretched on as declared, at most {}: tailored, forearm seam."
    assert message_in(told[1], LengthStyle("cm")) == said.format("1.7 cm")
    assert message_in(told[1], LengthStyle("mm")) == said.format("17 mm")


def test_one_note_alone_is_told_as_it_is() -> None:
    assert folded(EASED[:1]) == (EASED[0],)


def test_what_would_spoil_cloth_is_never_folded() -> None:
    stops = [replace(one, code="seam-second-longer", severity=Severity.STOP) for one in EASED]
    looks = [replace(one, severity=Severity.LOOK) for one in EASED]
    assert folded([*stops, *looks]) == (*stops, *looks)


def test_notches_that_are_marked_are_one_note_and_so_are_labels() -> None:
    """A slip bound all round has twelve: none of them asks anything of her alone."""
    marked = [replace(blunted("Front", name), code="notch-marked") for name in "abc"]
    over = [replace(blunted(piece, piece), code="label-over-lines") for piece in ("Strap", "Front binding")]
    told = folded([marked[0], over[0], *marked[1:], over[1]])
    assert [note.message for note in told] == [
        "3 notches are marked, not slit, where the seam allowance is too narrow: front.",
        "The labels of the strap and front binding lie over other lines.",
    ]
    assert told[0].names == ("a", "b", "c")


def test_a_note_that_keeps_no_title_is_called_by_the_name_of_its_piece() -> None:
    over = [
        Finding("label-fits", "label-over-lines", Severity.NOTE, "Over.", piece=piece)
        for piece in ("stand.front", "straps.strap")
    ]
    (told,) = folded(over)
    assert told.message == "The labels of the front and strap lie over other lines."


def test_sharp_corners_are_counted_with_their_pieces() -> None:
    (told,) = folded([blunted("Under sleeve", "a"), blunted("Under sleeve", "b"), blunted("Front", "c")])
    assert told.code == "corners-blunted"
    assert told.message == "3 sharp corners are cut off square, of under sleeve and front."
    assert told.names == ("a", "b", "c")
