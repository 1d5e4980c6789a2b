"""All rules on all pages of a file."""

from __future__ import annotations

from .drawn import lines_through_text, short_dashes, wide_lines_close
from .page import read_pages
from .patterns import captions_beside
from .seen import Seen
from .written import capital_shares, heights_off_the_series, low_fractions, text_cut, text_on_text, unwritten

RULES = (unwritten, text_on_text, text_cut, lines_through_text, short_dashes, wide_lines_close, captions_beside)
OF_HEIGHTS = (heights_off_the_series, low_fractions)


def faults(source):
    """Faults of a PDF, given as a path or as bytes, page by page."""
    return faults_of(read_pages(source))


def faults_of(pages):
    """Faults of pages of one file, whose fonts are measured on all of them."""
    shares, found = capital_shares(pages), []
    for page in pages:
        seen = Seen(page)
        found += [fault for rule in RULES for fault in rule(seen)]
        found += [fault for rule in OF_HEIGHTS for fault in rule(seen, shares)]
    return found
