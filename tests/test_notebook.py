"""In a notebook: values show themselves, and sliders carry a design along."""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import time

import attrs
import numpy as np
import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from samples import SAMPLES

from benchjoin import Notch, alter, assembly, elevation, fasten, lay_out, milling_plan, set_page, strength
from benchjoin.drawings.views.isometric import picture
from benchjoin.drawings.views.looking import ISOMETRIC, look_from
from benchjoin.errors import AddressError, BenchjoinError, LengthError
from benchjoin.notebook import explore, look_round, register
from benchjoin.notebook.completing import asked_for
from benchjoin.notebook.turning import SIDE
from benchjoin.shop.overview import key_numbers, marks_list, wood_totals

INCH = 25.4


@pytest.fixture(scope="module")
def shell(tmp_path_factory):
    from IPython.core.interactiveshell import InteractiveShell

    os.environ["IPYTHONDIR"] = str(tmp_path_factory.mktemp("ipython"))  # whoever runs this may have no home
    shell = InteractiveShell()
    assert register(shell)
    yield shell
    shell.history_manager.end_session()


def shown(shell, value):
    """What a notebook shows of a value, by kind."""
    return shell.display_formatter.format(value)[0]


def test_a_frame_shows_a_picture_and_its_key_numbers(shell):
    page = shown(shell, bench)["text/html"]
    assert "<svg" in page
    assert "57 in × 23 in × 70 in" in page


def test_a_picture_says_of_which_pieces_it_is_where_they_differ(shell):
    differs = alter(bench, {"2/bench/front rail.length": "56 1/2 in"})
    assert "<p>Pieces 1 and 3</p>" in shown(shell, lay_out(differs))["text/html"]
    assert "<p>Piece" not in shown(shell, lay_out(bench))["text/html"]


def test_a_frame_that_cannot_be_laid_out_says_why(shell):
    full = alter(bench, {"clear below foot shelf.size": "40 in"})
    page = shown(shell, full)["text/html"]
    assert "too much" in page
    assert "<svg" not in page


def test_a_layout_shows_marks_and_findings(shell):
    wrong = lay_out(alter(bench, {"corners": "staggered", "bench.ends.joint": Notch()}))
    page = shown(shell, wrong)["text/html"]
    assert "<svg" in page
    assert "✗ error" in page
    assert "48 3/8" in page


def test_findings_show_themselves_one_or_many_and_other_tuples_as_ever(shell):
    findings = lay_out(alter(bench, {"bench.front.width": "3 1/4 in"})).findings
    assert "! warning" in shown(shell, findings[0])["text/html"]
    page = shown(shell, findings)["text/html"]
    assert page.count("! warning") == 1  # what is true of the left and of the right is told once
    assert page.count("The same: bench/right rail.") == 1
    assert "text/html" not in shown(shell, ("a", 1))
    assert "text/html" not in shown(shell, ())


def test_sheets_and_tables_show_themselves(shell):
    layout = lay_out(bench)
    assert "<svg" in shown(shell, elevation(layout, "front"))["text/html"]
    assert "text/html" in shown(shell, marks_list(layout))


def test_names_are_escaped(shell):
    page = shown(shell, attrs.evolve(bench, name="<b>bold & brave</b>"))["text/html"]
    assert "<b>bold" not in page
    assert "&lt;b&gt;bold &amp; brave" in page


def test_register_without_a_notebook_does_nothing():
    assert register() is False


def test_importing_benchjoin_registers_where_ipython_runs_and_loads_nothing_of_it_elsewhere():
    ask = (
        "import sys, benchjoin; heavy = ('IPython', 'ipywidgets', 'pandas', 'matplotlib', 'benchjoin.notebook');"
        "print([name for name in heavy if name in sys.modules])"
    )
    answer = subprocess.run([sys.executable, "-c", ask], capture_output=True, text=True, check=True)
    assert answer.stdout.strip() == "[]"


def test_a_table_as_a_data_frame():
    pytest.importorskip("pandas")
    table = marks_list(lay_out(bench))
    frame = table.to_pandas()
    assert list(frame.columns[: len(table.columns)]) == list(table.columns), "as it is read first"
    assert frame.iloc[0].tolist()[: len(table.columns)] == list(table.rows[0])
    assert frame["To [mm]"].iloc[0] - frame["From [mm]"].iloc[0] == pytest.approx((9.75 - 7) * 25.4), "then in numbers"


def test_marks_and_totals_by_hand():
    layout = lay_out(bench)
    assert marks_list(layout).rows[:2] == (
        ("front left leg", "foot shelf/front rail", "7", "9 3/4", "5/8"),
        ("front left leg", "bench/front rail", "32", "35 1/2", "5/8"),
    )
    # by hand, feet: three times 2 × 35 1/2 + 2 × 70 = 211 in of legs; 6 × 57 + 4 × 20 3/8 = 423 1/2 in of rails
    assert [(row[0], row[1], row[2]) for row in wood_totals(layout).rows] == [
        ("larch 2x4, milled", "12", f"{3 * 211 / 12:.1f}"),
        ("larch 1x6, planed", "30", f"{3 * 423.5 / 12:.1f}"),
    ]
    assert (
        dict(key_numbers(lay_out(rack)).rows)["Length × depth × height over everything"] == "900 mm × 500 mm × 1750 mm"
    )


