"""Whatever is handed to a public function, the maker hears what was meant, in an error of our own."""

from __future__ import annotations

import inspect

import pytest
from designs import plain_bench as bench

import benchjoin
from benchjoin import bind, board_plan, buy_list, elevation, in_the_yard, lay_out, templates, what_saves
from benchjoin.errors import BenchjoinError, BoardError, MissingLibrary, PaperError

JUNK = [None, 5, "x", [], float("nan"), object()]


def asks(first):
    """Public functions whose first argument is of a kind."""
    for name in benchjoin.__all__:
        own = getattr(benchjoin, name)
        if inspect.isfunction(own) and next(iter(inspect.signature(own).parameters.values())).annotation == first:
            yield pytest.param(own, id=name)


@pytest.mark.parametrize("junk", JUNK, ids=lambda own: type(own).__name__)
@pytest.mark.parametrize("own", [*asks("Layout"), *asks("Frame")])
def test_whoever_hands_in_something_else_is_told_what_is_meant(own, junk):
    more = [p for p in inspect.signature(own).parameters.values() if p.default is p.empty][1:]
    rest = ["x" for p in more if p.kind is p.POSITIONAL_OR_KEYWORD]
    words = {p.name: {"a": "b"} for p in more if p.kind is p.KEYWORD_ONLY}
    with pytest.raises(BenchjoinError) as refused:
        own(junk, *rest, **words)
    assert not isinstance(refused.value, MissingLibrary)


@pytest.mark.parametrize("path", [5, None, ["a.pdf"], b"\0", "a\0.pdf", object()], ids=lambda own: type(own).__name__)
def test_what_names_no_file_is_told(path):
    layout = lay_out(bench)
    for write in (bind, templates, lambda layout, path: elevation(layout, "front").save(path)):
        with pytest.raises(PaperError):
            write(layout, path)


@pytest.mark.parametrize("boards", [5, None, "rack", [], [5], bench], ids=["5", "None", "text", "[]", "[5]", "a frame"])
def test_boards_that_are_none_are_told(boards):
    for ask in (
        lambda: board_plan(lay_out(bench), boards),
        lambda: buy_list(lay_out(bench), boards),
        lambda: what_saves(bench, boards, {"length": ["50 in"]}),
        lambda: in_the_yard(bench, {"as it is": {"length": "50 in"}}, boards),
    ):
        with pytest.raises(BoardError):
            ask()
