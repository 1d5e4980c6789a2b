"""The small command line: a design file in, the papers for the shop out.

    python -m benchjoin bench.toml --out shop --templates

Reads a design (.toml, or a .py that makes one Frame), lays it out, writes binder and cut list, and says what it wrote
and what the checks found. See ``python -m benchjoin --help``.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from .commands.opening import open_design
from .commands.papers import PAPERS, Wishes, papers
from .commands.progress import Progress
from .commands.writing import Occupied, Shelf
from .errors import BenchjoinError, MissingLibrary, PaperError
from .layout.lay_out import lay_out
from .layout.layout import Layout
from .trade.paper import PAPERS as SIZES
from .trade.paper import SOLD_AS

DONE, NOT_FOR_THE_WOOD, REFUSED, NOT_WRITTEN = range(4)
EXITS = """\
exit codes:
  0  everything asked for is written
  1  written, but the design has errors: there are no pages for the wood until they are mended
  2  the design cannot be read or laid out, or the command is not understood; nothing is written
  3  something could not be written: a file of another design is in the way, or a library is missing
"""


def main(argv: Sequence[str] | None = None) -> int:
    """Run the command line, and give its exit code."""
    given = _parser().parse_args(argv)
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")  # a terminal that lacks a sign shows another
    try:
        layout = lay_out(open_design(Path(given.design), given.frame))
        wishes = Wishes(paper=given.paper, templates=given.templates, only=tuple(given.only or ()))
        return _write(layout, wishes, Shelf(Path(given.out), layout.frame.name, over=given.over))
    except Occupied as error:
        return _said(error, NOT_WRITTEN)
    except BenchjoinError as error:
        return _said(error, REFUSED)
    except OSError as error:
        return _said(f"{error.filename or given.out} cannot be written: {error.strerror or error}.", NOT_WRITTEN)


def _said(error: object, code: int) -> int:
    print(error, file=sys.stderr)
    return code


def _write(layout: Layout, wishes: Wishes, shelf: Shelf) -> int:
    """Write all papers that are wished for; what needs a library that is missing is left out, and told."""
    jobs = papers(layout, wishes)
    shelf.clear_for([job.name for job in jobs])
    code = NOT_FOR_THE_WOOD if layout.errors() else DONE
    with Progress(len(jobs), sys.stderr) as progress:
        for job in jobs:
            progress.step(job.name)
            try:
                shelf.put(job.name, job.write)
            except (MissingLibrary, PaperError) as error:
                code = _said(f"{job.name} is not written. {error}", NOT_WRITTEN)
    for path in shelf.wrote:
        print(f"wrote {path}")
    for finding in layout.findings:
        print(finding)
    count = len(layout.findings)
    print(f"{layout.frame.name}: {len(shelf.wrote)} files, {count or 'no'} finding{'s' * (count != 1)}")
    return code


def _parser() -> argparse.ArgumentParser:
    sizes = [*SOLD_AS, *(size.name for size in SIZES)]
    parser = argparse.ArgumentParser(
        prog="python -m benchjoin",
        description="Lay out a design and write the papers for the shop.",
        epilog=EXITS,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("design", help="a design file: .toml, or a .py that makes one Frame")
    parser.add_argument("--out", default="out", metavar="FOLDER", help="where to write; made if need be (out)")
    parser.add_argument("--paper", choices=sizes, metavar="SIZE", help=f"one of {', '.join(sizes)}")
    parser.add_argument("--templates", action="store_true", help="full-size marking pages as PDF files of their own")
    parser.add_argument("--only", nargs="+", choices=PAPERS, metavar="WHAT", help=f"any of {', '.join(PAPERS)}")
    parser.add_argument("--frame", metavar="NAME", help="the name of the frame in a .py that makes several")
    parser.add_argument("--over", action="store_true", help="write over files of other designs")
    return parser


if __name__ == "__main__":
    sys.exit(main())
