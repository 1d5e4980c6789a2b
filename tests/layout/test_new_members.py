"""A member of a kind that the package does not have is laid by its row, its place and its joints, and nothing else."""

import attrs
import numpy as np
import pytest
import shapely
from manifold3d import CrossSection, Manifold
from new_members import BOWED, PLAIN, Plank, decked, let_in
from solid_wood import carved, solid

from benchjoin import cut_list, keep, lay_out, milling_plan, settings, what_moved
from benchjoin.binding import sheets
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drawings.views.covering import covered
from benchjoin.drawings.views.isometric import picture
from benchjoin.drawings.views.looking import ISOMETRIC
from benchjoin.drawings.views.view import EYES, view
from benchjoin.layout.net_section import stretches
from benchjoin.layout.ways_in import ways_out
from benchjoin.shop.weights import weights
from benchjoin.sweep import sweep
from benchjoin.template_pages import template_sheets

BOW = 2 / 3 * 30 * 1200
"""Area under a parabola of 30 over 1200. [mm²]"""
CORNER = 70 * 45
"""What a plank loses to a leg, seen from above. [mm²]"""


@pytest.fixture(autouse=True)
def rows(monkeypatch):
    let_in(monkeypatch)


@pytest.fixture
def layout():
    return lay_out(decked())


def region(seen, name):
    return shapely.union_all([face.region for face in seen.faces if face.part == f"1/{name}"])


def bowed_solid(part):
    """The bowed rail in another kernel: a polygon pushed along the depth, less the laps."""
    at = np.linspace(0.0, part.length, 2001)
    edge = [(u, 740 + 4 * 30 * u * (1200 - u) / 1200**2) for u in at]
    wood = Manifold.extrude(CrossSection([[*edge, (1200, 850), (0, 850)]]), 20.0)
    wood = wood.transform([[1, 0, 0, 0], [0, 0, 1, part.blank.low[1]], [0, 1, 0, 0]])  # up the page becomes up
    for cut in part.cuts:
        wood = wood - solid(cut.box)
    return wood


def test_it_lies_where_its_row_says_and_nothing_is_wrong(layout):
    plank = layout.part("shelf/plank 2")
    assert (plank.blank.low, plank.blank.high) == ((0.0, 190.0, 230.0), (1200.0, 310.0, 252.0))
    assert layout.findings == ()


def test_a_corner_is_cut_round_the_leg(layout):
    first = layout.part("shelf/plank 1")
    near, far = sorted(first.cuts_on("top"), key=lambda cut: cut.start)
    assert (near.start, near.end, far.start, far.end) == (0.0, 70.0, 1130.0, 1200.0)
    assert (near.depth, near.open_start, far.open_end, near.called) == (22.0, True, True, "upper face")
    assert first.slabs[0].region.area == pytest.approx(1200 * 120 - 2 * CORNER)


def test_what_it_lies_on_is_kept_with_the_joint(layout):
    lying = [j for j in layout.joints_of(1) if j.kind == "lying" and j.guest == "shelf/plank 2"]
    assert [(j.host, j.contact.low, j.contact.high) for j in lying] == [
        ("shelf/left rail", (0.0, 190.0, 230.0), (20.0, 310.0, 230.0)),
        ("shelf/right rail", (1180.0, 190.0, 230.0), (1200.0, 310.0, 230.0)),
    ]


def test_butts_keep_the_face_on_which_they_touch(layout):
    butt = next(j for j in layout.joints_of(1) if (j.guest, j.host) == ("shelf/left rail", "front left leg"))
    assert (butt.contact.low, butt.contact.high) == ((0.0, 45.0, 160.0), (20.0, 45.0, 230.0))


def test_no_two_parts_share_wood_in_another_kernel(layout):
    parts = layout.piece(1)
    solids = [bowed_solid(part) if part.identity == BOWED else carved(part) for part in parts]
    for number, one in enumerate(solids):
        for other in solids[number + 1 :]:
            assert (one ^ other).volume() < 1e-3


