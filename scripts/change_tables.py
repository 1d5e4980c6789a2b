"""Which figure of a table could be wrong, and no outside test would tell? Each is changed alone, in its last digit.

    python scripts/change_tables.py                   all tables of trade/ that a source prints; about half an hour
    python scripts/change_tables.py species lumber    some of them

Works in a copy of the project. Lines of common practice, which no source prints, are passed over.
"""

import ast
import re
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
TABLES = {
    "species": "wood_handbook movement",
    "lumber": "lumber_sizes",
    "fasteners": "fastener_sizes",
    "saws": "saws",
    "heights": "working_figures",
    "spacing": "working_figures",
    "tapes": "tapes",
    "standards": "drawing_standards lettering",
    "paper": "drawing_standards",
    "working": "working_figures strength",
}
"""Modules of trade/ and the outside tests that hold them."""
FUNCTIONS = {"lead_holes", "no_lead_holes", "bolts"}
"""Functions that give the rows of a table."""
HABIT = re.compile("COMMON_PRACTICE|[Cc]ommon practice|no source")


def figures(text: str) -> Iterator[ast.Constant]:
    """The figures of tables, and sizes that are written as words, "1 9/16"."""
    tree = ast.parse(text)
    for node, after in zip(tree.body, [*tree.body[1:], None], strict=True):
        said = ast.get_docstring(ast.Module([after], [])) if isinstance(after, ast.Expr) else ""
        if isinstance(node, ast.FunctionDef) and node.name in FUNCTIONS:
            inside = [own for line in node.body[1:] for own in ast.walk(line)]
        elif isinstance(node, ast.Assign | ast.AnnAssign) and node.value is not None and not HABIT.search(said or ""):
            inside = list(ast.walk(node.value))
        else:
            continue
        sources = [own for own in inside if isinstance(own, ast.Call) and getattr(own.func, "id", "") == "Source"]
        sources += [own for own in inside if isinstance(own, ast.Call) and getattr(own.func, "attr", "") == "compile"]
        passed = {id(own) for source in sources for own in ast.walk(source)}
        for own in inside:
            plain = isinstance(own, ast.Constant) and type(own.value) in (int, float)
            words = isinstance(own, ast.Constant) and re.fullmatch(r"(\d+ )?\d+(/\d+)?", str(own.value))
            if id(own) not in passed and (plain or words):
                yield own


def changed(value: object) -> str:
    """A figure a little off, as it is written."""
    if isinstance(value, str):
        whole, _, last = value.rpartition(" ")
        top, stroke, bottom = last.partition("/")
        return repr(f"{whole} {int(top) + (2 if stroke else 1)}{stroke}{bottom}".strip())
    if isinstance(value, int):
        return repr(value + 1)
    digits = len(repr(value).partition(".")[2])
    return repr(round(value + 10**-digits, digits))


def main() -> None:
    with tempfile.TemporaryDirectory() as temporary:
        folder = Path(temporary) / "benchjoin"
        shutil.copytree(ROOT, folder, ignore=shutil.ignore_patterns(".git", ".venv", "__pycache__", ".*_cache"))
        for name in sys.argv[1:] or TABLES:
            told, silent = of_table(folder, name)
            print(f"{told:>6} of {told + len(silent):>5} told  {name}", *silent, sep="\n         ", flush=True)


def of_table(folder: Path, name: str) -> tuple[int, list[str]]:
    """How many changed figures of a table were told, and those that were not."""
    path = folder / "benchjoin" / "trade" / f"{name}.py"
    text = path.read_text(encoding="utf-8")
    tests = [f"tests/outside/test_{own}.py" for own in TABLES[name].split()]
    asked = [sys.executable, "-B", "-m", "pytest", "-x", "-q", "-p", "no:cacheprovider", "-p", "no:xdist", *tests]
    told, silent = 0, []
    for own in figures(text):
        lines = text.splitlines(keepends=True)
        line = lines[own.lineno - 1].encode()
        if HABIT.search(line.decode()):
            continue
        off = line[: own.col_offset] + changed(own.value).encode() + line[own.end_col_offset :]
        lines[own.lineno - 1] = off.decode()
        path.write_text("".join(lines), encoding="utf-8")
        done = subprocess.run(asked, cwd=folder, env={"PYTHONPATH": str(folder)}, capture_output=True, check=False)
        told += done.returncode != 0
        if done.returncode == 0:
            silent.append(f"line {own.lineno}: {own.value!r} as {changed(own.value)}")
    path.write_text(text, encoding="utf-8")
    return told, silent


if __name__ == "__main__":
    main()
