"""Rules of writing: nothing on it, nothing cut from it, and its heights those of the series.

The series is that of ISO 3098-1: 1.8, 2.5, 3.5, 5, 7, 10, 14 and 20 mm, from memory.
"""

from __future__ import annotations

import re
from collections import defaultdict
from statistics import median

import numpy as np
import shapely

from .fault import fault

SERIES = (1.8, 2.5, 3.5, 5.0, 7.0, 10.0, 14.0, 20.0)
OFF = 0.05
"""How far off the series a height may be: what is lost where files count in steps. [mm]"""
LEAST_FRACTION = 2.5
OVERLAP = 0.02
"""Area that letters have in common before they lie on each other. [mm²]"""
SEEN = 0.02
"""What of a letter's box is no more seen than nothing, and what of it is as good as whole."""
CLOSE, LEVEL = 0.15, 0.1
"""A line of writing that begins so close to the end of another, along it and across it, runs on: of the size."""
FLAT = frozenset("EFHIKLMNTXZ")
"""Capitals that stand on their line and reach as high as capitals do, no higher."""
FRACTION = re.compile(r"(?<![\w/.,])[1-9][0-9]?/(?:2|4|8|16|32|64)(?![\w/]|[.,][0-9])")


def text_on_text(seen):
    """Lines of writing whose letters lie on each other, or that run into each other without a gap."""
    pairs = defaultdict(list)
    for a, b in seen.ink_tree.query(seen.inks, predicate="intersects").T:
        one, other = seen.letters[a][1], seen.letters[b][1]
        if one < other and (both := shapely.intersection(seen.inks[a], seen.inks[b])).area > OVERLAP:
            pairs[one, other].append(both)
    for (one, other), places in pairs.items():
        words = f"{seen.lines[one].text!r} and {seen.lines[other].text!r}"
        yield fault("text on text", seen.page, shapely.union_all(places), words)
    for one, other in _running_on(seen):
        if (one, other) not in pairs and (other, one) not in pairs:
            words = f"{seen.lines[one].text!r} runs into {seen.lines[other].text!r}"
            yield fault("text on text", seen.page, seen.lines[other].ink, words)


def _running_on(seen):
    """Pairs of lines of which the other begins where the first ends, or too soon after it for a space."""
    if not seen.letters:
        return []
    shown = defaultdict(list)
    for letter, n in seen.letters:
        shown[n].append(letter)
    starts, ends = (np.array(own) for own in zip(*((of[0].start, of[-1].end) for of in shown.values()), strict=True))
    known = list(shown)
    along, sizes = np.array([(seen.lines[n].along, seen.lines[n].size) for n in known]).T
    step = (starts[None, :] - ends[:, None]) / along[:, None] / np.maximum(sizes[:, None].real, sizes[None, :].real)
    same = np.abs(along[None, :] / along[:, None] - 1) < 0.01
    near = same & (np.abs(step.imag) < LEVEL) & (np.abs(step.real) < CLOSE)
    return [(known[a], known[b]) for a, b in np.argwhere(near) if a != b]


def unwritten(seen):
    """A page on which nothing is written, or nothing as text, so that no rule could ask about it."""
    if not seen.letters:
        wide, high = seen.page.size
        yield fault("nothing written", seen.page, shapely.box(0.0, 0.0, wide, high), "no letter is found on the page")


def text_cut(seen):
    """Lines of writing that a clip cuts, that a white patch covers, or that reach over the page."""
    parts = defaultdict(list)
    for share, n in seen.shares:
        parts[n].append(share)
    for n, shares in parts.items():
        if max(shares) > SEEN and min(shares) < 1 - SEEN:
            yield fault("text cut", seen.page, seen.lines[n].ink, f"{seen.lines[n].text!r}")


def capital_shares(pages):
    """Height of capitals of each font, of its size, as its flat capitals on all pages measure."""
    found = defaultdict(list)
    for page in pages:
        for letter in page.letters:
            if letter.text in FLAT:
                found[letter.font].append(letter.tall / letter.size)
    return {font: median(shares) for font, shares in found.items()}


def capitals(letter, shares):
    """How high capitals are in the font of a letter. [mm]"""
    known = shares.get(letter.font) or next(iter(shares.values()), 0.72)
    return letter.size * known


def heights_off_the_series(seen, shares):
    """Lines of writing with capitals, or figures, of a height that is not in the series."""
    for line in seen.lines:
        heights = {round(capitals(letter, shares), 2) for letter in line.letters}
        off = sorted(h for h in heights if np.abs(np.array(SERIES) - h).min() > OFF)
        if off:
            told = ", ".join(f"{h:.2f}" for h in off)
            yield fault("height off the series", seen.page, line.ink, f"{line.text!r} is {told} mm high")


def low_fractions(seen, shares):
    """Lines of writing with fractions of an inch whose figures are lower than they may be."""
    for line in seen.lines:
        letters = "".join(letter.text for letter in line.letters)
        for found in FRACTION.finditer(letters):
            own = line.letters[found.start() : found.end()]
            least = min(capitals(letter, shares) for letter in own)
            if least < LEAST_FRACTION - OFF:
                place = shapely.union_all([shapely.box(*letter.ink) for letter in own])
                yield fault("low fraction", seen.page, place, f"{found[0]!r} in {line.text!r} is {least:.2f} mm high")
