"""Hidden lines against other renderers: a depth buffer in numpy, and the shadows of manifold3d's meshes.

The buffer (tests/depth_buffer.py) works from blanks and cuts alone. Isometric axes after ISO 5456-3 and NAVEDTRA
14276 (three axes 120 degrees apart, receding edges at 30 degrees, one scale along all three).
"""

from __future__ import annotations

import math
from itertools import combinations

import attrs
import depth_buffer as eyes
import numpy as np
import pytest
import shapely
from depth_buffer import NOTHING, TWICE, Raster, inside, labels
from designs import STRAIGHT_DESIGNS
from hypothesis import assume, given, settings
from manifold3d import Manifold
from samples import SAMPLES
from solid_wood import carved
from strategies import frames

from benchjoin import Stock, lay_out
from benchjoin.drawings.views.isometric import picture
from benchjoin.drawings.views.looking import ISOMETRIC, Look
from benchjoin.drawings.views.view import view
from benchjoin.frame.roles import RAIL
from benchjoin.frame.slots import Slot
from benchjoin.layout.joints.meeting import Cut
from benchjoin.layout.parts import Part
from benchjoin.readings import Tape
from benchjoin.solids import Box, placement

BOARD = Stock("board", thickness=12)
ACROSS = 330
"""Pixels over the larger side of a view."""


def board(name, low, high, along, cuts=()):
    """A board of its own making, with boxes cut out of its upper or lower side."""
    box = Box(low, high)
    axes = (0, 2, 1) if along[0] else (1, 2, 0)
    slot = Slot(name=name, role=RAIL, of=None, stock=BOARD, side="front", axes=axes, width=60.0, true_edge="front")
    return Part(
        slot=slot,
        piece=1,
        blank=box,
        placement=placement(box, along=along, out=(0.0, 0.0, 1.0)),
        marked="top",
        tape=Tape("1 mm"),
        cuts=tuple(Cut(part=name, mate="", face="top", box=Box(*cut), kind="half-lap") for cut in cuts),
    )


def egg_crate(count=4, pitch=70.0, thick=12.0, high=60.0):
    """Boards on edge that cross and halve each other, those along x open below and those along y open above."""
    length = pitch * (count + 1)
    places = [pitch * (n + 1) for n in range(count)]
    found = []
    for n, at in enumerate(places):
        cuts = [((x, at - 9.0, -1.0), (x + thick, at + 2 * thick, high / 2)) for x in places]
        found.append(board(f"along {n}", (0.0, at, 0.0), (length, at + thick, high), (1.0, 0.0, 0.0), cuts))
        cuts = [((at - 9.0, y, high / 2), (at + 2 * thick, y + thick, high + 1)) for y in places]
        found.append(board(f"across {n}", (at, 0.0, 0.0), (at + thick, length, high), (0.0, 1.0, 0.0), cuts))
    return tuple(found)


STANDS = {**STRAIGHT_DESIGNS, **SAMPLES}


def parts_of(name):
    return egg_crate() if name == "egg-crate" else lay_out(STANDS[name]).piece(1)


@pytest.fixture(scope="module", params=[*STANDS, "egg-crate"])
def parts(request):
    return parts_of(request.param)


ROUND = {"behind, from below": Look((-18, -32, 10)), "from the right, high up": Look((-32, 6, -28))}
"""Other ways to look than the isometric one, by the way of the ray."""


def along(ray):
    """A look of the buffer along a ray: level to the right and up the page, so large as an isometric picture is."""
    x, y, _ = ray
    right = np.array([y, -x, 0]) / math.hypot(x, y)
    up = np.cross(right, ray) / np.linalg.norm(ray)
    assert up[2] > 0
    return eyes.Look(*(tuple(way * math.sqrt(1.5)) for way in (right, up)), ray)


LOOKS = {**eyes.LOOKS, **{name: along(look.way) for name, look in ROUND.items()}}


@attrs.frozen
class Shown:
    """What the library shows from one side: regions by part and lines."""

    faces: tuple
    lines: object


def shown(parts, seen):
    if seen == "isometric" or seen in ROUND:
        found = picture(parts, ROUND.get(seen, ISOMETRIC))
        return Shown(found.faces, found.lines)
    found = view(parts, seen)
    return Shown(found.faces, found.visible)


def painted(parts, faces, raster):
    """The number of the part whose visible region a pixel lies in; TWICE where two regions cover one another."""
    numbers = {part.name: number for number, part in enumerate(parts)}
    owner = raster.blank(NOTHING)
    for face in faces:
        x0, y0, x1, y1 = face.region.bounds
        place, pages = raster.within((x0, y0), (x1, y1))
        shapely.prepare(face.region)
        hit = shapely.contains_xy(face.region, pages[:, 0], pages[:, 1]).reshape(owner[place].shape)
        found = np.where(owner[place] == NOTHING, numbers[face.part], TWICE)
        owner[place] = np.where(hit, found, owner[place])
    return owner


def differing(parts, seen):
    """Pixels over one pixel from an edge that buffer and view give to different parts, and how many there are."""
    found = shown(parts, seen)
    x0, y0, x1, y1 = found.lines.bounds
    raster = Raster.over(parts, LOOKS[seen], max(x1 - x0, y1 - y0) / ACROSS)
    expected, depth = labels(parts, LOOKS[seen], raster)
    sure = inside(expected, depth)
    wrong = sure & (painted(parts, found.faces, raster) != expected)
    return int(wrong.sum()), int((sure & (expected != NOTHING)).sum())


