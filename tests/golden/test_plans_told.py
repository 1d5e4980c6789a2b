"""Every word and number of the lumber: plans, lists to buy, what else is in the yard. Read one before accepting it.

That plans keep to their boards is held by the verifier in tests/shop/test_board_plan; here it is seen when one moves.
"""

from __future__ import annotations

import attrs
import pytest
from boarded_designs import bench
from samples import SAMPLES

from benchjoin import Allowances, Board, Defect, Stock, board_plan, lay_out, read_boards, rough_list
from benchjoin.errors import BoardListError
from benchjoin.shop.boards.buy import buy_list
from benchjoin.shop.boards.saving import what_saves
from benchjoin.shop.boards.yard import in_the_yard

SMALL = attrs.evolve(SAMPLES["rails inside"], name="Boot rack")
BY_THE_INCH = attrs.evolve(bench, quantity=1, name="Hive bench")
KNOTTY = [
    Board(
        "ash A",
        length=2400,
        width=160,
        thickness=45,
        price=31,
        defects=[
            Defect("knot", 500, 530, where="across"),
            Defect("split", 2280, 2400, where="across"),
            Defect("wane", 900, 1500, where="near edge", deep=15),
        ],
    ),
    Board("ash B", length=2000, width=75, thickness=45, price=14.5, defects=[Defect("knot", 150, 165)]),
    Board("ash C", length=2000, width=75, thickness=45, count=None, price=21),
    Board("ash D", length=2400, width=180, thickness=26, price=9.25, defects=[Defect("knot", 1190, 1215)]),
    Board("ash E", length=1500, width=95, thickness=26, count=None, price=8),
]
SHORT = [Board("off-cut", length=700, width=95, thickness=48, count=2)]
YARD = [
    Board(
        f"{name}, {feet} ft",
        length=f"{feet} ft",
        width=f"{wide} in",
        thickness=f"{thick} in",
        count=None,
        nominal=name,
        price=feet * thick,
    )
    for name, wide, thick in (("2x4", 3.5, 1.5), ("1x6", 5.5, 0.75), ("5/4x6", 5.5, 1.0))
    for feet in (8, 12)
]
PLANS = {
    "knotty": (SMALL, KNOTTY, {"allow": Allowances(end=10, width=3, thickness=2)}),
    "knotty-by-cost": (SMALL, KNOTTY, {"aim": "cost"}),
    "not-enough": (SMALL, SHORT, {}),
    "counted": (SMALL, [attrs.evolve(KNOTTY[2], count=1), attrs.evolve(KNOTTY[4], count=3), KNOTTY[1]], {}),
    "inches": (BY_THE_INCH, YARD, {"aim": "waste"}),
}


def placed(plan):
    """Every blank with its place in its board, and what is left over."""
    for own in plan.boards:
        yield f"{own.name}: {own.used:.2%} used, {own.offcut:.2f} left"
        for one in own.parts:
            far = ", turned" if one.turned else ""
            sound = "; ".join(f"{low:.2f} to {high:.2f}" for low, high in one.blank.sound)
            yield (
                f"  {one.mark}: {one.start:.2f} to {one.end:.2f}, {one.low:.2f} to {one.high:.2f}{far}; sound {sound}"
            )
    yield f"cost {plan.cost:g}, plain rule {plan.heuristic:g}, bound {plan.bound}, proven {plan.proven}"


def told(findings):
    for one in findings:
        yield f"{one.severity}, {one.kind}, {one.where}: {one.sentence}"


@pytest.mark.parametrize("name", PLANS)
def test_the_words_of_a_board_plan(name, file_regression):
    frame, boards, options = PLANS[name]
    layout = lay_out(frame)
    plan = board_plan(layout, boards, **options)
    rough = rough_list(layout, options.get("allow")).table().text()
    lines = [rough, "", repr(plan), plan.table().text(), *placed(plan), *told(plan.findings)]
    file_regression.check("\n".join(lines) + "\n")


@pytest.mark.parametrize("name", ["inches", "millimetres"])
def test_the_words_of_what_to_buy(name, file_regression):
    frame, offer = (BY_THE_INCH, YARD) if name == "inches" else (SMALL, [KNOTTY[2], KNOTTY[4]])
    found = buy_list(lay_out(frame), offer, wood="western larch", spare=0.2)
    ways = (f"{way.way}: {way.count}, {way.volume:.5f} m³, {way.price}" for way in found.ways)
    feet = (f"{own.board.name}: {own.feet:.3f} board feet" for own in found.best.boards)
    file_regression.check("\n".join([repr(found), found.table().text(), found.compared().text(), *ways, *feet]) + "\n")


def test_the_words_of_the_yard(file_regression):
    thick = Stock("larch 2x", thickness=38)
    choices = {
        "as it is": {},
        "thicker rails": {"rail_stock": attrs.evolve(thick, name="larch rail")},
        "too thick": {"rail_stock": Stock("beam", thickness=200)},
        "longer": {"length": 1400},
        "too short": {"length": 30},
        "slack": {"front.height": 640},
    }
    found = in_the_yard(SMALL, choices, KNOTTY)
    file_regression.check(f"{found!r}\n{found.table().text()}\n")


def test_the_words_of_what_saves_a_board(file_regression):
    found = what_saves(SMALL, KNOTTY, {"length": [500, 700, 1100], "depth": [250, 99999], "quantity": [2]})
    file_regression.check(f"{found!r}\n{found.table().text()}\n")


LISTS = {
    "nothing": "",
    "no board": "board, length (in), width (in), thickness (in)\n",
    "no unit": "board, length, width (in), thickness (in)\nA, 96, 3 1/2, 1 1/2\n",
    "twice": "board, length (in), length (mm), width (in), thickness (in), colour\nA, 96, 1, 3, 1, red\n",
    "missing": "board; width (mm)\nA; 90\n",
    "cells": "board,length (mm),width (mm),thickness (mm),count,price,defect,from (mm),to (mm),where,deep (mm)\n"
    "A,2400,90,45,2,12.5\n,,,,,,knot,100,130\nA,2000,90,45\nB,,90,45\nC,2400,x,45,many,dear\n"
    "D,2400,90,45,1,1,worm,1,2\nE,2400,90,45,1,1,knot,1,2,inside\nF,2400,90,45,1,1,knot,5\n"
    "G,2400,90,45,1,1,knot,2390,2500\nH,2400,90,45,1,1,wane,0,200,near edge,95\n"
    "I,2400,90,45,1,1,split,0,10,across,1,9\n",
    "no name": "board, length (mm), width (mm), thickness (mm)\n, 2400, 90, 45\n",
}


def test_the_words_of_a_list_of_boards_that_cannot_be_read(file_regression):
    lines = []
    for name, text in LISTS.items():
        with pytest.raises(BoardListError) as error:
            read_boards(text or "\n")
        lines += [f"{name}:", str(error.value), ""]
    file_regression.check("\n".join(lines))


def test_what_a_list_of_boards_says(file_regression):
    heading = LISTS["cells"].splitlines()[0]
    lines = (
        "A,2400,90,45,2,12.5",
        "K,3000,120,50,,,WANE,0,1500,near edge,12",
        ",,,,,,split,2800,3000",
        '"L, long",4200,"95,5",45,,7',
    )
    good = "\n".join([heading, *lines]) + "\n"
    file_regression.check("\n".join(map(repr, read_boards(good))) + "\n")
