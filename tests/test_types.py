"""What a maker types is checked by an editor: nothing is said of right words, every wrong one is refused."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PAGES = (ROOT / "README.md", ROOT / "gallery" / "the_whole_job.md")
WRONG = ROOT / "tests" / "words" / "wrong.py"


def scripts(folder):
    """The Python of each page as a script of its own, and the designs of the gallery."""
    found = []
    for page in PAGES:
        blocks = re.findall(r"^```python\n(.*?)^```$", page.read_text(encoding="utf-8"), re.MULTILINE | re.DOTALL)
        path = folder / f"{page.stem.lower()}.py"
        path.write_text("\n".join(blocks), encoding="utf-8")
        found.append(path)
    return [*found, *sorted((ROOT / "gallery").glob("*.py"))]


def mypy(*paths):
    """What mypy says of scripts as a maker's own."""
    asked = [sys.executable, "-m", "mypy", "--no-incremental", "--config-file=", "--follow-imports=silent"]
    asked += ["--ignore-missing-imports", *map(str, paths)]
    return subprocess.run(asked, cwd=ROOT, capture_output=True, text=True, check=False).stdout


@pytest.mark.slow
def test_mypy_says_nothing_of_the_pages_and_the_gallery(tmp_path):
    for path in scripts(tmp_path):
        assert "Success" in mypy(path)


def pyright(*paths):
    """Lines of each script at which pyright has an error."""
    asked = [sys.executable, "-m", "pyright", "--outputjson", "--pythonpath", sys.executable, *map(str, paths)]
    answer = subprocess.run(asked, cwd=ROOT, capture_output=True, text=True, check=False)
    found = {}
    for one in json.loads(answer.stdout)["generalDiagnostics"]:
        if one["severity"] == "error":
            found.setdefault(Path(one["file"]).name, set()).add(one["range"]["start"]["line"] + 1)
    return found


@pytest.mark.slow
def test_pyright_says_nothing_of_the_pages_and_the_gallery(tmp_path):
    assert pyright(*scripts(tmp_path)) == {}


@pytest.mark.slow
def test_every_wrong_line_is_refused_and_no_other():
    wrong = {n for n, line in enumerate(WRONG.read_text(encoding="utf-8").splitlines(), 1) if line.endswith("# wrong")}
    assert len(wrong) > 25
    assert pyright(WRONG) == {WRONG.name: wrong}


def test_help_shows_types_and_choices():
    """Of each word that is a choice, all of them; of a length, that it is a number or what a tape says."""
    import inspect

    from benchjoin import Level, Rail, Stock

    assert inspect.signature(Stock).parameters["thickness"].annotation == "float | str"
    assert "'middle'" in str(inspect.signature(Rail).parameters["face"].annotation)
    assert "Rail | float | str | None" in str(inspect.signature(Level).parameters["front"].annotation)
