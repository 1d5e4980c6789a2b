"""Laid out, drawn and saved from many threads at once, everything comes out as from one."""

from __future__ import annotations

import hashlib
from concurrent.futures import ThreadPoolExecutor

import attrs
import pytest
from designs import plain_bench
from samples import SAMPLES

from benchjoin import bind, lay_out
from benchjoin.drawings.views.elevation import elevation

FRAMES = [attrs.evolve(plain_bench, quantity=1), SAMPLES["single row"]]


def made(frame, folder):
    """All that is written of a frame, as one sum."""
    layout = lay_out(frame)
    folder.mkdir()
    bind(layout, folder / "a.pdf")
    bind(layout, folder / "a.html")
    elevation(layout, "front").save(folder / "a.svg")
    whole = hashlib.sha256()
    for path in sorted(folder.iterdir()):
        whole.update(path.name.encode() + path.read_bytes())
    return whole.hexdigest()


@pytest.mark.slow
def test_many_threads_write_the_bytes_of_one(tmp_path):
    alone = [made(frame, tmp_path / f"alone-{n}") for n, frame in enumerate(FRAMES)]
    jobs = [(frame, tmp_path / f"{turn}-{n}") for turn in range(2) for n, frame in enumerate(FRAMES)]
    with ThreadPoolExecutor(4) as pool:
        together = list(pool.map(lambda job: made(*job), jobs))
    assert together == alone * 2
