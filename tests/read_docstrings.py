"""Reads docstrings as numpydoc and says what is wrong with them: an own small reader, since the one that belongs to the
format brings a whole documentation builder along.

A docstring is prose, then sections: a name from the list, underlined with as many dashes. What this finds is what
editors and reformatters do to them: underlines drawn into the prose, prompts of examples likewise, parameters that the
signature no longer has or does not have yet, errors that do not exist.
"""

import ast
import builtins
import re
from collections.abc import Iterable, Iterator
from itertools import takewhile

SECTIONS = [
    "Parameters",
    "Attributes",
    "Methods",
    "Returns",
    "Yields",
    "Receives",
    "Other Parameters",
    "Raises",
    "Warns",
    "Warnings",
    "See Also",
    "Notes",
    "References",
    "Examples",
]  # in the order of numpydoc
UNDERLINE = re.compile(r"-{3,}")
DRAWN_IN = re.compile(r"\w\s+-{3,}(?!-)|(?<!-)-{3,}\s+\w")
Documented = ast.Module | ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef


def documented(source: str) -> Iterator[tuple[str, Documented, str]]:
    """Everything in a module that has a docstring: its name, its node, the docstring."""

    def walk(node: ast.AST, name: str) -> Iterator[tuple[str, Documented, str]]:
        if isinstance(node, Documented) and (text := ast.get_docstring(node)):
            yield name, node, text
        for child in ast.iter_child_nodes(node):
            own = getattr(child, "name", "") if isinstance(child, Documented) else ""
            yield from walk(child, f"{name}.{own}".strip(".") if own else name)

    yield from walk(ast.parse(source), "")


def errors_of(sources: Iterable[str]) -> set[str]:
    """Names of Python's own errors, and of those that sources define."""
    found = {name for name, own in vars(builtins).items() if isinstance(own, type) and issubclass(own, BaseException)}
    classes = [node for source in sources for node in ast.walk(ast.parse(source)) if isinstance(node, ast.ClassDef)]
    while new := {own.name for own in classes if found & {ast.unparse(base) for base in own.bases}} - found:
        found |= new
    return found


def faults(node: Documented, text: str, errors: Iterable[str]) -> Iterator[str]:
    """What is wrong with a docstring of a module, class or function, where these are the errors that there are."""
    lines = text.splitlines()
    yield from _in_prose(lines)
    found = _sections(lines)
    yield from _of_sections(found)
    if "Parameters" in found:
        yield from _of_parameters(_names(found["Parameters"] + found.get("Other Parameters", [])), _signature(node))
    for name in _names(found.get("Raises", [])):
        if name not in errors:
            yield f"{name!r} is raised, and is no error"


def _of_sections(found: dict[str, list[str]]) -> Iterator[str]:
    for name, own in found.items():
        if name not in SECTIONS:
            yield f"{name!r} is no section of numpydoc"
        if name != "Examples" and any(line.startswith(">>>") for line in own):
            yield f"an example stands in section {name!r}"
    order = [SECTIONS.index(name) for name in found if name in SECTIONS]
    if order != sorted(order):
        yield f"sections stand in another order than numpydoc has them: {', '.join(found)}"


def _of_parameters(told: list[str], known: list[str]) -> Iterator[str]:
    for name in told:
        if name not in known:
            yield f"parameter {name!r} is told, and the signature has none"
    for name in known:
        if name not in told:
            yield f"parameter {name!r} is in the signature, and nothing is told of it"


def _in_prose(lines: list[str]) -> Iterator[str]:
    for number, line in enumerate(lines):
        above, below = lines[number - 1] if number else "", (*lines, "")[number + 1]
        if UNDERLINE.fullmatch(line.strip()):
            if len(line.strip()) != len(above.strip()):
                yield f"the underline of {above.strip()!r} has another length"
            if line != line.lstrip() or (number > 1 and lines[number - 2].strip()):
                yield f"the section {above.strip()!r} is indented or has no empty line before it"
        elif DRAWN_IN.search(line):
            yield f"an underline is drawn into the prose: {line.strip()!r}"
        if line in SECTIONS and not UNDERLINE.fullmatch(below.strip()):
            yield f"section {line!r} is not underlined"
        if ">>>" in line and not line.strip().startswith(">>> "):
            yield f"a prompt is drawn into the prose: {line.strip()!r}"


def _sections(lines: list[str]) -> dict[str, list[str]]:
    """Lines that are not empty, by the section they belong to; those before the first section are left out."""
    found: dict[str, list[str]] = {}
    own: list[str] = []
    for number, line in enumerate(lines):
        below = (*lines, "")[number + 1]
        if line and UNDERLINE.fullmatch(below):
            own = found.setdefault(line, [])
        elif line.strip() and not UNDERLINE.fullmatch(line):
            own.append(line)
    return found


def _names(entries: list[str]) -> list[str]:
    """What a section tells of: `name : type` or a name alone, or several names with commas. Examples are left out."""
    heads = [line.partition(" : ")[0] for line in takewhile(lambda line: not line.startswith(">>>"), entries)]
    return [name.strip().lstrip("*") for head in heads if not head.startswith(" ") for name in head.split(",")]


def _signature(node: Documented) -> list[str]:
    """Parameters of a function, or of the class: its fields, and what its `__init__` takes."""
    if isinstance(node, ast.ClassDef):
        makers = [item for item in node.body if isinstance(item, ast.FunctionDef) and item.name == "__init__"]
        fields = [
            item.target.id
            for item in node.body
            if isinstance(item, ast.AnnAssign)
            and isinstance(item.target, ast.Name)
            and "ClassVar" not in ast.unparse(item.annotation)
        ]
        return fields + [name for maker in makers for name in _signature(maker)]
    if isinstance(node, ast.Module):
        return []
    own = node.args
    taken = [*own.posonlyargs, *own.args, *filter(None, [own.vararg]), *own.kwonlyargs, *filter(None, [own.kwarg])]
    return [each.arg for each in taken if each.arg not in ("self", "cls")]
