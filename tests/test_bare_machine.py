"""Tests start no program but those of the environment, git and bash: what is refused, and what is not."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from bare_machine import ForeignProgram

ROOT = Path(__file__).parents[1]
pytestmark = pytest.mark.skipif(os.name != "posix", reason="scripts/test needs bash")
WAYS = {
    "by its name": lambda place: subprocess.run([place.name], check=True),
    "by its place": lambda place: subprocess.run([str(place)], check=True),
    "by its place, as bytes": lambda place: subprocess.run(os.fsencode(place), check=True),
    "from its folder": lambda place: subprocess.run([f"./{place.name}"], cwd=place.parent, check=True),
    "under another name": lambda place: subprocess.run(["git"], executable=place, check=True),
    "where another PATH leads": lambda place: subprocess.run(["python"], env={"PATH": str(place.parent)}, check=True),
    "where it is not installed": lambda place: subprocess.run([f"{place.name}-absent"], check=True),
    "by a shell": lambda place: subprocess.run(place.name, shell=True, check=True),
    "by os.system": lambda place: os.system(place.name),
    "by os.posix_spawn": lambda place: os.posix_spawn(place, [place.name], os.environ),
    "in place of this one": lambda place: os.execv(place.with_name("absent"), [place.name]),  # harmless if let through
}


@pytest.fixture
def foreign(tmp_path, monkeypatch):
    """A program that a person may have installed, and that leaves a mark when it runs."""
    folder = tmp_path / "bin"
    folder.mkdir()
    for name in ("foreign", "python"):
        (folder / name).write_text(f"#!/bin/sh\n: >{tmp_path}/started\n")
        (folder / name).chmod(0o755)
    monkeypatch.setenv("PATH", str(folder), prepend=os.pathsep)
    yield folder / "foreign"
    assert not (tmp_path / "started").exists()


@pytest.mark.parametrize("way", WAYS)
def test_a_foreign_program_is_refused(way, foreign):
    with pytest.raises(ForeignProgram):
        WAYS[way](foreign)


def test_a_python_that_is_started_refuses_it_too(foreign):
    code = f"import subprocess; subprocess.run([{str(foreign)!r}])"
    for words in ([sys.executable], ["bash", "-c", 'exec "$@"', "bash", sys.executable]):
        answer = subprocess.run([*words, "-c", code], capture_output=True, text=True)
        assert answer.returncode == 1
        assert "ForeignProgram" in answer.stderr


def test_scripts_do_not_find_it(foreign):
    told = bash("source scripts/environment.sh; command -v foreign; bare; command -v foreign || echo none; foreign")
    assert told.stdout.splitlines() == [str(foreign), "none"]
    assert told.returncode == 127


def test_scripts_find_what_they_call():
    told = bash("source scripts/environment.sh; bare; command -v bash dirname cat cksum id")
    assert [Path(line).parent.name for line in told.stdout.splitlines()] == ["bare"] * 5
    assert told.returncode == 0


def test_a_machine_is_bare_before_the_first_step():
    lines = (ROOT / "scripts/test").read_text(encoding="utf-8").splitlines()
    assert lines.index("bare") < min(n for n, line in enumerate(lines) if line.strip().startswith("step "))


def test_the_environment_git_and_bash_are_at_hand():
    subprocess.run([sys.executable, "-c", ""], check=True)
    assert bash("true").returncode == 0
    if shutil.which("git"):
        subprocess.run(["git", "--version"], check=True, capture_output=True)
    tool = shutil.which("ruff", path=str(Path(sys.executable).parent))
    if tool:
        subprocess.run([tool, "--version"], check=True, capture_output=True)


def bash(code):
    return subprocess.run(["bash", "-c", code], cwd=ROOT, capture_output=True, text=True)


def test_where_cairo_is_missing_the_scripts_say_what_to_install():
    lines = (ROOT / "scripts" / "environment.sh").read_text(encoding="utf-8").splitlines()
    (says,) = (line for line in lines if line.startswith("no_cairo()"))
    place = str(Path(sys.executable).parents[1])
    told = subprocess.run(
        ["bash", "-c", f"venv=$1\n{says}\nno_cairo", "bash", place], check=True, capture_output=True, text=True
    ).stdout
    assert "apt-get install" in told
    assert "brew install" in told


def test_what_the_guide_names_is_there():
    guide = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    floors = re.findall(r"`((?:frame|layout|drafting|drawings|shop|sweep|wood|trade|notebook)/[\w/]+(?:\.\w+)?)", guide)
    assert len(floors) > 10
    package = ROOT / "benchjoin"
    gone = [
        name
        for name in floors
        if not any((package / end).exists() for end in (name, f"{name}.py", f"{name.rpartition('.')[0]}.py"))
    ]
    assert gone == []
