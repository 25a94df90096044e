"""The step states every code with which trousers are refused, and no other."""

from house import ROOT
from measure_house import sources
from notchbook.blocks.trousers import STEP
from support.error_codes import raised_codes

BLOCKS = ROOT / "src" / "notchbook" / "blocks"


def test_the_refusals_of_numbers_and_pieces_are_those_that_the_step_states() -> None:
    here = {item.place for folder in ("legs", "trouser_pieces") for item in sources(BLOCKS / folder)}
    raised = {
        one.code
        for one in raised_codes(sources(ROOT / "src"))
        if one.place.rpartition(":")[0] in here and one.code.startswith("trousers-")
    }
    assert raised == set(STEP.refuses)
