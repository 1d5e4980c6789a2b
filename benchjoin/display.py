"""How values show themselves in any notebook: by the display protocol, their pages loaded when one is asked for.

A value knows only the name of its page; where the page is made lies on the highest floor, and nothing is imported
until a notebook asks.
"""

from __future__ import annotations

from importlib import import_module

PAGES = "benchjoin.notebook.html_pages"


def page(name: str, value: object) -> str:
    """The page of a value as HTML, by the name of the function that makes it."""
    made = getattr(import_module(PAGES), name)(value)
    assert isinstance(made, str)
    return made
