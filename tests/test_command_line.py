"""The command line: what it writes, what it says, and what it leaves alone."""

from __future__ import annotations

import io
import shutil
import subprocess
import sys
from functools import partial

import attrs
import pypdfium2
import pytest
from designs import GALLERY
from designs import plain_bench as bench

import benchjoin
from benchjoin import Notch, alter, bind, cut_list, lay_out
from benchjoin.__main__ import main
from benchjoin.commands.progress import Progress
from benchjoin.commands.watching import saved
from benchjoin.drafting.writers.naming import file_name
from benchjoin.errors import MissingLibrary
from benchjoin.frame.design.file import write_design

BINDER, TEXT, CSV = "honey-house-bench.pdf", "honey-house-bench-cut-list.txt", "honey-house-bench-cut-list.csv"


@pytest.fixture
def here(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    return tmp_path


def design(folder, frame=bench, name="bench.toml"):
    (folder / name).write_text(write_design(frame), encoding="utf-8")
    return name


def names(folder):
    return sorted(path.name for path in folder.iterdir())


def test_a_design_file_alone_gets_binder_and_cut_list(here, capsys):
    assert main([design(here)]) == 0
    assert names(here / "out") == sorted(["contents.toml", BINDER, TEXT, CSV])
    assert (here / "out" / TEXT).read_text(encoding="utf-8") == f"{cut_list(lay_out(bench))}\n"
    assert (here / "out" / CSV).read_bytes() == b"\xef\xbb\xbf" + cut_list(lay_out(bench)).csv().encode()
    assert len(pypdfium2.PdfDocument(here / "out" / BINDER)) > 5
    said = capsys.readouterr().out
    assert f"wrote {'out/' + BINDER}" in said.replace("\\", "/")
    assert said.endswith("Honey-house bench: 3 files, no findings\n")


def test_only_what_is_asked_for_is_written(here):
    assert main([design(here), "--only", "templates", "sheets", "--out", "shop/monday"]) == 0
    found = names(here / "shop" / "monday")
    assert "honey-house-bench-templates.pdf" in found
    assert any(name.endswith("elevation-front.svg") for name in found)
    assert BINDER not in found
    assert TEXT not in found


def test_templates_come_beside_the_usual_papers(here):
    assert main([design(here), "--templates"]) == 0
    assert names(here / "out") == sorted(["contents.toml", BINDER, TEXT, CSV, "honey-house-bench-templates.pdf"])


def test_the_paper_is_the_one_asked_for(here):
    assert main([design(here), "--paper", "A4", "--only", "binder"]) == 0
    page = pypdfium2.PdfDocument(here / "out" / BINDER)[0]
    assert sorted(size / 72 * 25.4 for size in page.get_size()) == pytest.approx([210, 297], abs=0.01)


def test_a_design_is_written_again_over_its_own_files(here, capsys):
    assert main([design(here), "--only", "cut-list"]) == 0
    first = (here / "out" / TEXT).read_bytes()
    longer = alter(bench, {"length": "60 in"})
    assert main([design(here, longer), "--only", "cut-list"]) == 0
    assert (here / "out" / TEXT).read_bytes() != first


def test_files_of_another_design_are_left_alone_unless_the_maker_says_so(here, capsys):
    assert main([design(here), "--only", "cut-list"]) == 0
    before = {name: (here / "out" / name).read_bytes() for name in names(here / "out")}
    other = attrs.evolve(bench, name="Honey house: BENCH", length="60 in")
    assert file_name(other.name) == file_name(bench.name)
    capsys.readouterr()
    assert main([design(here, other), "--only", "cut-list"]) == 3
    said = capsys.readouterr().err
    assert f"{TEXT}, of Honey-house bench" in said
    assert "--over" in said
    assert "Nothing is written" in said
    assert {name: (here / "out" / name).read_bytes() for name in names(here / "out")} == before
    assert main([design(here, other), "--only", "cut-list", "--over"]) == 0
    assert (here / "out" / TEXT).read_bytes() != before[TEXT]


def test_a_file_that_nobody_listed_is_left_alone(here, capsys):
    (here / "out").mkdir()
    (here / "out" / TEXT).write_text("my notes")
    assert main([design(here)]) == 3
    assert "on no list" in capsys.readouterr().err
    assert names(here / "out") == [TEXT]


def test_designs_with_other_names_share_a_folder(here):
    assert main([design(here), "--only", "cut-list"]) == 0
    assert main([design(here, attrs.evolve(bench, name="Step")), "--only", "cut-list"]) == 0
    assert len(names(here / "out")) == 5


def test_a_design_with_errors_has_its_papers_but_none_for_the_wood(here, capsys):
    wrong = alter(bench, {"corners": "staggered", "bench.ends.joint": Notch()})  # two rails want one corner
    assert lay_out(wrong).errors()
    assert main([design(here, wrong), "--templates"]) == 1
    assert names(here / "out") == sorted(["contents.toml", BINDER, TEXT, CSV])
    assert "error: " in capsys.readouterr().out


BAD = {
    "a fault in the file": ("bench.toml", 'format = 1\nname = "x"\nlength = "7"\n', "line 3, length: '7'"),
    "no TOML": ("bench.toml", "format = 1\nname = x\n", "is not TOML"),
    "a Python file that fails": (
        "bench.py",
        "from benchjoin import Frame\nx = 1 / 0\n",
        "bench.py, line 2: ZeroDivision",
    ),
    "a Python file that does not read": ("bench.py", "x = = 1\n", "bench.py, line 1: SyntaxError"),
    "a Python file that leaves": ("bench.py", "raise SystemExit(5)\n", "bench.py, line 1: SystemExit: 5"),
    "a Python file without a frame": ("bench.py", "x = 1\n", "should make one frame, and makes none"),
    "another kind of file": ("bench.txt", "", "neither in .toml nor in .py"),
}


@pytest.mark.parametrize("name, text, words", BAD.values(), ids=BAD)
def test_bad_input_is_a_sentence_and_no_traceback(here, capsys, name, text, words):
    (here / name).write_text(text)
    assert main([name]) == 2
    said = capsys.readouterr()
    assert words in said.err
    assert "Traceback" not in said.err
    assert said.out == ""
    assert not (here / "out").exists()


def test_a_design_that_cannot_be_laid_out_says_why(here, capsys):
    full = write_design(bench).replace('clear = "7 in"', 'clear = "40 in"')
    (here / "full.toml").write_text(full, encoding="utf-8")
    assert main(["full.toml"]) == 2
    assert "too much" in capsys.readouterr().err


def test_files_that_are_not_there_are_said_to_be_missing(here, capsys):
    for name in ("nowhere.toml", "nowhere.py"):
        assert main([name]) == 2
        assert f"{name} cannot be read" in capsys.readouterr().err


def test_one_frame_of_several_is_chosen_by_its_name(here, capsys):
    shutil.copy(GALLERY / "honey_house_bench.py", here)
    (here / "two.py").write_text(
        "from benchjoin import alter\nfrom honey_house_bench import bench\nlong = alter(bench, {'length': '60 in'})\n"
    )
    assert main(["two.py", "--only", "cut-list"]) == 2
    assert "makes several: bench, long" in capsys.readouterr().err
    assert main(["two.py", "--only", "cut-list", "--frame", "long"]) == 0
    assert "60" in (here / "out" / TEXT).read_text(encoding="utf-8")
    assert main(["two.py", "--frame", "short"]) == 2
    assert main([design(here), "--frame", "long"]) == 2


def test_a_folder_that_cannot_be_made_is_told(here, capsys):
    (here / "out").write_text("a file")
    assert main([design(here)]) == 3
    assert "cannot be written" in capsys.readouterr().err


def test_the_command_runs_as_a_module_and_tells_its_exit_codes(here):
    ask = [sys.executable, "-m", "benchjoin", "--help"]
    answer = subprocess.run(ask, cwd=here, capture_output=True, text=True, check=True)
    assert "exit codes" in answer.stdout
    answer = subprocess.run([*ask[:-1], "--papr"], cwd=here, capture_output=True, text=True, check=False)
    assert answer.returncode == 2


class Terminal(io.StringIO):
    def isatty(self):
        return True


def test_how_far_it_is_is_told_sheet_by_sheet_and_to_terminals_only(tmp_path):
    for stream, expected in ((Terminal(), True), (io.StringIO(), False)):
        with Progress(stream) as progress:
            bind(lay_out(bench), tmp_path / "bench.pdf", told=progress.step)
        assert ("drawn  Cut list" in stream.getvalue()) is expected
        assert ("drawn  Left end" in stream.getvalue()) is expected
        assert stream.getvalue().endswith(" \r") is expected  # the line is wiped


@pytest.mark.parametrize("words", ["CON", "com1", "a/b\\c:d*e?f", "  . ", "Größe ½", "x" * 200, "LPT9.", "nul"])
def test_names_of_files_are_safe_on_windows(words):
    name = file_name(words)
    assert name
    assert not set(name) & set('<>:"/\\|?* .')
    assert name.upper() not in {"CON", "PRN", "AUX", "NUL", "COM1", "LPT9"}
    assert len(name) <= 70
    assert file_name(name) == name


def test_the_tape_of_the_shop_reads_the_sheets(here):
    assert main([design(here), "--only", "cut-list", "--tape", "1 mm"]) == 0
    assert "1448" in (here / "out" / TEXT).read_text(encoding="utf-8")  # 57 in


def test_a_tape_that_is_none_is_refused(here, capsys):
    assert main([design(here), "--tape", "soon"]) == 2
    assert "soon" in capsys.readouterr().err


def test_the_page_for_a_tablet_is_written_when_asked_for(here):
    assert main([design(here), "--only", "tablet"]) == 0
    assert "honey-house-bench.html" in names(here / "out")


def test_what_is_written_first_is_shown(here, monkeypatch):
    shown = []
    monkeypatch.setattr("webbrowser.open", shown.append)
    assert main([design(here), "--only", "cut-list", "--open"]) == 0
    assert shown == [(here / "out" / TEXT).resolve().as_uri()]


def test_the_version_is_that_of_the_package(capsys):
    with pytest.raises(SystemExit) as stopped:
        main(["--version"])
    assert stopped.value.code == 0
    assert capsys.readouterr().out == f"benchjoin {benchjoin.__version__}\n"


def test_it_draws_again_each_time_the_design_is_saved(here, monkeypatch, capsys):
    """Saved once with another length, and then stopped."""
    name = design(here)

    looks = []

    def wait(seconds):
        looks.append(seconds)
        if len(looks) == 2:
            design(here, alter(bench, {"length": "60 in"}))
        if len(looks) > 4:
            raise KeyboardInterrupt

    monkeypatch.setattr("benchjoin.__main__.saved", partial(saved, wait=wait))
    assert main([name, "--only", "cut-list", "--watch"]) == 0
    assert "60" in (here / "out" / TEXT).read_text(encoding="utf-8")
    assert capsys.readouterr().out.count("stop with Ctrl-C") == 2


def test_without_cairo_every_sheet_is_written_as_svg_and_one_sentence_says_why(here, monkeypatch, capsys):
    def missing(*_, **__):
        raise MissingLibrary("Install cairo.")

    monkeypatch.setattr("benchjoin.commands.papers.bind", missing)
    assert main([design(here)]) == 3
    found = names(here / "out")
    assert sum(one.endswith(".svg") for one in found) > 5
    assert TEXT in found
    assert capsys.readouterr().err.count("Install cairo.") == 1
