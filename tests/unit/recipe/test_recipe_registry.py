"""Operations are found by name, those of the house and those of other packages."""

import sys
from collections.abc import Iterator
from importlib.metadata import EntryPoint
from pathlib import Path
from string import Formatter

import pytest

from notchbook.errors import HouseFault
from notchbook.pattern import sewn_length
from notchbook.recipe import all_definitions, definition, operation_sources, registry, replay
from support.plugin import installed
from support.yoke_skirt import BACK, FORM_A, run, skirt_recipe, with_steps

PLUGIN = Path(__file__).parents[3] / "examples" / "plugin"


@pytest.fixture(autouse=True)
def fresh_registry() -> Iterator[None]:
    """What a test lets the registry find is forgotten after it."""
    yield
    operation_sources.cache_clear()
    definition.cache_clear()


def test_the_form_of_a_step_is_the_schema_of_its_parameters_and_made_once() -> None:
    step = definition("waistband")
    assert step.form == step.parameters.model_json_schema()
    assert step.form is step.form


def test_every_operation_of_the_house_is_a_file_of_its_name() -> None:
    house = {name: where for name, where in operation_sources().items() if where.startswith("notchbook.")}
    assert {"skirt", "cut_style_line", "waistband"} <= set(house)
    for name, where in house.items():
        package, kind = where.rsplit(".", 1)[0], definition(name).kind
        assert where.endswith(f".{name}:STEP")
        assert (package == "notchbook.blocks") == (kind == "block")


def test_every_definition_speaks() -> None:
    for step in all_definitions():
        assert step.title
        assert step.sentence
        assert step.parameters.__doc__
        fields = step.parameters.model_fields
        parsed = [name for _, name, _, _ in Formatter().parse(step.sentence) if name is not None]
        assert {name.split("|")[0] for name in parsed} <= set(fields), (
            f"{step.operation}: the sentence names no parameter"
        )
        assert set(step.upcasters) == set(range(1, step.version))


def test_what_is_settled_and_what_it_hangs_on_are_fields_of_the_step() -> None:
    settling = [step for step in all_definitions() if step.settle_on is not None]
    assert settling
    for step in settling:
        fields = set(step.parameters.model_fields)
        assert step.settles, f"{step.operation}: settles nothing"
        for field, hangs_on in step.settles.items():
            assert {field, *hangs_on} <= fields, f"{step.operation}: no such field"
            assert hangs_on
            assert field not in hangs_on


def test_looking_for_operations_imports_no_step() -> None:
    import subprocess

    code = (
        "import sys; from notchbook.recipe import operation_sources; operation_sources();"
        "print([m for m in sys.modules if m.startswith(('notchbook.style.', 'notchbook.blocks.'))])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def entry_points(monkeypatch: pytest.MonkeyPatch, *points: EntryPoint) -> None:
    found = {
        group: [p for p in points if p.group == group] for group in ("notchbook.blocks", "notchbook.steps")
    }
    monkeypatch.setattr(registry, "entry_points", lambda group: found[group])
    operation_sources.cache_clear()
    definition.cache_clear()


def test_two_packages_with_one_name_are_a_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    entry_points(monkeypatch, EntryPoint("vent", "other.vent:STEP", "notchbook.steps"))
    with pytest.raises(HouseFault, match="operation-twice"):
        operation_sources()


def test_a_definition_of_another_name_is_a_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    entry_points(monkeypatch, EntryPoint("slit", "notchbook.style.vent:STEP", "notchbook.steps"))
    with pytest.raises(HouseFault, match="operation-misnamed"):
        definition("slit")


# ---------------------------------------------------------------- the example outside the package


@pytest.fixture
def example(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Iterator[None]:
    """The example on the path as if it were installed, its entry points those of its pyproject."""
    yield from installed(monkeypatch, tmp_path)


def test_without_the_example_its_steps_are_unknown() -> None:
    assert {"hem_notch", "apron"}.isdisjoint(operation_sources())


@pytest.mark.usefixtures("example")
def test_a_step_of_another_package_is_found_and_runs() -> None:
    assert operation_sources()["hem_notch"] == "studio_steps.hem_notch:STEP"
    recipe = with_steps(
        skirt_recipe(), ("hem_notch", "marks", {"hem": f"{BACK}/hem", "from_point": f"{BACK}/hem_center"})
    )
    pattern = run(recipe).pattern
    assert pattern.notches["marks.back/hem_notch"].place.amount == 0.5


@pytest.mark.usefixtures("example")
def test_a_block_of_another_package_is_found_and_runs() -> None:
    from notchbook.recipe import Recipe

    recipe = with_steps(Recipe("Apron"), ("apron", "apron", {"length": "60 cm"}))
    done = replay(recipe, FORM_A)
    assert done.suspended is None
    assert list(done.pattern.pieces) == ["apron.panel"]
    assert 2.0 * sewn_length(done.pattern, "apron.panel/waist") == pytest.approx(470.0)
    assert done.expectations[0].wanted == pytest.approx(470.0)
