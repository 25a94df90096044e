"""Reads from the source which message codes are raised where, and with which facts, without running it."""

import ast
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from measure_house import FunctionNode, Source


@dataclass(frozen=True)
class Raised:
    """One place that makes an error with a code: the names of its facts; open when some come by ``**``."""

    code: str
    place: str
    facts: frozenset[str]
    is_open: bool


@dataclass(frozen=True)
class Helper:
    """A function that makes an error from a code that it is given."""

    parameter: str
    position: int
    own: frozenset[str] = field(default_factory=frozenset)
    facts: frozenset[str] = field(default_factory=frozenset)
    forwards: bool = False
    is_open: bool = False


def error_classes(sources: Iterable[Source], base: str = "NotchbookError") -> set[str]:
    """The names of the base error and of all its descendants in these files."""
    classes = [node for item in sources for node in ast.walk(item.tree) if isinstance(node, ast.ClassDef)]
    found, before = {base}, 0
    while len(found) != before:
        before = len(found)
        found |= {node.name for node in classes if found & {_name(parent) for parent in node.bases}}
    return found


def raised_codes(sources: Iterable[Source]) -> list[Raised]:
    """Every place where an error is made with a code that stands there in plain words."""
    files = list(sources)
    makers: dict[str, Helper] = {name: Helper("code", 0, forwards=True) for name in error_classes(files)}
    called = [(function, _calls(function)) for item in files for function in _functions(item.tree)]
    before = 0
    while len(makers) != before:
        before = len(makers)
        for function, calls in called:
            helper = _as_helper(function, calls, makers)
            if helper and function.name not in makers:
                makers[function.name] = helper
    return [raised for item in files for raised in _raised_in(item, makers)]


def text_constants(sources: Iterable[Source]) -> set[str]:
    """All strings that stand in the code, wherever."""
    nodes = (node for item in sources for node in ast.walk(item.tree))
    return {node.value for node in nodes if isinstance(node, ast.Constant) and isinstance(node.value, str)}


def _functions(tree: ast.Module) -> Iterator[FunctionNode]:
    return (node for node in ast.walk(tree) if isinstance(node, FunctionNode))


def _name(node: ast.expr) -> str:
    if isinstance(node, ast.Attribute):
        return node.attr
    return node.id if isinstance(node, ast.Name) else ""


def _calls(tree: ast.AST) -> list[ast.Call]:
    return [node for node in ast.walk(tree) if isinstance(node, ast.Call)]


def _as_helper(
    function: FunctionNode, calls: Iterable[ast.Call], makers: Mapping[str, Helper]
) -> Helper | None:
    """The function as a helper, when it hands one of its own parameters on as the code."""
    making = [call for call in calls if _name(call.func) in makers]
    names = [item.arg for item in (*function.args.posonlyargs, *function.args.args)] if making else []
    own = frozenset(names) | {item.arg for item in function.args.kwonlyargs}
    for call in making:
        maker = makers[_name(call.func)]
        code = _code_argument(call, maker)
        if not isinstance(code, ast.Name) or code.id not in own:
            continue
        stars = {_name(item.value) for item in call.keywords if item.arg is None}
        extra = function.args.kwarg.arg if function.args.kwarg else ""
        is_method = bool(names) and names[0] in {"self", "cls"}
        position = names.index(code.id) - is_method if code.id in names else len(names)
        facts = _facts(call, maker)
        return Helper(code.id, position, own, facts, extra in stars, bool(stars - {extra}) or maker.is_open)
    return None


def _code_argument(call: ast.Call, maker: Helper) -> ast.expr | None:
    by_name = next((item.value for item in call.keywords if item.arg == maker.parameter), None)
    if by_name is not None or len(call.args) <= maker.position:
        return by_name
    return call.args[maker.position]


def _facts(call: ast.Call, maker: Helper) -> frozenset[str]:
    given = frozenset(item.arg for item in call.keywords if item.arg) - maker.own - {maker.parameter}
    return maker.facts | given if maker.forwards else maker.facts


def _raised_in(item: Source, makers: Mapping[str, Helper]) -> Iterator[Raised]:
    for call in _calls(item.tree):
        if _name(call.func) not in makers:
            continue
        maker = makers[_name(call.func)]
        code = _code_argument(call, maker)
        branches = [code.body, code.orelse] if isinstance(code, ast.IfExp) else [code]
        stars = any(word.arg is None for word in call.keywords)
        for branch in branches:
            if isinstance(branch, ast.Constant) and isinstance(branch.value, str):
                place = f"{item.place}:{call.lineno}"
                is_open = maker.is_open or (maker.forwards and stars)
                yield Raised(branch.value, place, _facts(call, maker), is_open)
