"""From a sketch to a first frame: what is assumed is told, what is open stays open until it is settled; ranges."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchjoin import Range, Stock, alter, lay_out, sketch
from benchjoin.__main__ import main
from benchjoin.errors import AddressError, DesignFileError, LengthError
from benchjoin.frame.design.file import read_design, write_design
from benchjoin.frame.design.undecided import read_sketch
from benchjoin.notebook import explore
from benchjoin.sweep import sweep


def first(**more):
    return sketch("Potting bench", **{"length": 1500, "depth": 600, "height": 850, **more})


def test_a_few_sizes_make_a_frame_that_can_be_built():
    found = first(back=1200, shelf=200)
    layout = lay_out(found.settled())
    assert not layout.errors()
    assert max(part.blank.high[2] for part in layout.piece(1) if part.level == "worktop") == pytest.approx(850.0)
    assert layout.leg("back left").length == 1200.0
    shelf = [part.blank.high[2] for part in layout.piece(1) if part.level == "shelf" and part.role == "rail"]
    assert shelf == pytest.approx([200.0] * 4)


def test_every_assumed_value_is_told_and_what_is_given_is_not_assumed():
    said = first(shelf=200).table().text()
    for what in ("leg, thickness", "rails of the worktop", "top board, width", "corners"):
        assert what in said
    own = first(leg=Stock("larch", thickness=60, width=60))
    assert "leg, thickness" not in own.table().text()
    assert own.frame.front.stock.name == "larch"


def test_what_is_undecided_stays_a_range_until_it_is_settled():
    found = sketch("Stand", length="59 in", depth="24 in", height="33 to 34 in", shelf="8 to 9 in")
    assert set(found.open) == {"front.height", "shelf.top"}
    assert found.open["shelf.top"] == Range("8 in", "9 in")
    with pytest.raises(AddressError, match=r"front\.height, shelf\.top is open yet"):
        found.settled()
    frame = found.settled({"front.height": "32 1/2 in", "shelf.top": "8 1/2 in"})
    assert frame.levels()[0].top == pytest.approx(8.5 * 25.4)
    assert frame.tape.unit == "in"


def test_open_ranges_go_into_a_sweep_and_under_sliders():
    found = first(shelf="200 to 230 mm")
    swept = sweep(found.frame, {"shelf.top": Range(200, 230, 10)}, ["marks"])
    assert swept["marks"]["front left leg", "shelf/front rail", "top"].tolist() == [200.0, 210.0, 220.0, 230.0]
    sliders = explore(found.frame, found.open)
    sliders.move("shelf.top", 221)
    assert sliders.frame == alter(found.frame, {"shelf.top": 221})


@given(st.floats(1, 2000), st.floats(1, 500), st.floats(0.5, 50))
def test_a_range_has_both_ends_and_rises_by_its_step(low, more, step):
    own = Range(low, low + more, min(step, more))
    values = own.values(1.0)
    assert values[0] == pytest.approx(low)
    assert values[-1] == pytest.approx(low + more)
    assert all(0 < b - a <= own.step + 1e-6 for a, b in pairwise(values))


@pytest.mark.parametrize("words", ["8 to", "to 9 in", "8-9 in", "", "9 to 8 in", "8 to 9", "a to b in", None])
def test_no_range_is_told(words):
    with pytest.raises(LengthError):
        Range.said(words)


def test_a_unit_said_once_is_that_of_both_ends():
    assert Range.said("8 1/2 to 9 in") == Range("8 1/2 in", "9 in")
    assert Range.said("20 cm to 9 in") == Range(200, "9 in")


def test_steps_that_cannot_be_are_refused():
    for step in (0, -1, 500):
        with pytest.raises(LengthError):
            Range(100, 200, step)
    with pytest.raises(LengthError, match="too fine"):
        Range(0, 100_000, 0.01).values(1.0)


def test_a_planed_section_is_found_either_way_about():
    assert Stock.planed("70x45").thickness == Stock.planed("45x70").thickness == 45.0


def test_a_name_that_addresses_use_is_refused_with_those_that_are_kept():
    from benchjoin.errors import DescriptionError

    with pytest.raises(DescriptionError, match=r"not name, length, depth, front, back.*clear below"):
        alter(first().frame, {"worktop.name": "back"})


UNDECIDED = """\
format = 1
name = "Stool, 2 to 3 of them"
length = "16 in"
depth = "12 to 14 in"
front = { stock = "leg", height = "18 in" }
back = { stock = "leg", height = "18 in" }
rail_stock = "rail"
stack = [{ clear = "4 to 5 in" }, { level = "foot", front = "2 in", ends = "2 in" }, { clear = "open" },
         { level = "seat", front = "2 to 2 1/2 in", back = "2 in", flush = "front leg top" }]
