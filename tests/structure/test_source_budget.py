"""The budget of the source: small modules, short functions, everything annotated, public things explained.

The figures are the house's own, set after measuring eleven well-kept libraries.
"""

import ast
from pathlib import Path

from house import ROOT
from measure_house import (
    FunctionNode,
    Source,
    function_lines,
    functions,
    not_annotated,
    percentile,
    public_nodes,
    read,
    sources,
    summary,
)

MODULE_LINES = 800
FUNCTION_LINES = 100
FUNCTION_LINES_P95 = 45
DOCUMENTED_SHARE = 0.9

SOURCE = (*sources(ROOT / "src"), *sources(ROOT / "tools"))
TESTS = sources(ROOT / "tests")


def test_no_module_is_too_long() -> None:
    long = {item.place: item.lines for item in (*SOURCE, *TESTS) if item.lines > MODULE_LINES}
    assert not long, f"modules over {MODULE_LINES} lines: {long}"


def test_functions_are_short() -> None:
    lengths = {f"{item.place}:{node.lineno}": function_lines(node) for item, node in all_functions()}
    long = {place: lines for place, lines in lengths.items() if lines > FUNCTION_LINES}
    assert not long, f"functions over {FUNCTION_LINES} lines: {long}"
    assert percentile(lengths.values(), 95) <= FUNCTION_LINES_P95


def all_functions() -> list[tuple[Source, FunctionNode]]:
    """Every function of the source, with its file."""
    return [(item, node) for item in SOURCE for node in functions(item.tree)]


def test_everything_is_annotated() -> None:
    bare = {f"{item.place}:{node.lineno}": not_annotated(node) for item, node in all_functions()}
    lacking = {place: names for place, names in bare.items() if names}
    assert not lacking, f"parameters without a type: {lacking}"


def test_public_things_are_documented() -> None:
    found = [
        (f"{item.place} {name}", ast.get_docstring(node) is not None)
        for item in SOURCE
        for name, node in public_nodes(item.tree)
    ]
    bare = [place for place, has_docstring in found if not has_docstring]
    assert len(bare) <= (1 - DOCUMENTED_SHARE) * len(found), f"without a docstring: {bare}"


def test_the_measures_can_fail(tmp_path: Path) -> None:
    lines = [
        "def long(a, *, b: int = 1, **rest) -> None:",
        '    """Docstring',
        '    of two lines."""',
        *("    print()" for _ in range(7)),
        "class Open:",
        "    def shown(self) -> None: ...",
        "    def _hidden(self): ...",
    ]
    (tmp_path / "planted.py").write_text("\n".join(lines))
    planted = read(tmp_path / "planted.py")
    first, shown, hidden = functions(planted.tree)
    assert function_lines(first) == 8
    assert not_annotated(first) == ["a", "rest"]
    assert not_annotated(shown) == []
    assert not_annotated(hidden) == ["return"]
    names = {name: ast.get_docstring(node) is not None for name, node in public_nodes(planted.tree)}
    assert names == {"(module)": False, "long": True, "Open": False, "Open.shown": False}
    assert planted.lines == 13


def test_percentile_is_the_nearest_rank() -> None:
    """The nearest-rank definition: the worked example of the common textbook (from memory)."""
    scores = [15, 20, 35, 40, 50]
    assert [percentile(scores, share) for share in (5, 30, 40, 50, 100)] == [15, 20, 20, 35, 50]
    assert percentile([], 95) == 0


def test_the_summary_gives_the_ratio_of_tests(tmp_path: Path) -> None:
    for name, lines in (("src", 10), ("tests", 7)):
        (tmp_path / name).mkdir()
        (tmp_path / name / "some.py").write_text("1\n" * lines)
    assert "test lines / source lines 0.70" in summary(tmp_path)