def test_a_slider_carries_everything_along():
    explorer = explore(bench, {"length": ("48 in", "72 in"), "bench.front.width": ("2 in", "5 in", "1/4 in")})
    slider = explorer.sliders["bench.front.width"]
    assert slider.value == bench.levels()[1].front.width
    assert [label for label, _ in slider.options][:3] == ["2 in", "2 1/4 in", "2 1/2 in"]
    before = {name: view.value for name, view in explorer.views.items()}
    explorer.move("bench.front.width", "4 in")
    explorer.move("length", "60 in")
    assert explorer.frame == alter(bench, {"length": "60 in", "bench.front.width": "4 in"})
    assert explorer.layout.leg("front left").notches[1].bottom == pytest.approx(31.5 * INCH)
    assert "31 1/2" in explorer.views["marks"].value
    changed = {name for name, view in explorer.views.items() if view.value != before[name]}
    assert changed >= {"elevation", "marks", "wood"}
    # 57 to 60: 3 in more on six rails of each of three pieces
    assert f"{3 * (423.5 + 6 * 3) / 12:.1f}" in explorer.views["wood"].value
    assert explorer.views["elevation"].value.count("<svg") == 1


def test_a_position_that_cannot_be_built_says_why_and_the_way_back_is_open():
    explorer = explore(bench, {"clear below foot shelf.size": ("1 in", "40 in")})
    before = {name: view.value for name, view in explorer.views.items()}
    explorer.move("clear below foot shelf.size", "40 in")
    assert explorer.layout is None
    assert "too much" in explorer.views["findings"].value
    for name in ("elevation", "marks", "wood"):
        assert explorer.views[name].value == f'<div style="opacity:0.3">{before[name]}</div>'
    explorer.move("clear below foot shelf.size", "7 in")
    assert explorer.layout is not None
    assert {name: view.value for name, view in explorer.views.items()} == before
    assert "too much" not in explorer.views["findings"].value


def test_a_slider_starts_where_the_design_stands_even_between_marks():
    explorer = explore(alter(bench, {"length": 1447.3}), {"length": ("48 in", "72 in")})
    assert explorer.sliders["length"].value == 1447.3
    assert explorer.frame.length == 1447.3


def test_a_slider_that_is_not_there_names_those_that_are():
    with pytest.raises(AddressError, match="There are 'length'"):
        explore(bench, {"length": ("48 in", "72 in")}).move("depth", 500)


def test_explorers_show_themselves(shell):
    explorer = explore(SAMPLES["three pairs"], {"length": (1500, 1700)}, seen="back")
    assert repr(explorer) == "<Explorer of Counter: length>"
    assert "application/vnd.jupyter.widget-view+json" in explorer._repr_mimebundle_()


@pytest.mark.parametrize(
    "ranges, kind, words",
    [
        ({"lenght": (1, 2)}, AddressError, "Did you mean"),
        ({"corners": (1, 2)}, AddressError, "moves a length"),
        ({"length": (2000, 1000)}, BenchjoinError, "low end, a high end"),
        ({"length": ("48", "60")}, LengthError, "no unit"),
    ],
)
def test_ranges_that_are_none_are_refused(ranges, kind, words):
    with pytest.raises(kind, match=words):
        explore(bench, ranges)


@pytest.mark.slow
def test_a_hundred_steps_of_a_drag_take_little_more_than_drawing():
    explorer = explore(bench, {"length": ("48 in", "72 in")})
    stops = [stop for _, stop in explorer.sliders["length"].options][:100]
    layout = lay_out(bench)

    def median(job, values):
        times = []
        for value in values:
            start = time.perf_counter()
            job(value)
            times.append(time.perf_counter() - start)
        return statistics.median(times)

    def move(stop):
        explorer.sliders["length"].value = stop

    ratio = median(move, stops) / median(lambda _: elevation(layout, "front").svg(), stops)
    print(f"a step of the slider takes {ratio:.1f} times as long as drawing from a fixed layout")
    assert ratio < 6


def test_values_show_themselves_by_the_display_protocol_alone():
    """No front end has to be told of them."""
    layout = lay_out(bench)
    work = fasten(layout, wood="western larch")
    plan = assembly(layout, fastening=work)
    found = strength(layout, wood="western larch", corner_blocks=["butt"])
    for value, words in (
        (bench, "Honey-house bench"),
        (layout, "Marks over the foot"),
        (layout.leg("front left"), "A1"),
        (work, "No. 8 screw"),
        (plan, "Putting it together"),
        (found, "How near"),
    ):
        page = value._repr_html_()
        assert words in page
        assert "background:#fff" in page  # words stay dark on light in a dark theme