[stocks]
leg = { thickness = "1 1/2 in", width = "1 1/2 in" }
rail = { thickness = "3/4 in" }
"""


class TestInAFile:
    """What is undecided stays a range in a design file until it is set."""

    def test_ranges_are_found_by_their_addresses(self):
        found = read_sketch(UNDECIDED)
        assert found.open == {
            "depth": Range("12 in", "14 in"),
            "clear below foot.size": Range("4 in", "5 in"),
            "seat.front.width": Range("2 in", "2 1/2 in"),
        }
        assert found.frame.name == "Stool, 2 to 3 of them"
        assert found.frame.depth == pytest.approx(13 * 25.4)
        assert (
            found.frame.tape
            == read_design(UNDECIDED.replace(" to 14", "").replace(" to 5", "").replace(" to 2 ", " ")).tape
        )

    def test_a_decided_file_has_nothing_open(self):
        frame = read_sketch(UNDECIDED).settled({"depth": 320, "clear below foot.size": 110, "seat.front.width": "2 in"})
        assert read_sketch(write_design(frame)).open == {}
        assert read_sketch(write_design(frame)).frame == read_design(write_design(frame)) == frame

    def test_a_file_may_say_the_sizes_of_a_sketch_and_no_more(self):
        sizes = {"name": "Desk", "length": "48 in", "depth": "20 to 24 in", "height": "30 in"}
        text = "\n".join(["format = 1", "[sketch]", *(f'{key} = "{own}"' for key, own in sizes.items())])
        assert read_sketch(text).frame == sketch(**sizes).frame
        assert read_sketch(text).open == sketch(**sizes).open

    @pytest.mark.parametrize(
        "change, words",
        [
            (('leg = { thickness = "1 1/2 in"', 'leg = { thickness = "1 to 2 in"'), "no size that can stay open"),
            (('"12 to 14 in"', '"14 to 12 in"'), "depth"),
            (('"12 to 14 in"', '"12 to 14"'), "depth"),
            (("format = 1", "format = 1\nsketch = 3"), "beside it"),
            (("format = 1\n", 'format = 1\n[sketch]\nlenght = "3 in"\n[x]\n'), "beside it"),
        ],
    )
    def test_what_cannot_stay_open_is_told(self, change, words):
        with pytest.raises(DesignFileError, match=words):
            read_sketch(UNDECIDED.replace(*change))

    def test_sizes_that_a_sketch_does_not_have_are_told(self):
        with pytest.raises(DesignFileError, match="perhaps back and shelf, not name, hight"):
            read_sketch('format = 1\n[sketch]\nname = "x"\nhight = 3\n')

    @pytest.mark.parametrize("first", ["", "format = 2\n", "format = true\n", 'format = "1"\n'])
    def test_a_sketch_says_its_format_as_every_file_does(self, first):
        sizes = '[sketch]\nname = "x"\nlength = 900\ndepth = 400\nheight = 700\n'
        assert read_sketch(f"format = 1\n{sizes}").frame.length == 900
        with pytest.raises(DesignFileError, match="begin it with: format = 1"):
            read_sketch(first + sizes)

    def test_the_command_says_what_is_open_and_takes_what_settles_it(self, tmp_path, capsys):
        file = tmp_path / "stool.toml"
        file.write_text(UNDECIDED, encoding="utf-8")
        out = ["--out", str(tmp_path / "out"), "--only", "cut-list"]
        assert main([str(file), *out]) == 2
        told = capsys.readouterr().err
        assert "depth: 12 in to 14 in" in told
        assert "--set 'depth=…'" in told
        assert not (tmp_path / "out").exists()
        values = ["--set", "depth=13 in", "--set", "clear below foot.size=4 1/4 in", "--set", "seat.front.width=57"]
        assert main([str(file), *out, *values]) == 0
        lines = (tmp_path / "out" / "stool-2-to-3-of-them-cut-list.csv").read_text(encoding="utf-8-sig").splitlines()
        assert any(line.startswith("foot: end rail,2,10,") for line in lines), lines  # 13 less the legs, 1 1/2 each
        for wrong in (["--set", "depth"], ["--set", "dept=3"], [*values, "--set", "length=0"]):
            assert main([str(file), *out, *wrong]) == 2

    def test_sliders_take_what_is_open(self):
        found = read_sketch(UNDECIDED)
        assert list(explore(found).sliders) == list(found.open)
