"""Lines of a design file: on which one each value stands, for errors that a maker can find.

The reader of TOML does not say where values stood. So every key is given a number of its own, the file is read again,
and whoever follows a path comes to the number of its last key. One reading tells all lines.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

Path = Sequence[str | int]
_TOKEN = re.compile(
    r'"""(?:[^\\]|\\.)*?"""|' + r"'''.*?'''" + r'|\#[^\n]*|"(?:[^"\\\n]|\\.)*"|' + r"'[^'\n]*'|[A-Za-z0-9_-]+",
    re.DOTALL,
)
_HEADER = re.compile(r"[ \t]*\[\[?[^\[\]{}=,\n]*\]\]?[ \t]*(?:\#[^\n]*)?")
_AFTER = re.compile(r"[ \t]*(.?)")
_NUMBERED = re.compile(r"(.*)-x(\d+)", re.DOTALL)


def lines_of(text: str, paths: Iterable[Path]) -> list[int | None]:
    """The line on which the last key of each path stands, counted from 1; of an item of a list, that of its first key.

    None where a file cannot be numbered, and of the whole file.

    >>> text = '''format = 1
    ... stack = [
    ...     { clear = 7 },
    ...     { level = "bench", front = 9 },
    ... ]'''
    >>> lines_of(text, [("stack", 1, "front"), ("stack", 0), ("stack", 1, "nothing"), ()])
    [4, 3, 4, None]
    """
    lines, numbered = _numbered(text)
    try:
        tree = tomllib.loads(numbered)
    except (tomllib.TOMLDecodeError, RecursionError):
        return [None for _ in paths]
    return [_line(tree, path, lines) for path in paths]


def _numbered(text: str) -> tuple[list[int], str]:
    """The line of each key, and the text with its number behind every key."""
    lines, bits, done, line = list[int](), list[str](), 0, 1
    for token in _TOKEN.finditer(text):
        line += text.count("\n", done, token.start())
        bits.append(text[done : token.start()])
        done = token.end()
        own = token[0]
        if _is_key(text, token):
            tail = own[-1] if own[0] in "\"'" else ""
            own = f"{own.removesuffix(tail) if tail else own}-x{len(lines)}{tail}"
            lines.append(line)
        line += token[0].count("\n")
        bits.append(own)
    return lines, "".join([*bits, text[done:]])


def _is_key(text: str, token: re.Match[str]) -> bool:
    """Whether a token is a key; those of [[headers]] keep their names, so that their tables stay one list."""
    own, after = token[0], _AFTER.match(text, token.end())
    follows = after[1] if after else ""
    if own.startswith(("#", '"""', "'''")) or follows not in ("=", ".", "]"):
        return False
    if follows == "=":
        return True
    start, end = text.rfind("\n", 0, token.start()) + 1, text.find("\n", token.end())
    header = _HEADER.fullmatch(text, start, end if end >= 0 else len(text))
    if header:
        return not header[0].lstrip().startswith("[[")
    return follows == "." and not own.lstrip("-")[:1].isdigit()


def _line(tree: Any, path: Path, lines: Sequence[int]) -> int | None:
    """The line of the last key of a path that is there; None where not even the first is."""
    found, stand, last = None, [tree], None
    for step in path:
        below = [pair for each in stand for pair in _below(each, step)]
        if not below:
            break
        found = next((lines[number] for number, _ in below if number is not None), found)
        stand, last = [value for _, value in below], step
    keys = (_NUMBERED.fullmatch(key) for each in stand if isinstance(each, dict) for key in each)
    first = next(keys, None) if isinstance(last, int) else None
    return lines[int(first[2])] if first else found


def _below(thing: Any, step: str | int) -> Iterator[tuple[int | None, Any]]:
    """What stands at a step: the number of its key, and its value; a table may be told in several places."""
    if isinstance(thing, list) and isinstance(step, int) and step < len(thing):
        yield None, thing[step]
    for key, value in thing.items() if isinstance(thing, dict) else ():
        own = _NUMBERED.fullmatch(key)
        if (own[1] if own else key) == step:
            yield (int(own[2]) if own else None), value