def lapping(lines):
    """Length that is drawn twice, or twice within a thousandth. [mm]"""
    each = [line for line in shapely.get_parts(lines) if line.length > 0]
    return sum(line.length for line in each) - shapely.union_all(each, grid_size=1e-3).length


def agrees(parts):
    for seen in LOOKS:
        wrong, covered = differing(parts, seen)
        assert covered > 100, seen
        assert wrong == 0, (seen, wrong)


def test_every_pixel_over_one_from_an_edge_belongs_to_the_part_that_the_view_shows(parts):
    agrees(parts)


def test_the_buffer_finds_two_parts_that_are_shown_in_the_wrong_order(monkeypatch):
    parts = parts_of("bench")
    found = view(parts, "front")
    names = [face.part for face in found.faces]
    front, back = names.index("1/bench/front rail"), names.index("1/head rail/back rail")
    swapped = list(found.faces)
    swapped[front] = attrs.evolve(swapped[front], part=names[back])
    monkeypatch.setattr(f"{__name__}.shown", lambda *_: Shown(tuple(swapped), found.visible))
    assert differing(parts, "front")[0] > 100


@settings(max_examples=12)
@given(frames())
def test_any_frame_is_seen_as_the_buffer_sees_it(frame):
    layout = lay_out(frame)
    assume(not layout.errors())
    agrees(layout.piece(1))


# --- areas ---


def shadow(parts, look):
    """Area of the shadow of all parts along the rays, on the page of the look, by manifold3d. [mm²]"""
    wood = sum((carved(part) for part in parts), Manifold())
    rows = np.column_stack([np.array([look.right, look.up, look.ray], dtype=float), np.zeros(3)])
    return wood.transform(rows).project().area()


@pytest.mark.parametrize("seen", LOOKS)
def test_the_wood_of_a_view_matches_the_shadow_of_the_meshes(parts, seen):
    regions = [face.region for face in shown(parts, seen).faces]
    area = shadow(parts, LOOKS[seen])
    assert shapely.union_all(regions).area == pytest.approx(area, rel=1e-4)
    assert sum(region.area for region in regions) == pytest.approx(area, rel=1e-4)  # and none lies on another


@pytest.mark.parametrize("seen", LOOKS)
def test_each_part_alone_matches_the_shadow_of_its_mesh(seen):
    for name in ("left and right differ", "four pairs, lapped", "egg-crate"):
        for part in parts_of(name):
            region = shapely.union_all([face.region for face in shown([part], seen).faces])
            assert region.area == pytest.approx(shadow([part], LOOKS[seen]), rel=1e-4)


# --- lines ---


@pytest.mark.parametrize("seen", eyes.LOOKS)  # on a screen, where it is turned, two strokes in one place are one
def test_no_line_is_drawn_twice(parts, seen):
    assert lapping(shown(parts, seen).lines) == pytest.approx(0, abs=0.05)


@pytest.mark.parametrize("seen", [seen for seen in LOOKS if seen != "isometric" and seen not in ROUND])
def test_no_hidden_line_lies_on_a_visible_one(parts, seen):
    found = view(parts, seen)
    assert lapping(found.hidden) == pytest.approx(0, abs=0.02)
    assert found.hidden.intersection(found.visible.buffer(1e-4)).length == pytest.approx(0, abs=0.02)


def test_a_line_that_is_drawn_twice_is_found():
    assert lapping(shapely.MultiLineString([[(0, 0), (9, 0)], [(4, 1e-9), (6, 1e-9)]])) == pytest.approx(2)


# --- isometric axes: ISO 5456-3; NAVEDTRA 14276, position of the isometric axes ---

AXES = ISOMETRIC.project(np.eye(3))


def test_isometric_axes_are_120_degrees_apart():
    ways = np.array([AXES[0], AXES[1], -AXES[2]])  # the way each face's edges run away from the nearest corner
    for a, b in combinations(ways, 2):
        assert math.degrees(math.acos(a @ b / np.linalg.norm(a) / np.linalg.norm(b))) == pytest.approx(120)


def test_receding_edges_rise_at_30_degrees_and_heights_stand_upright():
    angles = [math.degrees(math.atan2(v, u)) for u, v in AXES]
    assert angles == pytest.approx([30, 150, 90])


def test_all_three_axes_have_one_scale():
    assert np.linalg.norm(AXES, axis=1) == pytest.approx([1, 1, 1])


def test_a_unit_cube_is_a_regular_hexagon_of_side_one():
    cube = board("cube", (0.0, 0.0, 0.0), (1000.0, 1000.0, 1000.0), (1.0, 0.0, 0.0))
    seen = picture([cube])
    outline = shapely.union_all([face.region for face in seen.faces]).exterior.simplify(0.1)
    sides = [math.dist(a, b) for a, b in zip(outline.coords, outline.coords[1:], strict=False)]
    assert sides == pytest.approx([1000] * 6, abs=0.01)
    assert [face.region.area for face in seen.faces] == pytest.approx([1e6 * math.sqrt(3) / 2] * 3, rel=1e-6)