def test_volumes_are_those_of_another_kernel(layout):
    for part in layout.piece(1):
        wood = bowed_solid(part) if part.identity == BOWED else carved(part)
        assert part.volume == pytest.approx(wood.volume(), rel=2e-6), part
        boxes = sum(box.volume() for box in part.solid)
        assert wood.volume() * 0.99 < boxes < wood.volume() * (1 + 1e-6), part


def test_without_its_joint_it_clashes_with_the_legs():
    bare = lay_out(attrs.evolve(decked(), planks=(Plank(10.0, 120.0),)))
    assert not bare.errors()
    low = lay_out(attrs.evolve(decked(), planks=(Plank(0.0, 120.0), Plank(119.0, 120.0))))
    clash = [finding.parts for finding in low.findings if finding.kind == "clash"]
    assert clash == [("shelf/plank 1", "shelf/plank 2")]


def test_what_hangs_in_the_hollow_of_a_bow_is_no_clash(layout):
    rail = layout.part(BOWED)
    hollow = attrs.evolve(rail.blank, low=(500.0, rail.blank.low[1], 740.0), high=(700.0, rail.blank.high[1], 768.0))
    assert all(box.meet(hollow) is None for box in rail.solid)
    wood = attrs.evolve(hollow, high=(700.0, rail.blank.high[1], 771.0))
    assert any(box.meet(wood) is not None for box in rail.solid)


def test_the_cut_list_the_weights_and_the_machines_have_it(layout):
    rows = {(row[0], row[1]): row for row in cut_list(layout).rows}
    assert rows["shelf: plank", "4"][2:5] == ("1200", "120", "22")
    assert rows["shelf: plank", "4"][7] == "2 corners"
    assert rows["shelf: plank", "2"][7] == ""
    heavy = weights(layout).parts
    whole, cut = heavy["1/shelf/plank 2"], heavy["1/shelf/plank 1"]
    assert cut / whole == pytest.approx(1 - 2 * CORNER / (1200 * 120))
    items = [item.name for batch in milling_plan(layout).batches for line in batch.lines for item in line.items]
    assert "2/shelf/plank 3" in items
    assert any("plank" in row[2] for row in settings(layout).crosscut_table().rows)


def test_those_that_are_cut_are_clamped_and_marked_together(layout):
    own = next(one for one in layout.sets if one.title == "planks")
    assert [part.identity for part in own.members] == ["shelf/plank 1", "shelf/plank 3"]
    assert [line.at for line in own.lines] == [70.0, 1130.0]
    assert layout.part("shelf/plank 2").mark == "A15"  # after those that are clamped


def test_planks_are_seen_from_above_without_their_corners(layout):
    seen = view(layout.piece(1), "above")
    under = (1200 - 2 * 70) * 20 + 2 * 20 * (120 - 45)  # the bench's front rail and its end rails lie over it
    assert region(seen, "shelf/plank 1").area == pytest.approx(1200 * 120 - 2 * CORNER - under)
    whole = region(seen, "shelf/plank 2").area
    assert whole == pytest.approx(1200 * 120 - 2 * 20 * 120)


def test_a_bow_is_seen_from_the_front_and_leaves_what_lies_behind_it(layout):
    seen = view(layout.piece(1), "front")
    chords = 2 / 3 * 0.05 * 1200  # what lies between the curve and chords that are 0.05 off at most
    assert region(seen, BOWED).area == pytest.approx(1200 * 110 - BOW, abs=chords)
    hollow = (
        region(seen, "bench/back rail").area
        + region(seen, "front left leg").intersection(shapely.box(0, 740, 70, 850)).area * 2
    )
    assert hollow == pytest.approx(BOW, abs=chords)


def test_a_bow_is_one_surface_from_below_and_from_the_end(layout):
    rail = layout.part(BOWED)
    below = attrs.evolve(EYES["above"], right=(1.0, 0.0, 0.0), up=(0.0, -1.0, 0.0))
    seen = view([rail], below)
    x0, y0, x1, y1 = seen.visible.bounds
    assert (x1 - x0, y1 - y0) == (pytest.approx(1200.0), pytest.approx(20.0))
    assert seen.visible.intersection(shapely.box(x0 + 80, y0 + 1, x1 - 80, y1 - 1)).length == 0.0
    end = view([rail], "left")
    left, low, right, high = end.visible.bounds
    assert (right - left, high - low) == (pytest.approx(20.0), pytest.approx(110.0))