def test_the_pages_are_loaded_when_one_is_asked_for():
    told = (
        "import sys; from benchjoin import Clear, Frame, Leg, Level, Stock, lay_out\n"
        "s = Stock('s', thickness=40, width=70)\n"
        "l = lay_out(Frame(name='a', length=900, depth=400, front=Leg(s, height=700), back=Leg(s, height=700),"
        " rail_stock=s, stack=[Clear(), Level('top', front=70, back=70, flush='front leg top')]))\n"
        "assert not [m for m in sys.modules if m.startswith('benchjoin.notebook')]\n"
        "assert 'svg' in l._repr_html_()"
    )
    subprocess.run([sys.executable, "-c", told], check=True)


class TestLookingRound:
    def test_the_picture_turns_with_its_sliders(self):
        round_it = look_round(lay_out(bench))
        assert look_from(-45, 35) == ISOMETRIC  # where the sliders begin
        front_left = round_it.view.value
        round_it.turn.value = 135
        behind = round_it.view.value
        assert front_left.count("<svg") == behind.count("<svg") == 1
        assert behind != front_left
        round_it.turn.value = -45
        assert round_it.view.value == front_left

    @pytest.mark.parametrize("turn", [-180, -90, -45, 0, 45, 135])
    @pytest.mark.parametrize("height", [-85, 85])
    def test_it_stays_inside_its_square_wherever_one_stands(self, turn, height):
        for name in ("single row", "drip board"):
            round_it = look_round(lay_out(SAMPLES[name]))
            round_it.turn.value, round_it.height.value = turn, height
            seen = picture(round_it.parts, look_from(turn, height)).lines.bounds
            assert max(seen[2] - seen[0], seen[3] - seen[1]) * round_it._scale <= SIDE

    def test_a_size_is_as_long_as_the_cosine_of_its_angle_to_the_paper(self):
        """ISO 5456-3: an edge at an angle to the paper is seen as much shorter as the cosine of the angle says."""
        for turn, height in ((0, 0), (30, 20), (-100, -60), (175, 80)):
            look = look_from(turn, height)
            way = np.array(look.way) / np.linalg.norm(look.way)
            for axis in np.eye(3):
                seen = np.hypot(*look.project(100 * axis)) / np.sqrt(1.5)
                assert seen == pytest.approx(100 * np.sqrt(1 - (axis @ way) ** 2), abs=1e-3)


def test_sets_notches_and_plans_show_themselves(shell):
    layout = lay_out(bench)
    assert "9 3/4 in (247.65 mm)" in layout.set("A")._repr_html_()
    notches = layout.leg("front left").notches
    assert "35 1/2 in (901.7 mm)" in shown(shell, notches)["text/html"]
    assert repr(notches[0]).startswith(
        "<Housing for foot shelf/front rail: from 7 in (177.8 mm) to 9 3/4 in (247.65 mm)"
    )
    assert "35 1/2 in (901.7 mm)" in repr(layout.leg("front left"))
    assert "notches" in milling_plan(layout)._repr_html_()


def test_a_full_size_page_fits_its_cell_and_says_how_large_it_is():
    sheet = set_page(lay_out(bench), "A")
    page = sheet._repr_html_()
    assert f"{sheet.width:.6g} × {sheet.height:.6g} mm on paper, drawn 1:1" in page
    assert 'style="width:100%;height:auto"' in page


NAMES = {"mine": bench, "laid": lay_out(bench), "n": 3}


class TestTheTabKey:
    """Addresses go on from what is typed, inside the quotes of what takes them."""

    @pytest.mark.parametrize(
        "typed, first",
        [
            ('alter(mine, {"bench.fr', "bench.front"),
            ('alter(laid, {"length": "60 in", "clear below be', "clear below bench.size"),
            ("explore(mine, {\n  'length': (1, 2),\n  'foot shelf.ba", "foot shelf.back"),
            ('sweep(mine, {"', "name"),
        ],
    )
    def test_it_offers_what_goes_on(self, typed, first):
        assert next(iter(asked_for(typed, NAMES)))[0] == first

    @pytest.mark.parametrize("typed", ['print("len', 'alter(n, {"len', 'alter(mine, {"length": "6', 'alter(mine, "x'])
    def test_it_offers_nothing_elsewhere(self, typed):
        assert not list(asked_for(typed, NAMES))

    def test_a_shell_completes_the_rest_of_the_word(self, shell):
        from IPython.core.completer import provisionalcompleter

        shell.user_ns["mine"] = bench
        register(shell)  # again: nothing is offered twice
        typed = 'alter(mine, {"clear below be'
        with provisionalcompleter():
            found = list(shell.Completer.completions(typed, len(typed)))
        assert [typed[: own.start] + own.text for own in found] == [
            f'alter(mine, {{"clear below bench.{field}' for field in ("at", "size", "weight")
        ]
