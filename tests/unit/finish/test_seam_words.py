"""The words of the sewing order, as a seamstress reads them: no two seams alike, none by its name."""

import re
from dataclasses import replace
from functools import cache

import pytest

from lower_sheets import lower_bodies
from notchbook.app.rack.styles import rack
from notchbook.finish.sewing import SewingLine, sewing_order
from notchbook.finish.sewing.seam_words import seam_word, titled
from notchbook.pattern import Pattern, spoken
from notchbook.pattern.resolve import expand
from notchbook.recipe import replay
from support.hand_skirt import hand_skirt
from support.sleeve_styles import raglan

RECIPES = {style.stem: style.recipe for style in rack()}
STYLES = sorted(RECIPES)

NO_WORDS = (
    r"_",
    r"\bstyle line\b",
    r"\b(front|back) (above|below)\b",
    r"\bwaist (left|right)\b",
    r"\bband (end|center)\b",
    r"\bupper (neck|fall)\b",
    r": (bound|outer|fall|upper|bag|facing|shield|stand end)$",
    r": (front|back) facing$",
)
"""Names that tell one thing from another in the pattern and are no words of the trade."""


@cache
def pattern(stem: str) -> Pattern:
    return replay(RECIPES[stem], dict(lower_bodies())["medium-92"]).pattern


def lines(stem: str) -> tuple[SewingLine, ...]:
    return sewing_order(pattern(stem)).lines


@pytest.mark.parametrize("stem", STYLES)
def test_no_two_seams_of_a_style_are_told_by_the_same_words(stem: str) -> None:
    made = pattern(stem)
    said = [spoken(name) for name in made.seams]
    assert len(said) == len(set(said))
    told = [line.text for line in lines(stem)]
    assert len(told) == len(set(told))


def test_two_lines_alike_would_be_seen() -> None:
    """The seam beside the back gore and that in its middle were both told as ``center back``."""
    told = [line.text for line in lines("six_gore_skirt")]
    assert "Sew the side back to the center back: gore seam" in told
    assert [text for text in told if text.endswith(": center back")] == [
        "Sew the center back, left to right, below the zip notch: center back"
    ]


@pytest.mark.parametrize("stem", STYLES)
def test_no_line_says_a_name_of_the_pattern_where_a_word_of_the_trade_belongs(stem: str) -> None:
    found = [line.text for line in lines(stem) for words in NO_WORDS if re.search(words, line.text)]
    assert found == []


@pytest.mark.parametrize(
    ("stem", "told"),
    [
        ("pleated_yoke_skirt", "Sew the back and front yoke waist facing to the back and front yoke: waist"),
        (
            "pleated_yoke_skirt",
            "Lay the 3 pleats on each side of the front, stitch them down as far as marked and baste them",
        ),
        ("pleated_yoke_skirt", "Sew the front pocket bag to the back pocket bag: round the bag"),
        ("pleated_yoke_skirt", "Sew the front yoke to the front: yoke seam"),
        ("princess_dress", "Sew the bodice center front to the bodice side front: princess seam"),
        ("leather_mini_skirt", "Sew the center front to the side front: panel seam"),
        (
            "leather_mini_skirt",
            "Tape the opening closed, center the zip behind it, stitch both sides and across at the notch.",
        ),
        ("tailored_trousers", "Sew the fly shield to the wearer's left front: fly edge"),
        ("gathered_blouse", "Set the sleeve into the armhole of the front"),
        ("tailored_jacket", "Set the under sleeve and top sleeve into the armhole of the back"),
        ("gathered_blouse", "Sew the stand collar to the inner stand collar: ends and upper edge"),
        (
            "work_shirt",
            "Lay the collar fall and undercollar between the inner collar stand and collar stand, right "
            "sides together, and sew their upper edges and ends in one",
        ),
    ],
)
def test_lines_are_said_as_the_workroom_says_them(stem: str, told: str) -> None:
    assert told in [line.text for line in lines(stem)]


@pytest.mark.parametrize("stem", ["stretch_dress", "bodysuit"])
def test_a_band_is_stretched_on_by_what_the_whole_neck_is_longer_than_the_whole_ring(stem: str) -> None:
    """Each piece is half of one that is cut whole, so neck and ring are twice as long as drawn."""
    made = pattern(stem)
    neck = next(seam for seam in made.seams.values() if seam.name == "neckband/neck")
    ring, body = (
        2.0 * sum(made.edges[name].path.length for use in run for name in expand(made, use.edge)[0])
        for run in (neck.first, neck.second)
    )
    line = next(line for line in lines(stem) if line.key == "neckband/neck")
    assert line.amount == pytest.approx(body - ring, abs=0.1)


