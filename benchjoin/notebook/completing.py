"""Addresses completed by the tab key: inside the quotes of ``alter(bench, {"wor`` and of whatever else takes them."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any

from ..frame.address import addresses
from ..frame.frame import Frame
from ..layout.layout import Layout

_OPEN = re.compile(r"""\b(?:alter|value|explore|sweep|paths_to)\(\s*(\w+)\s*,[^#]*?(?:[{,(\[]\s*)(["'])([^"'\n]*)$""")


def add_to(shell: Any) -> None:
    """Let a shell of IPython complete addresses, once."""
    from IPython.core.completer import SimpleCompletion, context_matcher

    if any(getattr(one, "__name__", "") == "benchjoin_addresses" for one in shell.Completer.custom_matchers):
        return

    @context_matcher()  # type: ignore[untyped-decorator]
    def benchjoin_addresses(context: Any) -> dict[str, Any]:
        lines = context.full_text.split("\n")[: context.cursor_line + 1]
        before = "\n".join([*lines[:-1], lines[-1][: context.cursor_position]])
        found = list(asked_for(before, shell.user_ns))
        typed = before[before.rindex(found[0][1]) :] if found and found[0][1] else ""
        kept = max(0, len(typed) - len(context.token))
        return {
            "completions": [SimpleCompletion(address[kept:], type="address") for address, _ in found],
            "suppress": bool(found),
        }

    shell.Completer.custom_matchers.append(benchjoin_addresses)


def asked_for(before: str, names: dict[str, Any]) -> Iterable[tuple[str, str]]:
    """Addresses that go on from what is typed before the cursor, each with what is typed of it.

    Parameters
    ----------
    before : str
        The cell up to the cursor.
    names : dict
        What the notebook has by name.
    """
    found = _OPEN.search(before)
    if found is None:
        return
    own = names.get(found[1])
    frame = own.frame if isinstance(own, Layout) else own
    if isinstance(frame, Frame):
        yield from ((address, found[3]) for address in addresses(frame) if address.startswith(found[3]))
