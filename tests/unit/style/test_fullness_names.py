"""Every name that the steps of fullness give is made of the words of the vocabulary."""

from collections.abc import Iterator

import pytest

from notchbook.pattern import split_side
from notchbook.pattern.vocabulary import words_of
from support.fullness import Step, gather_step, pleats_step, spread_step
from support.yoke_skirt import BACK, FRONT, run, skirt_recipe, with_steps


def steps() -> Iterator[Step]:
    yield spread_step(across_opens="1 cm", across_taken_up="ease", from_distance="3 cm", to_distance="12 cm")
    yield gather_step(from_distance="3 cm", to_distance="12 cm", across_taken_up="gather")
    yield pleats_step(number=2, depth="2 cm")
    yield pleats_step(kind="box", number=1, first_distance="8 cm")
    yield pleats_step(kind="inverted", number=1, first_distance="8 cm")
    yield (
        "godet",
        "godet",
        {
            "sides": [
                {"edge": f"{panel}/side_seam", "hem_end": f"{panel}/hem_side"} for panel in (FRONT, BACK)
            ]
        },
    )
    yield ("tiers", "tiers", {"edges": [{"edge": f"{BACK}/hem", "center": f"{BACK}/hem_center"}]})


@pytest.mark.parametrize("step", list(steps()), ids=lambda step: str(step[0]))
def test_names_are_made_of_the_words_of_the_house(step: Step) -> None:
    done = run(with_steps(skirt_recipe(front_darts=0), step))
    for name in done.pattern.index:
        words = split_side(name)[0].replace(".", "/").split("/")[1:]
        assert all(words_of(word) for word in words), name
