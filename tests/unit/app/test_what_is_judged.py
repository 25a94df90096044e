"""Of a draft alone all its promises are asked; a garment with a band is judged as a garment as well."""

from notchbook.app.examining import subject_of
from support.yoke_skirt import run, skirt_recipe, with_steps, yoke_recipe

WAIST = (
    {"edge": "skirt.back/waist", "starts_at": "skirt.back/waist_center"},
    {"edge": "skirt.front/waist", "starts_at": "skirt.front/waist_side"},
)


def test_a_draft_is_a_block() -> None:
    subject = subject_of(run(skirt_recipe()))
    assert subject.is_block
    assert subject.promises == subject.expectations


def test_a_band_makes_it_a_garment_whose_shapes_are_still_as_drafted() -> None:
    subject = subject_of(run(with_steps(skirt_recipe(), ("waistband", "band", {"edges": WAIST}))))
    assert not subject.is_block
    assert subject.promises == subject.expectations


def test_after_a_step_that_shapes_only_what_is_kept_is_asked() -> None:
    subject = subject_of(run(yoke_recipe()))
    assert not subject.is_block
    assert len(subject.promises) < len(subject.expectations)
