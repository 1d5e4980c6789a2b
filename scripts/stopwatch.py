"""Timing, for scripts/bench: the least of many runs of jobs that take turns, and whole processes.

A run can only be held up, so the least time says most about the job; jobs that are compared take turns, so that an hour
that is slow is slow for both. What is read is the processor's own time, so that other work on the machine is not in it.
"""

from __future__ import annotations

import gc
import os
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager

Job = Callable[[], object]


def fastest(runs: int, *jobs: Job | tuple[Job, Callable[..., object]]) -> list[float]:
    """Least time of each job, after one run that is not counted. [ms]

    A pair is a way to make ready, which is not timed, and a job that is given what comes of it.
    """
    pairs = [job if isinstance(job, tuple) else (lambda: None, lambda _, own=job: own()) for job in jobs]
    least = [float("inf")] * len(pairs)
    with _no_collector():
        for number in range(runs + 1):
            for place, (ready, job) in enumerate(pairs):
                given = ready()
                start = time.process_time()
                job(given)
                spent = (time.process_time() - start) * 1000
                if number:
                    least[place] = min(least[place], spent)
    return least


def few(job: Job, runs: int, enough: float = 1000.0) -> float:
    """Least time of a job that may be long: no more runs once all took so much together; at least two. [ms]"""
    spent: list[float] = []
    while len(spent) < 2 or (len(spent) < runs and sum(spent) < enough):
        with _no_collector():
            start = time.process_time()
            job()
            spent.append((time.process_time() - start) * 1000)
    return min(spent)


@contextmanager
def _no_collector() -> Iterator[None]:
    """Python's garbage collector rests: it would stop one job for what another left."""
    gc.collect()
    gc.disable()
    try:
        yield
    finally:
        gc.enable()


def processes(runs: int, *codes: str) -> list[float]:
    """What codes add to a bare Python, in whole processes that take turns: the least of them. [ms]

    All that they import is compiled in a first round that is not counted, whatever the environment says about that.
    Numpy has one thread: several wait busily after its import, which would be charged to whoever goes on longer.
    """
    least = dict.fromkeys(("pass", *codes), float("inf"))
    with tempfile.TemporaryDirectory() as compiled:
        place = {
            **os.environ,
            "PYTHONPYCACHEPREFIX": compiled,
            "PYTHONDONTWRITEBYTECODE": "",
            "OPENBLAS_NUM_THREADS": "1",
        }
        for number in range(runs + 1):
            for code, before in least.items():
                start = _of_children()
                subprocess.run([sys.executable, "-c", code], check=True, env=place)
                if number:
                    least[code] = min(before, _of_children() - start)
    bare, *found = least.values()
    return [own - bare for own in found]


def _of_children() -> float:
    """What all finished processes that were started here took of the processor. [ms]"""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return (used.ru_utime + used.ru_stime) * 1000
