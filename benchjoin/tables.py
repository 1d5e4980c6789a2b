"""Headed rows that show themselves as plain text, Markdown, CSV and HTML.

Everything that the shop reads as a list (cut list, marks, settings) is a Table: strings under headings, ready for
paper. Whoever makes the table has already turned lengths into tape readings.

>>> table = Table("Cut list", ("Part", "Length"), (("front rail", "57"), ("end rail", "20 3/8")), align="lr")
>>> print(table.text())
Cut list
<BLANKLINE>
Part        Length
----------  ------
front rail      57
end rail    20 3/8
"""

from __future__ import annotations

import csv
import html
import io
import re
from collections.abc import Mapping
from typing import Any

import attrs

from .borrowed import borrowed
from .cells import row

_MARKUP = re.compile(r"[\\`*_\[\]|~]")
OWN = "color:inherit;background:transparent"
"""The colours of what a table stands on, whatever a notebook has for its own."""


@attrs.frozen
class Table:
    """A title, column headings, rows of strings, and notes below; align is one letter (l, r, c) a column.

    numbers are what rows say in words, by their heading and unit ("Length [mm]"), for whoever computes with them.
    """

    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...] = ()
    align: str = ""
    numbers: Mapping[str, tuple[float, ...]] = attrs.field(factory=dict, eq=False, repr=False)

    def aligned(self) -> str:
        """One letter for each column, l where none was given."""
        return (self.align + "l" * len(self.columns))[: len(self.columns)]

    def text(self) -> str:
        """Columns lined up with spaces, for a terminal or a plain file."""
        cells = (self.columns, *self.rows)
        widths = [max(len(row[i]) for row in cells) for i in range(len(self.columns))]

        def line(row: tuple[str, ...]) -> str:
            put = {"l": str.ljust, "r": str.rjust, "c": str.center}
            fitted = (put[a](cell, w) for cell, w, a in zip(row, widths, self.aligned(), strict=True))
            return "  ".join(fitted).rstrip()

        body = [line(self.columns), "  ".join("-" * w for w in widths), *map(line, self.rows)]
        return "\n".join([self.title, "", *body, *(("", *self.notes) if self.notes else ())])

    def markdown(self) -> str:
        """A pipe table; what would be markup inside a cell is escaped."""
        rule = {"l": "---", "r": "---:", "c": ":---:"}

        def line(row: tuple[str, ...]) -> str:
            return "| " + " | ".join(map(_plain, row)) + " |"

        lines = [f"**{_plain(self.title)}**", "", line(self.columns), line(tuple(rule[a] for a in self.aligned()))]
        return "\n".join([*lines, *map(line, self.rows), *(f"\n{_plain(note)}" for note in self.notes)])

    def csv(self) -> str:
        """Comma-separated rows under their headings (RFC 4180, lines end in CR LF); no title, no notes."""
        out = io.StringIO(newline="")
        csv.writer(out).writerows(map(row, (self.columns, *self.rows)))
        return out.getvalue()

    def html(self) -> str:
        """A plain HTML table with the title as its caption; everything is escaped."""
        side, whole = {"l": "left", "r": "right", "c": "center"}, {"l": "", "r": "white-space:nowrap;", "c": ""}

        def line(row: tuple[str, ...], tag: str) -> str:
            cells = zip(row, self.aligned(), strict=True)
            return (
                f'<tr style="{OWN}">'
                + "".join(
                    f'<{tag} style="text-align:{side[a]};{whole[a]}{OWN}">{html.escape(cell)}</{tag}>'
                    for cell, a in cells
                )
                + "</tr>"
            )

        head = f"<caption style='{OWN}'>{html.escape(self.title)}</caption><thead>{line(self.columns, 'th')}</thead>"
        body = "".join(line(row, "td") for row in self.rows)
        notes = "".join(f"<p>{html.escape(note)}</p>" for note in self.notes)
        return f"<table style='{OWN}'>{head}<tbody>{body}</tbody></table>{notes}"

    def to_pandas(self) -> Any:
        """The rows as a pandas DataFrame: words as they stand, and numbers beside them with their unit in the heading.

        ``attrs["units"]`` says the unit of each column of numbers.

        Raises
        ------
        MissingLibrary
            If pandas is not installed.
        """
        pandas = borrowed("pandas", "Data frames")
        found = pandas.DataFrame(list(self.rows), columns=list(self.columns))
        for name, values in self.numbers.items():
            found[name] = list(values)
        found.attrs["units"] = {name: name[name.rindex("[") + 1 : -1] for name in self.numbers if name.endswith("]")}
        return found

    def __str__(self) -> str:
        return self.text()

    def __repr__(self) -> str:
        return self.text()

    def _repr_html_(self) -> str:
        return self.html()

    def _repr_markdown_(self) -> str:
        return self.markdown()


def _plain(text: str) -> str:
    """Words that Markdown leaves as they are, on one line."""
    return _MARKUP.sub(r"\\\g<0>", html.escape(" ".join(text.split()), quote=False))


class ShownAsTable:
    """What shows itself in a notebook as its table."""

    def table(self) -> Table:
        """All of it, ready for paper."""
        raise NotImplementedError

    def _repr_html_(self) -> str:
        return self.table().html()
