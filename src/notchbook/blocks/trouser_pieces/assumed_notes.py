"""Findings on what the trousers took because nobody measured it."""

from collections.abc import Iterator

from notchbook.blocks.legs.lower_waist import crotch_lost
from notchbook.blocks.trouser_pieces.note_limits import CHECK
from notchbook.blocks.trouser_pieces.promises import Drafted
from notchbook.body import PopulationName, measure_entry
from notchbook.pattern import Finding, Measured, Severity, worded

_UNSEEN = 0.5
"""mm."""


def assumed_notes(drafted: Drafted, population: PopulationName | None) -> Iterator[Finding]:
    """Substitutes, a belly that nobody measured, the girth of an edge below the waist."""
    measures, names = drafted.measures, drafted.names
    for one in measures.substitutes:
        label = measure_entry(one.key).label_for(population)
        if one.error is None:
            yield worded(CHECK, "trousers-measure-assumed", Severity.NOTE, Measured(one.value), label=label)
        else:
            where = names.at("back", "crotch_seam")
            amount = Measured(one.value)
            yield worded(
                CHECK, "trousers-crotch-assumed", Severity.NOTE, amount, where=where, error=one.error
            )
    if measures.crotch_falls:
        seam = names.at("back", "crotch_seam")
        amount = Measured(drafted.given.crotch - measures.eases["crotch"].value)
        yield worded(CHECK, "trousers-crotch-as-it-falls", Severity.NOTE, amount, where=seam)
    yield from _yielded(drafted)
    waist, hip = measures.body["waist_girth"], measures.body["hip_girth"]
    if waist >= hip and "belly_girth" not in measures.body:
        amount = Measured(waist, hip)
        yield worded(CHECK, "trousers-belly-unknown", Severity.LOOK, amount, where=names.at("front", "waist"))
    if drafted.is_dropped and not measures.given.between:
        amount = Measured(drafted.given.waist - measures.eases["waist"].value)
        where = names.at("front", "waist")
        yield worded(CHECK, "trousers-edge-girth-between", Severity.NOTE, amount, where=where)


def _yielded(drafted: Drafted) -> Iterator[Finding]:
    """A crotch length that nobody took and that no lever reaches."""
    measures = drafted.measures
    off = drafted.given.crotch - (measures.given.crotch - crotch_lost(measures.drop))
    if measures.is_crotch_taken or measures.crotch_falls or abs(off) < _UNSEEN:
        return
    crotch = measures.body["crotch_length"]
    error = next((one.error for one in measures.substitutes if one.key == "crotch_length"), None)
    severity = Severity.NOTE if error is not None and abs(off) <= error else Severity.LOOK
    amount = Measured(crotch + off, crotch)
    where = drafted.names.at("back", "crotch_seam")
    yield worded(CHECK, "trousers-crotch-estimate-yields", severity, amount, where=where)
