"""What each joint says of itself, as the maker would: who gives up wood, who lies on whom, what may hold it."""

from __future__ import annotations

import pytest

from benchjoin.frame.joints import KINDS, Butt, CutRound, HalfLap, How, Laid, Notch, Over, Planted, Rests
from benchjoin.layout.joining import JOINTS

ALL = {kind.word: kind() for kind in KINDS}


def those(trait):
    return {word for word, how in ALL.items() if getattr(how, trait)}


def test_every_joint_has_its_way_and_is_named_to_the_maker():
    assert set(KINDS) == set(JOINTS) == set(How.__subclasses__()) & set(JOINTS)
    assert {Notch, HalfLap, Butt, Planted, Laid, Over, Rests, CutRound} == set(KINDS)


@pytest.mark.parametrize(
    ("trait", "joints"),
    [
        ("lies", {"laid", "rests", "over-notch"}),
        ("hangs", {"butt", "planted"}),
        ("shoulders", {"notch", "half-lap"}),
        ("takes_block", {"notch", "butt", "planted"}),
    ],
)
def test_what_carries_a_guest_is_one_of_three(trait, joints):
    assert those(trait) == joints


def test_a_guest_lies_hangs_or_stands_between_shoulders_or_only_makes_way():
    for how in ALL.values():
        assert [how.lies, how.hangs, how.shoulders, not how.carries].count(True) == 1, how


def test_nothing_is_driven_where_it_lifts_off_or_makes_way():
    assert set(ALL) - those("held") == {"rests", "cut round"}
