"""Reads finished paper for clashes, and counts its faults by rule and by kind of page.

    python scripts/read_paper_faults.py              gallery, samples and 20 random frames, on Letter and A4
    python scripts/read_paper_faults.py 100          with 100 random frames
    python scripts/read_paper_faults.py 0 bench      the frames of gallery and samples whose name holds a word
    python scripts/read_paper_faults.py FILE.pdf …   files, whoever made them

Two processes share the frames. A few places are told for each count; --all tells every one. Needs what the tests need.
"""

import re
import sys
import time
from collections import defaultdict
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "tests"))

from designs import DESIGNS
from finished_paper import faults_of_frame, kind_of_page, random_frames
from paper_reader.checking import faults
from samples import SAMPLES

PLACES = 3
"""How many places are told for each rule and kind of page."""


def of_frame(named):
    name, frame = named
    return [(fault, kind, f"{name}, {paper}") for fault, kind, paper in faults_of_frame(frame)]


def of_file(name):
    return [(fault, "binder", name) for fault in faults(name)]


def tell(found, places):
    """Counts by rule, then by kind of page with places."""
    by_rule = defaultdict(lambda: defaultdict(list))
    for fault, kind, where in found:
        by_rule[fault.rule][kind_of_page(fault, kind)].append((fault, where))
    for rule, pages in sorted(by_rule.items()):
        print(f"\n## {rule}: {sum(map(len, pages.values()))}\n")
        for page, own in sorted(pages.items(), key=lambda item: -len(item[1])):
            print(f"- {page}: {len(own)}")
            step = max(1, len(own) // places) if places else 1
            for fault, where in own[::step][: places or None]:
                print(
                    f"  - {where}, p. {fault.page} ({fault.title}), at {fault.x:.0f}, {fault.y:.0f} mm: {fault.words}"
                )


def frames_of(words):
    """Frames of gallery and samples whose name holds one of the words, if there are any, and random ones."""
    count = next((int(word) for word in words if word.isdecimal()), 20)
    words = [word for word in words if not word.isdecimal()]
    known = {**DESIGNS, **SAMPLES}
    chosen = [(n, f) for n, f in known.items() if not words or any(re.search(word, n) for word in words)]
    return [*chosen, *((f"random {n}", frame) for n, frame in enumerate(random_frames(count) if count else [], 1))]


if __name__ == "__main__":
    words = [word for word in sys.argv[1:] if word != "--all"]
    files = [word for word in words if word.endswith(".pdf")]
    work, jobs = (of_file, files) if files else (of_frame, frames_of(words))
    began = time.perf_counter()
    with ProcessPoolExecutor(2) as pool:
        found = [one for own in pool.map(work, jobs) for one in own]
    print(f"{len(jobs)} {'files' if files else 'frames'}, {len(found)} faults, {time.perf_counter() - began:.0f} s.")
    tell(found, 0 if "--all" in sys.argv else PLACES)
