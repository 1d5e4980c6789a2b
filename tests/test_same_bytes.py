"""The same design gives the same bytes, whoever runs it, wherever, whenever, in whatever language."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from designs import GALLERY
from designs import plain_bench as bench
from designs import plain_rack as rack
from samples import SAMPLES

from benchjoin.frame.design.file import write_design

PLACES = {
    "a": {"PYTHONHASHSEED": "0", "LC_ALL": "C"},
    "b c": {"PYTHONHASHSEED": "4711", "LC_ALL": "de_DE.UTF-8", "TZ": "Asia/Tokyo"},
}
SWEEP = """
import hashlib, sys
sys.path.insert(0, sys.argv[1])
from honey_house_bench import bench
from benchjoin.sweep import sweep
found = sweep(bench, {"length": [500, 1200, 1500], "bench.front.width": [60, 95]}, ["marks", "lengths", "findings"])
for name, arrays in found.outputs.items():
    for words, array in arrays.items():
        print(name, words, hashlib.sha256(array.tobytes()).hexdigest(), arrays.sentence(words))
print(list(found.reasons))
"""


def run(folder, words, **settings):
    env = {**os.environ, **settings}
    answer = subprocess.run(
        [sys.executable, *words], cwd=folder, env=env, capture_output=True, text=True, encoding="utf-8"
    )
    assert answer.returncode == 0, answer.stderr
    return answer.stdout


@pytest.mark.slow
@pytest.mark.parametrize("frame", [bench, rack, SAMPLES["measured batch"]], ids=lambda frame: frame.name)
def test_papers_are_the_same_bytes_in_any_place_language_and_hash_seed(tmp_path, frame):
    found = []
    for name, settings in PLACES.items():
        folder = tmp_path / name
        folder.mkdir()
        (folder / "design.toml").write_text(write_design(frame), encoding="utf-8")
        words = ["-m", "benchjoin", "design.toml", "--only", "binder", "cut-list", "sheets", "templates"]
        said = run(folder, words, **settings).replace("\\", "/")
        files = {path.name: path.read_bytes() for path in sorted((folder / "out").iterdir())}
        own = files.pop("contents.toml")  # it says where the design lies
        assert str(folder / "design.toml").encode() in own
        found.append((said, files))
    (said, files), (said_again, files_again) = found
    assert files.keys() == files_again.keys()
    assert [name for name in files if files[name] != files_again[name]] == []
    assert said == said_again
    assert {Path(name).suffix for name in files} == {".pdf", ".txt", ".csv", ".svg"}


@pytest.mark.slow
def test_sweeps_and_design_files_are_the_same_in_any_hash_seed(tmp_path):
    told = [run(tmp_path, ["-c", SWEEP, str(GALLERY)], **settings) for settings in PLACES.values()]
    assert told[0] == told[1]
