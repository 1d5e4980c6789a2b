"""Every number stands on somebody's word, and the maker can read on whose."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

import benchjoin
from benchjoin.errors import AddressError
from benchjoin.shop.whose_word import whose_word

CODE = [ast.parse(path.read_text(encoding="utf-8")) for path in Path(benchjoin.__file__).parent.rglob("*.py")]


def named_sources():
    """Names that a module gives to a Source."""
    for module in CODE:
        for line in module.body:
            value = getattr(line, "value", None)
            if (
                isinstance(line, ast.Assign)
                and isinstance(value, ast.Call)
                and getattr(value.func, "id", "") == "Source"
            ):
                yield line.targets[0].id


def test_no_source_is_attached_to_nothing():
    nodes = [node for module in CODE for node in ast.walk(module)]
    asked = {node.id for node in nodes if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Load)}
    asked |= {node.attr for node in nodes if isinstance(node, ast.Attribute)}
    named = set(named_sources())
    assert len(named) > 60
    assert named <= asked


def test_what_nobody_has_looked_up_can_be_asked_for():
    remembered = whose_word("from memory")
    assert {row[2] for row in remembered.rows} == {"from memory"}
    assert ("Creep", "EN 1995-1-1, Table 3.2, solid timber", "from memory") in remembered.rows
    assert len(remembered.rows) < len(whose_word().rows)


def test_a_standing_that_there_is_not_is_told():
    with pytest.raises(AddressError, match="no standing 'sworn'"):
        whose_word("sworn")
