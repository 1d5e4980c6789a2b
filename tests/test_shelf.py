"""The folder of the papers: what was there stays, whoever writes in it, and whatever ends them."""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import time
import tomllib

import attrs
import pytest
from designs import plain_bench as bench

from benchjoin.__main__ import main
from benchjoin.frame.design.file import write_design

ROOM = ["--only", "cut-list"]


def design(folder, name="bench.toml", frame=bench):
    (folder / name).write_text(write_design(frame), encoding="utf-8")
    return str(folder / name)


def run(file, out, *more):
    return main([file, "--out", str(out), *(more or ROOM)])


def started(file, out, *more):
    """The command as a process of its own."""
    command = [sys.executable, "-m", "benchjoin", file, "--out", str(out), *(more or ROOM)]
    return subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)


def listed(out):
    return set(tomllib.loads((out / "contents.toml").read_text(encoding="utf-8"))["files"])


OURS = "# Written by benchjoin: which file is of which design.\n"
STRANGERS = {
    "a stranger's list": "[files]\nmine = 'notes'\n",
    "one that is broken": OURS + "[files\n",
    "one that is cut short": OURS + '[files]\n"a.txt" = { design = "x" }\n',
    "no text": b"\xff\xfe\x00",
    "nested without end": OURS + "files = " + "[" * 5000,
    "long": OURS + "x" * 1_100_000,
}


@pytest.mark.parametrize("words", STRANGERS.values(), ids=STRANGERS)
def test_a_list_that_is_not_ours_is_left_as_it_is(words, tmp_path, capsys):
    out = tmp_path / "out"
    out.mkdir()
    data = words if isinstance(words, bytes) else words.encode()
    (out / "contents.toml").write_bytes(data)
    assert run(design(tmp_path), out) == 3
    assert "contents.toml" in capsys.readouterr().err
    assert [path.name for path in out.iterdir()] == ["contents.toml"]
    assert (out / "contents.toml").read_bytes() == data


@pytest.mark.parametrize("make", [os.mkdir, os.mkfifo], ids=["a folder", "a pipe"])
def test_what_is_no_file_in_the_place_of_the_list_is_told_at_once(make, tmp_path, capsys):
    out = tmp_path / "out"
    out.mkdir()
    make(out / "contents.toml")
    assert run(design(tmp_path), out) == 3
    assert "Take" in capsys.readouterr().err


def test_a_file_that_somebody_changed_stays_until_the_maker_says_over(tmp_path, capsys):
    out, file = tmp_path / "out", design(tmp_path)
    assert run(file, out) == 0
    text = next(out.glob("*.txt"))
    text.write_text("my own remarks")
    assert run(file, out) == 3
    assert "changed since" in capsys.readouterr().err
    assert text.read_text() == "my own remarks"
    assert run(file, out, *ROOM, "--over") == 0
    assert run(file, out) == 0  # and now it is its own again


def test_a_design_of_the_same_name_from_another_file_is_another_design(tmp_path, capsys):
    out = tmp_path / "out"
    assert run(design(tmp_path), out) == 0
    assert run(design(tmp_path, "other.toml", attrs.evolve(bench, length="60 in")), out) == 3
    assert "which has the same name" in capsys.readouterr().err


def test_many_who_write_at_once_lose_no_file_and_no_line(tmp_path):
    out = tmp_path / "out"
    frames = [attrs.evolve(bench, name=f"Bench {letter}") for letter in "ABCD"]
    runs = [started(design(tmp_path, f"{n}.toml", frame), out) for n, frame in enumerate(frames)]
    assert [own.wait(60) for own in runs] == [0] * len(runs)
    files = {path.name for path in out.iterdir()} - {"contents.toml"}
    assert len(files) == 2 * len(frames)
    assert listed(out) == files


def test_a_run_that_is_killed_leaves_whole_files_and_the_next_one_goes_on(tmp_path):
    """A real kill, at moments that a seed gives, of a process that writes sheet after sheet."""
    out, file, chance = tmp_path / "out", design(tmp_path), random.Random(7)
    words = ["--only", "sheets", "cut-list"]
    began = time.perf_counter()
    assert started(file, out, *words).wait(60) == 0
    took = time.perf_counter() - began
    whole = {path.name: path.read_bytes() for path in out.iterdir()}
    for _ in range(5):
        own = started(file, out, *words)
        time.sleep(took * chance.uniform(0.3, 0.95))
        own.send_signal(signal.SIGKILL)
        own.wait(20)
        for path in out.iterdir():
            if not path.name.endswith(".part") and path.name != "contents.toml":
                assert path.read_bytes() == whole[path.name], path.name
    for path in out.glob(".*.part"):
        os.utime(path, (1, 1))
    for path in list(out.glob("*.svg"))[:3]:
        path.unlink()
    assert run(file, out, *words) == 0
    assert {path.name for path in out.iterdir()} == set(whole)
