"""A list of boards is read as it is meant, or refused with every fault by its line and column."""

import pytest

from benchjoin import Board, Defect, read_boards
from benchjoin.errors import BoardListError

HEAD = "board,length (in),width (in),thickness (in),stock,count,price,defect,from (in),to (in),where,deep (in)\n"
LIST = (
    HEAD
    + """rack 1,144,5 1/2,1,,,12.50,split,0,6,across,
,,,,,,,knot,40,42,,
rack 1,,,,,,,wane,60,70 1/2,near edge,3/8

yard,96,3.5,1.5,"larch 2x4, milled",10,,,,,,
"""
)


def test_boards_with_their_defects():
    one, many = read_boards(LIST)
    split, knot = Defect("split", 0, "6 in"), Defect("knot", "40 in", "42 in")
    wane = Defect("wane", "60 in", "70 1/2 in", where="near edge", deep="3/8 in")
    size = {"length": "144 in", "width": "5 1/2 in", "thickness": "1 in"}
    assert one == Board("rack 1", price=12.5, defects=[split, knot, wane], **size)
    size = {"length": "96 in", "width": "3 1/2 in", "thickness": "1 1/2 in"}
    assert many == Board("yard", stock="larch 2x4, milled", count=10, **size)


def test_a_spreadsheet_with_semicolons_decimal_commas_and_a_mark_is_read():
    text = (
        "\ufeffboard;length (mm);width (mm);thickness (mm);defect;from (mm);to (mm)\nb1;2400;142,5;27;knot;300;312,5\n"
    )
    (board,) = read_boards(text)
    assert (board.width, board.defects) == (142.5, (Defect("knot", 300, 312.5),))


def test_a_file_is_read_by_its_path(tmp_path):
    path = tmp_path / "boards.csv"
    path.write_text(LIST, encoding="utf-8")
    assert read_boards(path) == read_boards(LIST)
    with pytest.raises(BoardListError, match="neither a list of boards nor a file"):
        read_boards(tmp_path / "none.csv")


def test_every_fault_is_told_with_its_line_and_column():
    text = (
        HEAD
        + """a,144,wide,1,,,,,,,,
a,144,5,1,,,,,,,,
,,,,,,,hole,1,2,,
b,,5,1,,,,,,,,
c,120,5,1,,x,,split,9,3,,
d,120,5,1,,,,knot,,4,middle,
e,120,5,1,,,,knot,110,130,,
"""
    )
    with pytest.raises(BoardListError) as caught:
        read_boards(text)
    told = str(caught.value)
    for words in (
        "line 2, width: 'wide' is no size in in",
        "line 3, board: 'a' stands on line 2 already",
        "line 4, defect: 'hole' is none. Choose split, knot, wane",
        "line 5, length: 'b' has none yet",
        "line 6, count: 'x' is no number",
        "line 6, end: it ends at",
        "line 7, where: 'middle' is no place",
        "line 8, defects: a knot ends at 3302 mm",
    ):
        assert words in told, told
    assert len(caught.value.faults) == 8


@pytest.mark.parametrize(
    "text, words",
    [
        ("\n", "length, width, thickness are missing"),
        ("board,length,width (in),thickness (in)\n", "says no unit"),
        ("board,length (in),width (in)\na,1,2\n", "thickness are missing"),
        ("board,length (in),width (in),thickness (in),colour\n", "'colour' is no column"),
        ("board,board,length (in),width (in),thickness (in)\n", "stands there twice"),
        (HEAD, "it holds no board"),
        (HEAD + ",,,,,,,knot,1,2,,\n", "no board is above"),
        (HEAD + "a,1,2,3,,,,,,,,,9\n", "more cells than headings"),
        (HEAD + "a,,2,3,,,,,,,,\n", "has none yet"),
        (HEAD + "a,144,,3,,,,,,,,\n", "line 2, width: 'a' has none"),
        (HEAD + "a,144,5,1,,,,knot,4,,,\n", "from where to where"),
    ],
)
def test_lists_that_are_none(text, words):
    with pytest.raises(BoardListError, match=words):
        read_boards(text)


def test_a_cell_without_end_is_told_by_its_line():
    with pytest.raises(BoardListError, match=r"line 2: field larger than field limit.*Save the list as plain CSV"):
        read_boards("board,length (mm),width (mm),thickness (mm)\nA," + "9" * 140_000 + ",90,45\n")
