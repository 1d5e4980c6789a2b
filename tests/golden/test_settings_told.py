"""Every word of the settings: at the saw, with the router, by hand, crosscuts, rips. Read one before accepting it."""

from __future__ import annotations

import attrs
import pytest
from designs import bench, plain_rack, plain_stand, stand
from samples import SAMPLES
from stand import LAPPED, STAND

from benchjoin import Butt, Clear, Level, Rail, alter, lay_out, settings
from benchjoin.shop.settings.heads import DadoHead
from benchjoin.shop.settings.minutes import Minutes
from benchjoin.shop.settings.shop import Router, Shop

NOTHING = attrs.evolve(
    STAND, name="Butted", stack=[Clear(100), Level("low", front=Rail(60, joint=Butt(), face="middle"))]
)
TOLD = {
    "dado-head": (LAPPED, Shop()),
    "router": (LAPPED, Shop(dado=None)),
    "by-hand": (LAPPED, Shop(dado=None, router=None)),
    "short-stop": (bench, Shop(stop_reach=900, minutes=Minutes(head=6, stop=1, turn=0.5))),
    "usual-in-millimetres": (plain_rack, None),
    "pair-alone": (STAND, Shop(dado=DadoHead(chippers=(), bite=25))),
    "stopped": (alter(SAMPLES["overhangs"], {"tape": "0.5 mm"}), Shop()),
    "right-across": (plain_stand, Shop()),
    "passes-far-over-each-other": (STAND, Shop(dado=DadoHead(pair=6, chippers=(), bite=20), overlap=8)),
    "bits-far-over-each-other": (STAND, Shop(dado=None, router=Router(bits=[12], step=10), overlap=11)),
    "nothing": (NOTHING, Shop()),
    "thin-head": (attrs.evolve(stand, quantity=2), Shop(dado=DadoHead(pair=6, chippers=(3, 3), bite=9))),
}


@pytest.mark.parametrize("name", TOLD)
def test_the_words_of_the_settings(name, file_regression):
    frame, shop = TOLD[name]
    found = settings(lay_out(frame), shop)
    tables = (found.table(), found.crosscut_table(), found.rip_table())
    findings = (f"{f.severity}, {f.kind}, {f.where}: {f.sentence}" for f in found.findings)
    file_regression.check("\n\n".join([*(table.text() for table in tables), *findings]) + "\n")
