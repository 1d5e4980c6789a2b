"""Tables on the way out: text, Markdown, CSV and HTML; findings and sources that say where they come from."""

from __future__ import annotations

import csv
import html
import io
from html.parser import HTMLParser

import pytest

from benchjoin import cells
from benchjoin.findings import Finding, in_order
from benchjoin.sources import COMMON_PRACTICE, Source
from benchjoin.tables import Table

TABLE = Table(
    "Cut list, <make 3>",
    ("Part", "Length", "Note"),
    (
        ("front rail", "57", 'left | right, "flush"'),
        ("end rail", "20 3/8 scant", "a <b> &amp; c, d"),
        ("leg", "", "=SUM(A1)"),
    ),
    notes=("Lengths in <inches> &amp; sixteenths.",),
    align="lr",
)


class Cells(HTMLParser):
    """The text of every cell, row by row, as a browser would show it."""

    def __init__(self):
        super().__init__()
        self.rows, self.tags, self.rest = [], [], {}

    def handle_starttag(self, tag, attrs):
        self.tags.append(tag)
        if tag == "tr":
            self.rows.append([])
        if tag in ("td", "th"):
            self.rows[-1].append("")

    def handle_endtag(self, tag):
        assert self.tags.pop() == tag

    def handle_data(self, data):
        if self.tags[-1] in ("td", "th"):
            self.rows[-1][-1] += data
        else:
            self.rest[self.tags[-1]] = self.rest.get(self.tags[-1], "") + data


def test_text_lines_its_columns_up():
    assert TABLE.text() == (
        "Cut list, <make 3>\n"
        "\n"
        "Part              Length  Note\n"
        "----------  ------------  ---------------------\n"
        'front rail            57  left | right, "flush"\n'
        "end rail    20 3/8 scant  a <b> &amp; c, d\n"
        "leg                       =SUM(A1)\n"
        "\n"
        "Lengths in <inches> &amp; sixteenths."
    )


def test_a_table_shows_itself_as_its_text():
    assert str(TABLE) == repr(TABLE) == TABLE.text()


def test_a_bar_in_a_cell_does_not_end_the_cell_of_a_markdown_table():
    lines = TABLE.markdown().splitlines()
    assert lines[0] == "**Cut list, &lt;make 3&gt;**"  # nothing is taken for a tag
    assert lines[2:5] == [
        "| Part | Length | Note |",
        "| --- | ---: | --- |",
        '| front rail | 57 | left \\| right, "flush" |',
    ]
    assert html.unescape(lines[-1]) == TABLE.notes[0]
    for line in lines[2:7]:
        assert line.replace("\\|", "").count("|") == 4


def test_csv_reads_back_as_the_rows_with_their_headings():
    found = csv.reader(io.StringIO(TABLE.csv(), newline=""))
    assert tuple(tuple(map(cells.back, line)) for line in found) == (TABLE.columns, *TABLE.rows)


def test_csv_keeps_line_ends_inside_a_cell_and_ends_its_own_lines_as_rfc_4180_says():
    table = Table("t", ("a", "b"), (("one\ntwo", 'say "x"'),))
    assert table.csv() == 'a,b\r\n"one\ntwo","say ""x"""\r\n'


def test_html_shows_every_cell_as_it_is_and_takes_none_for_a_tag():
    page = Cells()
    page.feed(TABLE.html())
    assert tuple(map(tuple, page.rows)) == (TABLE.columns, *TABLE.rows)
    assert page.rest == {"caption": TABLE.title, "p": TABLE.notes[0]}
    assert page.tags == []
    assert "<make" not in TABLE.html()


def test_a_notebook_is_given_html_and_markdown():
    assert TABLE._repr_html_() == TABLE.html()
    assert TABLE._repr_markdown_() == TABLE.markdown()


def test_a_column_without_a_letter_stands_to_the_left():
    assert TABLE.aligned() == "lrl"


def test_a_table_without_rows_still_has_its_headings():
    empty = Table("Findings", ("Where", "What"), ())
    assert empty.text() == "Findings\n\nWhere  What\n-----  ----"
    assert list(csv.reader(io.StringIO(empty.csv()))) == [["Where", "What"]]


def test_a_row_that_is_too_short_is_not_printed():
    with pytest.raises((ValueError, IndexError)):
        Table("t", ("a", "b"), (("one",),)).text()


def finding(severity, where):
    return Finding(severity=severity, kind="land", where=where, sentence=f"{where} is short.", source=COMMON_PRACTICE)


def test_findings_stand_errors_first_and_otherwise_as_found():
    found = [finding("note", "a"), finding("warning", "b"), finding("error", "c"), finding("warning", "d")]
    assert [f.where for f in in_order(found)] == ["c", "b", "d", "a"]


def test_a_finding_says_its_sentence_and_its_authority():
    assert str(finding("warning", "land")) == "warning: land is short. [common practice, no source]"


def test_a_source_says_whether_anybody_read_it():
    assert str(Source("ISO 7200:2004", "Table 1")) == "ISO 7200:2004, Table 1"
    assert str(Source("ISO 7200:2004")) == "ISO 7200:2004"
    assert str(Source("ISO 3098-1", "cl. 6", standing="from memory")) == "ISO 3098-1, cl. 6 (from memory)"
