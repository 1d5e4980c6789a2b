"""Finished paper has no clash: no text on text, cut or struck through, and nothing that cannot be read.

A reader that knows nothing of benchjoin goes over binders and templates on Letter and A4; the quick run over those of
the gallery on the paper of their own tape, the slow one over the other paper, all samples and a hundred random frames.
Counts are printed (pytest -s).
"""

from __future__ import annotations

import pytest
from designs import DESIGNS, PLAIN_SAMPLES, plain_stand
from finished_paper import PAPERS, counted, faults_of_frame, random_frames

from benchjoin.drawings.making.house import default_paper


def told(found):
    """Counts by rule, and a few places of each."""
    by_rule, _ = counted(found)
    lines = [f"{count} × {rule}" for rule, count in by_rule.most_common()]
    for rule in by_rule:
        own = [(fault, kind, paper) for fault, kind, paper in found if fault.rule == rule]
        lines += [f"  {kind} on {paper}, {fault}" for fault, kind, paper in own[:3]]
    return "\n".join(lines)


def must_be_clean(name, frame, papers=PAPERS):
    found = list(faults_of_frame(frame, papers))
    print(f"{name}, {' and '.join(papers)}: {len(found)} faults\n{told(found)}")
    assert not found, f"{name}: {len(found)} faults\n{told(found)}"


GALLERY = {**DESIGNS, "stand": plain_stand}
"""The stand without its glove rack: marks of dividers that lie so close crowd on sticks and tiles."""


@pytest.mark.parametrize(
    "name", [pytest.param(n, marks=pytest.mark.slow if n in ("rack", "stand") else ()) for n in GALLERY]
)
def test_paper_of_the_gallery_has_no_clash(name):
    must_be_clean(name, GALLERY[name], [default_paper(GALLERY[name])])


@pytest.mark.slow
@pytest.mark.parametrize("name", GALLERY)
def test_the_other_paper_of_the_gallery_has_no_clash(name):
    must_be_clean(name, GALLERY[name], [paper for paper in PAPERS if paper != default_paper(GALLERY[name])])


@pytest.mark.slow
@pytest.mark.parametrize("name", PLAIN_SAMPLES)
def test_paper_of_the_samples_has_no_clash(name):
    must_be_clean(name, PLAIN_SAMPLES[name])


@pytest.mark.parametrize(
    "number",
    [
        pytest.param(7, id="a line 4 mm from the top on a reduced set"),
        pytest.param(28, id="gaps of a hair in a section"),
        pytest.param(33, id="a way as long as one dash"),
        pytest.param(65, id="a stick that ends beside its last line"),
        pytest.param(77, id="two joints at one place of a leg"),
        pytest.param(89, id="a flag led past the wood"),
    ],
)
def test_paper_of_a_crowded_frame_has_no_clash(number):
    must_be_clean(f"random {number}", random_frames(100)[number - 1], ["A4"])


@pytest.mark.slow
@pytest.mark.parametrize("tenth", range(10))
def test_paper_of_random_frames_has_no_clash(tenth):
    for number, frame in enumerate(random_frames(100)[10 * tenth : 10 * tenth + 10], 10 * tenth + 1):
        must_be_clean(f"random {number}", frame)
