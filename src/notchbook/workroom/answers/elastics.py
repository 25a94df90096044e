"""The elastics of a style: beside the ease table, for they make a finished girth too."""

from notchbook.errors import NotchbookError
from notchbook.finish import ElasticCut, HouseTable, elastic_cuts
from notchbook.pattern import Elastic, Pattern
from notchbook.workroom.answers.form import Answer
from notchbook.workroom.reader import Reader


class ElasticLine(Answer):
    """One elastic: what it goes onto, what is left of it as a ring, and what is cut.

    ``of_text`` is the opening as sewn, or the girth of the body where ``of_body``; ``share_text`` is the ring
    as a share of that. ``times`` are cut.
    """

    name: str
    title: str
    of_body: bool
    of_text: str
    share_text: str
    ring_text: str
    cut_text: str
    width_text: str
    times: int


def elastic_lines(pattern: Pattern, house: HouseTable, reader: Reader) -> tuple[ElasticLine, ...]:
    """The elastics in the order of the pattern; none while the house table does not say how they are lapped,
    which the papers refuse in words."""
    try:
        cuts = elastic_cuts(pattern, house)
    except NotchbookError:
        return ()
    return tuple(_line(pattern.elastics[cut.name], cut, reader) for cut in cuts)


def _line(elastic: Elastic, cut: ElasticCut, reader: Reader) -> ElasticLine:
    return ElasticLine(
        name=cut.name,
        title=cut.title,
        of_body=elastic.girth is not None,
        of_text=reader.text(cut.ring / elastic.share),
        share_text=f"{elastic.share * 100.0:.3g} %",
        ring_text=reader.text(cut.ring),
        cut_text=reader.text(cut.length),
        width_text=reader.text(cut.width),
        times=cut.times,
    )
