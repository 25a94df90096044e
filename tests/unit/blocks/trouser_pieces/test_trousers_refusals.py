"""The step states every code with which trousers are refused, and no other."""

import pytest

from house import ROOT
from measure_house import sources
from notchbook.blocks.trouser_pieces.refusals import reachable
from notchbook.blocks.trousers import STEP
from notchbook.errors import DraftRefused
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


def test_a_refusal_without_its_fact_is_a_fault_and_no_seam_of_nothing() -> None:
    with pytest.raises(KeyError):
        reachable(DraftRefused("trousers-crotch-short", most=700.0))
