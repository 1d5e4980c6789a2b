import re
import subprocess
from pathlib import Path

import pytest

from benchjoin import lay_out, set_page
from benchjoin.binding import sheets
from benchjoin.drawings.views.isometric import exploded
from benchjoin.frame.design.file import read_design

ROOT = Path(__file__).parents[1]
README = ROOT / "README.md"
JOB = ROOT / "gallery" / "the_whole_job.md"
BLOCK = re.compile(r"^```(\w+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)


def blocks(page, *languages):
    """Fenced blocks of some languages, each below blank lines, so that a traceback names the page's own line."""
    text = page.read_text(encoding="utf-8")
    return [
        (found[1], "\n" * text.count("\n", 0, found.start(2)) + found[2])
        for found in BLOCK.finditer(text)
        if found[1] in languages
    ]


@pytest.mark.parametrize("page", [README, JOB], ids=lambda page: page.name)
def test_python_blocks_run_in_order_as_they_stand_and_print_what_is_shown(page, tmp_path, monkeypatch, capsys):
    """A block of text right after a block of Python is what that prints."""
    monkeypatch.chdir(tmp_path)
    names = {"__name__": "__main__"}
    text = page.read_text(encoding="utf-8")
    found = list(BLOCK.finditer(text))
    shown = 0
    for number, block in enumerate(found):
        if block[1] != "python":
            continue
        exec(compile("\n" * text.count("\n", 0, block.start(2)) + block[2], str(page), "exec"), names)
        said = capsys.readouterr().out
        after = found[number + 1] if number + 1 < len(found) else None
        if after is not None and after[1] == "text" and not text[block.end() : after.start()].strip():
            shown += 1
            assert said.rstrip() == after[2].rstrip()
    assert names.get("layout") is not None
    assert shown == (2 if page == README else 0)


def test_readme_is_read_in_one_go():
    assert len(README.read_text(encoding="utf-8").splitlines()) < 150


def test_pictures_and_pages_that_are_named_are_there():
    for page in (README, JOB):
        for name in re.findall(r"\]\(([^)#:]+)\)", page.read_text(encoding="utf-8")):
            assert (page.parent / name).exists(), name


def test_pictures_are_of_the_bench_that_readme_describes(tmp_path):
    """Drawn again they are the same, so that no picture is of yesterday."""
    names = {}
    exec(blocks(README, "python")[0][1], names)
    layout = names["layout"]
    pages = {"apart": exploded(layout, paper="A4"), "set": set_page(layout, "A", paper="A4")}
    pages["binder"] = sheets(layout, paper="A4")[0]
    for name, sheet in pages.items():
        drawn = sheet.save(tmp_path / f"{name}.svg").read_text(encoding="utf-8")
        assert drawn == (ROOT / "gallery" / f"potting-bench-{name}.svg").read_text(encoding="utf-8")


def test_design_files_are_read_as_they_stand():
    toml = blocks(JOB, "toml")
    assert toml
    for _, block in toml:
        assert not lay_out(read_design(block.lstrip("\n"))).errors()


@pytest.mark.parametrize("command", ["scripts/demo", "scripts/test"])
def test_the_two_commands_stand_in_readme(command):
    assert command in [line.strip() for _, block in blocks(README, "sh") for line in block.splitlines()]
    assert (ROOT / command).stat().st_mode & 0o111


@pytest.mark.slow
def test_the_demo_runs_from_any_folder_and_writes_drawings(tmp_path):
    demo = ROOT / "scripts/demo"
    answer = subprocess.run([demo], cwd=tmp_path, capture_output=True, text=True, timeout=600)
    assert answer.returncode == 0, answer.stderr
    assert list((ROOT / "out").rglob("*.svg"))
