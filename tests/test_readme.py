import re
import subprocess
from pathlib import Path

import pytest

from benchjoin import lay_out
from benchjoin.frame.design.file import read_design

ROOT = Path(__file__).parents[1]
README = ROOT / "README.md"
BLOCK = re.compile(r"^```(\w+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)


def blocks(language):
    """Fenced blocks of one language, each below blank lines, so that a traceback names README's own line."""
    text = README.read_text(encoding="utf-8")
    return [
        "\n" * text.count("\n", 0, found.start(2)) + found[2] for found in BLOCK.finditer(text) if found[1] == language
    ]


def test_python_blocks_run_in_order_as_they_stand(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    names = {"__name__": "__main__"}
    python = blocks("python")
    assert python
    for block in python:
        exec(compile(block, str(README), "exec"), names)


def test_design_files_are_read_as_they_stand():
    toml = blocks("toml")
    assert toml
    for block in toml:
        assert not lay_out(read_design(block.lstrip("\n"))).errors()


@pytest.mark.parametrize("command", ["scripts/demo", "scripts/test"])
def test_the_two_commands_stand_in_readme(command):
    assert command in [line.strip() for block in blocks("sh") for line in block.splitlines()]
    assert (ROOT / command).stat().st_mode & 0o111


@pytest.mark.slow
def test_the_demo_runs_from_any_folder_and_writes_drawings(tmp_path):
    demo = ROOT / "scripts/demo"
    answer = subprocess.run([demo], cwd=tmp_path, capture_output=True, text=True, timeout=600)
    assert answer.returncode == 0, answer.stderr
    assert list((ROOT / "out").rglob("*.svg"))
