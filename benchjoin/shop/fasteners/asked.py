"""What the maker asks for: a fastener by kind of joint or member, by level, or for one part.

The most specific wins.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Mapping

from ...errors import FastenerError, typed
from ...frame.identity import piece_of
from ...frame.joints import KINDS
from ...layout.layout import Layout
from .duty import Drive
from .fastener import Fastener, fastener

Choices = Mapping[str, str | Fastener]
JOINTS = tuple(kind.word for kind in KINDS if kind.held)


def asked(layout: Layout, choices: Choices | None) -> dict[str, Fastener]:
    """Choices read, their names looked up.

    Raises
    ------
    FastenerError
        If a name is neither a kind of joint, nor a kind of member, a level or a part of the layout, or a choice is no
        fastener; all faults at once.
    """
    known = dict.fromkeys([*JOINTS, *_names(layout)])
    faults, found = [], {}
    for name, said in (choices or {}).items():
        plain = piece_of(name)[1] if isinstance(name, str) else name
        if plain not in known:
            near = difflib.get_close_matches(str(plain), known, n=1)
            hint = f" Did you mean {typed(near[0])}?" if near else ""
            faults.append(
                f"{typed(name)} is no joint, kind of member, level or part here.{hint} Joints are {', '.join(JOINTS)}."
            )
            continue
        try:
            found[str(plain)] = fastener(said)
        except FastenerError as error:
            faults.append(f"{name}: {error}")
    if faults:
        raise FastenerError("\n".join(faults), faults=tuple(faults))
    return found


def _names(layout: Layout) -> Iterator[str]:
    for part in layout.piece(1):
        yield part.role
        if part.level:
            yield part.level
        if part.slot.run:
            yield part.slot.run
        yield part.identity


def choice_for(drive: Drive, choices: Mapping[str, Fastener]) -> Fastener | None:
    """What is asked for a joint: of its guest, its run, its level, its kind of member, its kind of joint."""
    guest = drive.guest
    names = (guest.identity, guest.slot.run or "", guest.level or "", guest.role, drive.joint.kind)
    return next((choices[name] for name in names if name in choices), None)