def test_gathers_that_run_over_the_fold_are_told_for_the_whole_piece() -> None:
    """The back of the blouse is half drawn, its neck gathered from side to side; a shoulder by itself."""
    made = pattern("gathered_blouse")
    drawn = {
        one.mouth.rpartition("/")[2]: one.amount for one in made.intakes.values() if one.kind == "gather"
    }
    told = {line.text: line.amount for line in lines("gathered_blouse") if line.how == "gathered"}
    assert told["Run gathering threads along the neck of the back"] == pytest.approx(2.0 * drawn["neck"])
    assert told["Run gathering threads along the shoulder of the front"] == pytest.approx(drawn["shoulder"])


def test_what_is_eased_in_at_a_side_is_told_for_one_side() -> None:
    made = pattern("stretch_dress")
    front, back = (made.edges[f"stretch_torso.{name}/side_seam"].path.length for name in ("front", "back"))
    line = next(line for line in lines("stretch_dress") if line.text.endswith(": side seam"))
    assert line.amount == pytest.approx(front - back, abs=0.1)


def test_what_was_merged_still_names_every_edge() -> None:
    made = pattern("work_shirt")
    line = next(line for line in lines("work_shirt") if "between the inner collar stand" in line.text)
    sewn = {
        use.edge for word in ("fall", "upper_fall", "stand_end") for use in made.seams[f"collar/{word}"].first
    }
    assert sewn <= set(line.at)


def test_a_seam_that_runs_on_from_the_cap_to_the_neck_is_a_raglan_seam() -> None:
    told = [line.text for line in sewing_order(raglan().pattern).lines]
    assert [text.rpartition(": ")[2] for text in told if "raglan" in text] == ["raglan seam", "raglan seam"]
    assert not [text for text in told if text.startswith("Set the")]


@pytest.mark.parametrize(
    ("name", "allowance", "word"),
    [
        ("tiers/front_below_tier_1", "plain", "tier seam"),
        ("tiers/front_below_tier_1_center", "plain", "center of the tier"),
        ("tiers/side_seam_tier_2", "side", "side seam"),
        ("gores/side_front_gore_seam_1", "plain", "gore seam"),
        ("center/gored_skirt_center_back", "center_back", "center back"),
        ("facing/back_center_back", "center_back", "center back"),
        ("waist_facing/front_center", "center_back", "center front"),
        ("waist_facing/leg_center", "center_back", "center"),
        ("waistband/band_right", "waistband_center", "seam of the band"),
        ("lining/front_facing", "lining", "edge of the facing"),
        ("stand/front_facing", "facing_edge", "edge of the opening"),
        ("loops/below", "center_front", "center front"),
        ("pocket/front_flap_edge", "pocket_flap", "edge of the flap"),
        ("block/shoulder", "shoulder", "shoulder"),
        ("block/front_crotch_seam", "crotch", "front crotch seam"),
    ],
)
def test_what_tells_a_seam_from_others_in_the_pattern_is_left_out_of_its_word(
    name: str, allowance: str, word: str
) -> None:
    side = hand_skirt().seams["skirt/side_seam"]
    assert seam_word(hand_skirt(), replace(side, name=name, allowance_class=allowance)) == word


@pytest.mark.parametrize(
    ("titles", "told"),
    [
        (["front", "back"], "front and back"),
        (["back neck facing", "front neck facing"], "back and front neck facing"),
        (["bodice front facing", "bodice back facing", "yoke"], "bodice front and back facing and the yoke"),
        (["front yoke", "front"], "front yoke and front"),
        (["right waistband", "left waistband"], "right and left waistband"),
    ],
)
def test_what_titles_have_in_common_is_said_once(titles: list[str], told: str) -> None:
    assert titled(titles) == told


def test_an_elastic_cut_for_the_back_of_the_leg_is_not_laid_quarter_to_quarter() -> None:
    """The elastic of a leg lies flat in front and is stretched over the seat, as the note on it says."""
    said = {line.key: line.text for line in lines("bodysuit")}
    assert "flat over the front" in said["bodysuit/leg_elastic"]
    assert "quarter to quarter" in said["bodysuit/armhole_elastic"]
