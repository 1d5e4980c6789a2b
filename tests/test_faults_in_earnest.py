"""A full disk, a closed pipe, no such folder, a Ctrl-C, no home, a locale without letters: told, and nothing torn."""

from __future__ import annotations

import os
import resource
import signal
import subprocess
import sys
import time

import attrs
import pytest
from designs import plain_bench as bench

from benchjoin.frame.design.file import write_design


@pytest.fixture
def file(tmp_path):
    path = tmp_path / "bänk.toml"
    path.write_text(write_design(attrs.evolve(bench, name="Bänk ½")), encoding="utf-8")
    return path


def command(file, *more):
    return [sys.executable, "-m", "benchjoin", str(file), "--out", str(file.parent / "out"), *more]


def ended(words, **more):
    done = subprocess.run(words, stdin=subprocess.DEVNULL, stderr=subprocess.PIPE, timeout=60, check=False, **more)
    told = done.stderr.decode(errors="replace")
    assert "Traceback" not in told
    assert "Exception ignored" not in told
    return done.returncode, told


def test_a_disk_that_is_full_tears_nothing(file):
    """No file may grow over 30 kB: the binder does not fit, the cut lists do."""
    out = file.parent / "out"
    assert ended(command(file, "--only", "cut-list"), stdout=subprocess.DEVNULL)[0] == 0
    before = {path.name: path.read_bytes() for path in out.iterdir()}
    limit = lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (30_000, 30_000))  # noqa: E731
    code, told = ended(command(file), stdout=subprocess.DEVNULL, preexec_fn=limit)
    assert code == 3
    assert "cannot be written: File too large" in told
    after = {path.name: path.read_bytes() for path in out.iterdir()}
    assert {name: data for name, data in after.items() if name in before} == before


@pytest.mark.parametrize("place", ["/proc/here", "FILE/under", "/dev/null"])
def test_a_folder_that_cannot_be_is_told(file, place):
    words = command(file, "--only", "cut-list")
    words[words.index("--out") + 1] = place.replace("FILE", str(file))
    code, told = ended(words, stdout=subprocess.DEVNULL)
    assert code == 3
    assert "cannot be written" in told


def test_nobody_listens(file):
    out, into = os.pipe()
    os.close(out)
    assert ended(command(file, "--only", "cut-list"), stdout=into)[0] == 3
    os.close(into)
    with open("/dev/full", "wb") as full:
        assert ended(command(file, "--only", "cut-list"), stdout=full)[0] == 3
    closed = f'exec "$@" >&-'  # noqa: F541
    assert ended(["bash", "-c", closed, "-", *command(file, "--only", "cut-list")])[0] == 0


def test_ctrl_c_ends_it_without_a_traceback(file):
    watch = command(file, "--watch", "--only", "cut-list")
    with subprocess.Popen(watch, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as own:
        next(line for line in own.stdout if line.startswith(b"watching"))
        assert pressed(own) == 0
        assert own.stderr.read() == b""
    draw = command(file, "--only", "sheets")
    with subprocess.Popen(draw, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE) as own:
        for _ in range(400):
            if own.poll() is not None or any((file.parent / "out").glob("*.svg")):
                break
            time.sleep(0.02)
        assert pressed(own) in (130, 0)
        assert b"Traceback" not in own.stderr.read()


def pressed(own):
    """How a run ends whose keyboard is interrupted, within a minute; one that does not end is killed."""
    own.send_signal(signal.SIGINT)
    try:
        return own.wait(60)
    finally:
        own.kill()


def test_no_home_and_a_locale_without_letters(file):
    bare = {name: own for name, own in os.environ.items() if name in ("PATH", "PYTHONPATH", "SYSTEMROOT")}
    around = {**bare, "LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0", "PYTHONIOENCODING": "ascii"}
    assert ended(command(file, "--only", "cut-list"), env=bare, stdout=subprocess.DEVNULL)[0] == 0
    assert any((file.parent / "out").glob("b*nk*.txt"))
    code, told = ended(command(file), env=around, stdout=subprocess.DEVNULL)
    assert code == 3
    assert "Set a UTF-8 one" in told


def test_an_exception_that_cannot_say_what_it_is(tmp_path):
    path = tmp_path / "design.py"
    path.write_text("class Odd(Exception):\n    def __str__(self):\n        raise ValueError\nraise Odd\n")
    code, told = ended(command(path), stdout=subprocess.DEVNULL)
    assert code == 2
    assert "design.py, line 4: Odd: Odd" in told