def test_the_picture_shows_the_bow(layout):
    seen = picture(layout.piece(1))
    whole = shapely.union_all([face.region for face in seen.faces if face.part == f"1/{BOWED}"])
    low = ISOMETRIC.project([[600.0, 0.0, 768.0], [600.0, 0.0, 772.0]])
    assert not whole.contains(shapely.Point(low[0]))
    assert whole.contains(shapely.Point(low[1]))


@pytest.mark.parametrize("seen", EYES)
def test_both_ways_of_painting_show_the_same_of_straight_wood(seen):
    parts = lay_out(PLAIN).piece(1) if seen != "back" else lay_out(PLAIN).piece(2)
    straight = [attrs.evolve(part, shaped={}) for part in parts]
    grid = view(straight, seen)
    shapes = covered(straight, EYES[seen].frame)
    for ours, theirs in zip(shapes.lines(), (grid.visible, grid.hidden), strict=True):
        assert ours.symmetric_difference(theirs.buffer(1e-4)).difference(theirs.buffer(1e-3)).length < 1e-3
        assert ours.length == pytest.approx(theirs.length, abs=1e-2)


def test_its_net_section_is_known_at_every_place(layout):
    rail = layout.part(BOWED)
    at = {place: next(s for s in stretches(rail) if s.start <= place < s.end).area for place in (30.0, 600.0)}
    assert at[600.0] == pytest.approx(80 * 20, abs=20 * 1.1)
    assert at[30.0] == pytest.approx((110 - 4 * 30 * 70 * 1130 / 1200**2) * 10, abs=10 * 7)


def test_it_leaves_upwards(layout):
    assert ways_out(layout)["shelf/plank 1"] == (0.0, 0.0, 1.0)
    assert ways_out(layout)["bench/front rail"] == (0.0, -1.0, 0.0)
    assert ways_out(layout)["bench/left rail"] == (0.0, 0.0, 0.0)


def test_every_sheet_and_template_takes_it(layout):
    made = [*sheets(layout), *template_sheets(layout)]
    words = " ".join(item.string for sheet in made for item in sheet.whole if hasattr(item, "string"))
    assert {sheet.name for sheet in made} >= {"arrangement", "elevation-front", "set-d", "parts-apart"}
    assert "plank" in words
    for sheet in made:
        assert not clashes(sheet.whole), sheet.name


def test_it_is_measured_kept_and_moved_like_any_other(layout):
    kept = keep(layout, "1/shelf/plank 1", state="cut")
    later = lay_out(attrs.evolve(kept, length=1250.0))
    assert later.part("1/shelf/plank 1").length == 1200.0
    assert later.part("2/shelf/plank 1").length == 1250.0
    assert any(f.kind == "finished length" and f.parts == ("shelf/plank 1",) for f in later.findings)
    told = {(change.part, change.what): change.by for change in what_moved(layout, later).changes}
    assert told["shelf/plank 2", "length"] == 50.0


def test_a_sweep_takes_it_in_one_step(layout):
    lengths = [1000.0, 1200.0, 1500.0]
    found = sweep(decked(), {"length": lengths}, ["lengths", "volumes", "weights", "marks", "findings"])
    assert found.one_by_one == 0
    assert found.built.all()
    assert found["lengths"]["shelf/plank 1",].tolist() == lengths
    assert found["volumes"]["shelf/plank 1",].tolist() == [(at * 120 - 2 * CORNER) * 22 for at in lengths]
    alone = [lay_out(attrs.evolve(decked(), length=at)).part(BOWED).volume for at in lengths]
    assert found["volumes"][BOWED,] == pytest.approx(alone, rel=1e-9)
    heavy = weights(layout).parts[f"1/{BOWED}"]
    assert found["weights"][BOWED,][1] == pytest.approx(heavy)
