"""Finished PDF of frames, for the clash reader: binder and templates of each, on Letter and A4.

for name, paper, data in finished(frame): ...
"""

from __future__ import annotations

import re
import tempfile
from collections import Counter
from pathlib import Path

from hypothesis import HealthCheck, Phase, given, settings
from paper_reader.checking import faults
from paper_reader.fault import Fault
from strategies import frames

from benchjoin import bind, lay_out, templates
from benchjoin.errors import CannotDraw, PaperError

PAPERS = ("Letter", "A4")
WRITERS = {
    "binder": bind,
    "sticks": lambda layout, path, paper: templates(layout, path, kinds=["sticks"], paper=paper),
    "patterns": lambda layout, path, paper: templates(layout, path, kinds=["patterns"], paper=paper),
    "tiles": lambda layout, path, paper: templates(layout, path, kinds=["tiles"], paper=paper),
}


def finished(frame, papers=PAPERS):
    """What is made of a frame: which of its papers, on which size, and the PDF; or the error that stood in its place.

    Where the layout has errors, or no wood is cut, there are no templates and nothing is told of them.
    """
    layout = lay_out(frame)
    with tempfile.TemporaryDirectory() as folder:
        for paper in papers:
            for kind, write in WRITERS.items():
                path = Path(folder) / f"{kind}.pdf"
                try:
                    write(layout, path, paper=paper)
                except CannotDraw:
                    continue
                except PaperError as error:
                    if "no part of this frame is cut" not in str(error).lower():
                        yield kind, paper, error
                    continue
                yield kind, paper, path.read_bytes()


def faults_of_frame(frame, papers=PAPERS):
    """What is wrong with all paper of a frame: fault, which paper, on which size. A paper not made is a fault."""
    for kind, paper, made in finished(frame, papers):
        found = [Fault("not made", 0, kind, 0.0, 0.0, str(made))] if isinstance(made, PaperError) else faults(made)
        yield from ((fault, kind, paper) for fault in found)


def kind_of_page(fault, kind):
    """What a page is, without what tells it from others of its kind."""
    if kind != "binder":
        return kind
    plain = re.sub(r"^Piece \d+: ", "", fault.title)
    return "cover" if fault.page == 1 else re.split(r"[,:;]| at | of | [A-Z]\b|\d", plain)[0].strip().lower()


def counted(found):
    """Counts by rule, and by rule and kind of page, of what `faults_of_frame` gives."""
    return Counter(fault.rule for fault, _, _ in found), Counter(
        (fault.rule, kind_of_page(fault, kind)) for fault, kind, _ in found
    )


def random_frames(count):
    """The same random frames on each run."""
    found = []

    @settings(
        max_examples=count,
        derandomize=True,
        database=None,
        deadline=None,
        phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    @given(frames())
    def gather(frame):
        found.append(frame)

    gather()
    return found[:count]
