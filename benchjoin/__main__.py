"""The small command line: a design file in, the papers for the shop out.

    benchjoin bench.toml --out shop --templates

Reads a design (.toml, or a .py that makes one Frame), lays it out, writes binder and cut list, and says what it wrote
and what the checks found. See ``benchjoin --help``; ``python -m benchjoin`` is the same.
"""

from __future__ import annotations

import argparse
import os
import sys
import webbrowser
from collections.abc import Sequence
from contextlib import suppress
from functools import partial
from pathlib import Path

import attrs

from .commands.opening import open_design, settings
from .commands.papers import PAPERS, Wishes, papers
from .commands.progress import Progress
from .commands.watching import saved
from .commands.writing import Occupied, Shelf
from .errors import BenchjoinError, MissingLibrary, PaperError
from .frame.address import alter
from .layout.lay_out import lay_out
from .layout.layout import Layout
from .trade.paper import PAPERS as SIZES
from .trade.paper import SOLD_AS
from .version import __version__

DONE, NOT_FOR_THE_WOOD, REFUSED, NOT_WRITTEN = range(4)
STOPPED = 130
EXITS = """\
exit codes:
  0  everything asked for is written
  1  written, but the design has errors: there are no pages for the wood until they are mended
  2  the design cannot be read or laid out, or the command is not understood; nothing is written
  3  something could not be written: a file of another design is in the way, the disk is full, a library is missing
  130  stopped by Ctrl-C
"""


def main(argv: Sequence[str] | None = None) -> int:
    """Run the command line, and give its exit code."""
    given = _parser().parse_args(argv)
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")  # a terminal that lacks a sign shows another
    if not given.watch:
        return _once(given, show=given.open)
    code = DONE
    try:
        for count in saved(Path(given.design)):
            code = _once(given, show=given.open and count == 0)
            print(f"watching {given.design}; stop with Ctrl-C", flush=True)
    except KeyboardInterrupt:
        pass
    return code


def run() -> None:
    """The command `benchjoin`; who stops it, or stops listening to it, gets no traceback."""
    try:
        code = main()
        for stream in filter(None, (sys.stdout, sys.stderr)):
            stream.flush()
    except KeyboardInterrupt:
        code = STOPPED
    except OSError:  # what it says cannot be said: the pipe is closed, or the disk is full
        code = NOT_WRITTEN
    for stream in filter(None, (sys.stdout, sys.stderr)):
        with suppress(OSError):
            stream.flush()
            continue
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
    sys.exit(code)


def _once(given: argparse.Namespace, *, show: bool) -> int:
    """Read the design, lay it out, and write what is asked for."""
    try:
        frame = open_design(Path(given.design), given.frame, settings(given.set or ()))
        layout = lay_out(frame if given.tape is None else alter(frame, {"tape": given.tape}))
        wishes = Wishes(paper=given.paper, templates=given.templates, only=tuple(given.only or ()))
        shelf = Shelf(Path(given.out), layout.frame.name, Path(given.design), over=given.over)
        with shelf.held():
            code = _write(layout, wishes, shelf)
        if show and shelf.wrote:
            webbrowser.open(shelf.wrote[0].resolve().as_uri())
        return code
    except Occupied as error:
        return _said(error, NOT_WRITTEN)
    except BenchjoinError as error:
        return _said(error, REFUSED)
    except UnicodeEncodeError as error:
        told = f"The locale of this system cannot write {error.object!a}. Set a UTF-8 one: LC_ALL=C.UTF-8."
        return _said(told, NOT_WRITTEN)
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
    missing = ""
    with Progress(sys.stderr) as progress:
        for job in jobs:
            try:
                shelf.put(job.name, partial(job.write, told=progress.step))
            except MissingLibrary as error:
                code, missing = NOT_WRITTEN, str(error)
            except PaperError as error:
                code = _said(f"{job.name} is not written. {error}", NOT_WRITTEN)
    if missing:
        drawn = papers(layout, attrs.evolve(wishes, only=("sheets",), templates=False))
        for job in drawn if "sheets" not in wishes.wanted() else ():
            shelf.put(job.name, partial(job.write, told=str))
        _said(f"No PDF is written, but every sheet as SVG. {missing}", NOT_WRITTEN)
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
        prog="benchjoin",
        description="Lay out a design and write the papers for the shop.",
        epilog=EXITS,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("design", help="a design file: .toml, or a .py that makes one Frame")
    parser.add_argument("--out", default="out", metavar="FOLDER", help="where to write; made if need be (out)")
    parser.add_argument("--paper", choices=sizes, metavar="SIZE", help=f"one of {', '.join(sizes)}")
    parser.add_argument("--templates", action="store_true", help="full-size marking pages as PDF files of their own")
    parser.add_argument("--only", nargs="+", choices=PAPERS, metavar="WHAT", help=f"any of {', '.join(PAPERS)}")
    parser.add_argument("--tape", metavar="READS", help='how lengths read, whatever the design says: "1/16 in", "1 mm"')
    parser.add_argument(
        "--set", action="append", metavar="ADDRESS=VALUE", help="another value, as --set 'length=60 in'"
    )
    parser.add_argument("--open", action="store_true", help="show the first file that is written")
    parser.add_argument("--watch", action="store_true", help="write again each time the design is saved, until Ctrl-C")
    parser.add_argument("--frame", metavar="NAME", help="the name of the frame in a .py that makes several")
    parser.add_argument("--over", action="store_true", help="write over files of other designs")
    parser.add_argument("--version", action="version", version=f"benchjoin {__version__}")
    return parser


if __name__ == "__main__":
    run()
