"""Measures the source itself: sizes of modules and functions, docstrings, annotations, tests to source.

The budget stands in tests/structure; this program only measures and prints.
"""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from house import ROOT

FunctionNode = ast.FunctionDef | ast.AsyncFunctionDef
DocumentedNode = ast.Module | ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef


@dataclass(frozen=True)
class Source:
    """One Python file, read and parsed."""

    path: Path
    text: str
    tree: ast.Module

    @property
    def place(self) -> str:
        """Where it is, from the root of the repository."""
        return self.path.relative_to(ROOT).as_posix() if self.path.is_relative_to(ROOT) else self.path.name

    @property
    def lines(self) -> int:
        """All lines, blank ones and comments too."""
        return len(self.text.splitlines())


@cache
def sources(folder: Path) -> tuple[Source, ...]:
    """The Python files below a folder, in order of their names."""
    return tuple(read(path) for path in sorted(folder.rglob("*.py")))


def read(path: Path) -> Source:
    """Read and parse one file."""
    text = path.read_text(encoding="utf-8")
    return Source(path, text, ast.parse(text, filename=str(path)))


def functions(tree: ast.Module) -> Iterator[FunctionNode]:
    """All functions and methods, nested ones too."""
    return (node for node in ast.walk(tree) if isinstance(node, FunctionNode))


def function_lines(node: FunctionNode) -> int:
    """The lines of a function without its docstring: how much there is to follow, not to read."""
    total = (node.end_lineno or node.lineno) - node.lineno + 1
    first = node.body[0]
    if ast.get_docstring(node, clean=False) is not None:
        total -= (first.end_lineno or first.lineno) - first.lineno + 1
    return total


def not_annotated(node: FunctionNode) -> list[str]:
    """The parameters without a type (``return`` for the result); self and cls need none."""
    arguments = [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]
    arguments += [extra for extra in (node.args.vararg, node.args.kwarg) if extra]
    missing = [item.arg for item in arguments if item.annotation is None and item.arg not in {"self", "cls"}]
    return missing if node.returns is not None else [*missing, "return"]


def public_nodes(tree: ast.Module) -> Iterator[tuple[str, DocumentedNode]]:
    """The module, and its public classes, functions and methods, with their names."""
    yield "(module)", tree
    yield from _public_children(tree, "")


def _public_children(parent: ast.Module | ast.ClassDef, prefix: str) -> Iterator[tuple[str, DocumentedNode]]:
    for node in parent.body:
        if not isinstance(node, ast.ClassDef | FunctionNode) or node.name.startswith("_"):
            continue
        yield f"{prefix}{node.name}", node
        if isinstance(node, ast.ClassDef):
            yield from _public_children(node, f"{node.name}.")


def percentile(values: Iterable[int], percent: int) -> int:
    """The smallest value that at least this share of the values does not exceed; 0 without values."""
    ordered = sorted(values)
    if not ordered:
        return 0
    rank = -(-len(ordered) * percent // 100)
    return ordered[max(rank, 1) - 1]


def summary(root: Path = ROOT) -> str:
    """The measures in one line, for the end of a lint or test run."""
    source = sources(root / "src")
    lengths = [function_lines(node) for item in source for node in functions(item.tree)]
    sizes = [item.lines for item in source]
    documented = [
        ast.get_docstring(node) is not None for item in source for _, node in public_nodes(item.tree)
    ]
    tests = (path.read_text(encoding="utf-8") for path in (root / "tests").rglob("*.py"))
    source_lines, test_lines = sum(sizes), sum(len(text.splitlines()) for text in tests)
    return (
        f"house: {len(sizes)} modules, {source_lines} lines (median {percentile(sizes, 50)},"
        f" p90 {percentile(sizes, 90)}, max {max(sizes, default=0)});"
        f" functions p95 {percentile(lengths, 95)}, max {max(lengths, default=0)} lines;"
        f" documented {100 * sum(documented) // max(len(documented), 1)} %;"
        f" test lines / source lines {test_lines / max(source_lines, 1):.2f} (wanted 0.7)"
    )


if __name__ == "__main__":
    sys.stdout.write(summary() + "\n")
