"""The package as it is handed on: built, looked into, installed, and run from where it was installed."""

from __future__ import annotations

import os
import re
import subprocess
import sys
import tarfile
import zipfile
from email import message_from_string
from pathlib import Path

import pytest

import benchjoin

ROOT = Path(__file__).parents[1]
pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def built(tmp_path_factory):
    """The wheel and the source distribution."""
    folder = tmp_path_factory.mktemp("dist")
    subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "-d", str(folder)], cwd=ROOT, check=True, capture_output=True
    )
    (wheel,), (source,) = folder.glob("*.whl"), folder.glob("*.tar.gz")
    return wheel, source


def test_the_wheel_has_types_font_and_licences_and_no_tests(built):
    names = zipfile.ZipFile(built[0]).namelist()
    for wanted in (
        "benchjoin/py.typed",
        "benchjoin/LICENCE.txt",
        "benchjoin/drafting/writers/font/BenchjoinSans-Bold.ttf",
    ):
        assert wanted in names
    assert sum(name.endswith("LICENCE.txt") and "dist-info/licenses" in name for name in names) == 2
    assert not [name for name in names if name.startswith(("tests/", "gallery/"))]


def test_its_metadata_says_version_licence_readme_and_command(built):
    archive = zipfile.ZipFile(built[0])
    (place,) = [name for name in archive.namelist() if name.endswith("dist-info/METADATA")]
    said = message_from_string(archive.read(place).decode())
    assert said["Version"] == benchjoin.__version__
    assert said["License-Expression"] == "MIT"
    assert "# benchjoin" in said.get_payload()
    (commands,) = [archive.read(name).decode() for name in archive.namelist() if name.endswith("entry_points.txt")]
    assert re.search(r"^benchjoin = benchjoin\.__main__:run$", commands, re.MULTILINE)


def test_the_source_has_what_a_test_of_it_needs(built):
    with tarfile.open(built[1]) as archive:
        names = archive.getnames()
    for wanted in ("README.md", "pyproject.toml", "scripts/test", "tests/conftest.py", "gallery/honey_house_bench.py"):
        assert any(name.endswith(f"/{wanted}") for name in names)


def test_installed_it_runs_from_there(built, tmp_path):
    site = tmp_path / "site"
    asked = [
        sys.executable,
        "-m",
        "pip",
        "install",
        "-q",
        "--no-deps",
        "--no-index",
        "--target",
        str(site),
        str(built[0]),
    ]
    subprocess.run(asked, check=True, capture_output=True)
    path = os.pathsep.join([str(site), *filter(None, [os.environ.get("PYTHONPATH")])])
    told = "import benchjoin; print(benchjoin.__file__); from benchjoin.__main__ import main; main(['--version'])"
    answer = subprocess.run(
        [sys.executable, "-c", told],
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": path},
        capture_output=True,
        text=True,
    )
    assert str(site) in answer.stdout
    assert f"benchjoin {benchjoin.__version__}" in answer.stdout
