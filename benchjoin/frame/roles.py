"""Roles: what kind of member a part is, as data. A new kind of part is a row here.

A role says how its parts are spoken of and handled: what their ends and faces are called, how they are ganged, how one
may be laid on another, what the machines leave of its stock. What a part does by its place (which way it runs, what it
is joined to) is not its role's; its slot says that.
"""

from __future__ import annotations

from collections.abc import Mapping

import attrs


@attrs.frozen(kw_only=True, eq=False, repr=False)
class Role:
    """How parts of one kind are spoken of and handled.

    word, plural
        One of them and several: leg, legs.
    datum, end, flush
        The end that sizes are taken from, the other one, and the datum ends of several.
    low, high, between
        The two edges of a cut along the part and their distance, in words.
    struck
        What a line struck for a cut is called: each edge by its own word, or every one "shoulder".
    faces
        What its faces are called: the marked one, the opposite, the true edge, the far edge.
    sets
        Title of the set it is clamped in, by its side; a side without one is in no set.
    whole_set
        Whether all of a piece are clamped together, also those that are not cut.
    turns_over
        Whether one may be laid on another end for end: it has no foot.
    mate
        What its set is marked for, as the maker speaks of it.
    slim
        How it is made to fit a cut that came out too narrow for it.
    sized_stock
        Whether its stock is the section that it was milled to, so that no fence is set for it.
    spare
        What one more of it is called that is milled beside the others; nothing where none is.
    stands
        Whether it stands on the floor, and is what the others are joined to.
    surface
        Whether several lie side by side, and things are set down on them.
    shared
        Whether those of all pieces go together: in sets by the lines that they take, and by one mark where they are
        not cut.
    """

    word: str
    plural: str
    datum: str
    end: str
    flush: str
    low: str
    high: str
    between: str
    struck: str
    faces: Mapping[str, str]
    sets: Mapping[str, str]
    whole_set: bool
    turns_over: bool
    mate: str
    slim: str
    sized_stock: bool
    spare: str
    shared: bool = False
    stands: bool = False
    surface: bool = False

    def __repr__(self) -> str:
        return f"<Role {self.word}>"


LEG = Role(
    word="leg",
    plural="legs",
    datum="foot",
    end="top",
    flush="feet",
    low="bottom",
    high="top",
    between="height",
    struck="",
    faces={"marked": "outer face", "opposite": "inner face", "true edge": "end face", "far edge": "bay face"},
    sets={"front": "legs", "back": "legs"},
    whole_set=True,
    turns_over=False,
    slim="Plane",
    mate="rail",
    sized_stock=True,
    spare="spare leg",
    stands=True,
)
RAIL = Role(
    word="rail",
    plural="rails",
    datum="datum end",
    end="end",
    flush="datum ends",
    low="near shoulder",
    high="far shoulder",
    between="length",
    struck="shoulder",
    faces={"marked": "marked face", "opposite": "other face", "true edge": "true edge", "far edge": "far edge"},
    sets={
        "front": "long rails",
        "back": "long rails",
        "left": "end rails",
        "right": "end rails",
        "cross": "cross rails",
    },
    whole_set=False,
    turns_over=True,
    slim="Re-rip",
    mate="leg",
    sized_stock=False,
    spare="",
)
BOARD = Role(
    word="board",
    plural="boards",
    datum="datum end",
    end="end",
    flush="datum ends",
    low="near shoulder",
    high="far shoulder",
    between="length",
    struck="shoulder",
    faces={"marked": "upper face", "opposite": "under face", "true edge": "true edge", "far edge": "far edge"},
    sets={"": "boards"},
    whole_set=False,
    turns_over=True,
    mate="leg",
    slim="Rip",
    sized_stock=False,
    spare="",
    shared=True,
    surface=True,
)
BEARER = Role(
    word="bearer",
    plural="bearers",
    datum="datum end",
    end="end",
    flush="datum ends",
    low="near shoulder",
    high="far shoulder",
    between="length",
    struck="shoulder",
    faces={"marked": "marked face", "opposite": "other face", "true edge": "true edge", "far edge": "far edge"},
    sets={"": "bearers"},
    whole_set=False,
    turns_over=True,
    mate="rail",
    slim="Plane",
    sized_stock=False,
    spare="",
    shared=True,
)
LEDGER = attrs.evolve(BEARER, word="ledger", plural="ledgers", sets={"": "ledgers"})
CLEAT = attrs.evolve(BEARER, word="cleat", plural="cleats", sets={"": "cleats"}, mate="board")
TRAY_SIDE = attrs.evolve(BEARER, word="tray side", plural="tray sides", sets={"": "tray sides"}, mate="tray side")
ROLES = (LEG, RAIL, BEARER, LEDGER, TRAY_SIDE, CLEAT, BOARD)
"""In the order of the lists: what stands comes before what it carries."""


def rank(role: Role) -> int:
    """Place of a role in lists; a role that is not in the table comes after all that are."""
    return ROLES.index(role) if role in ROLES else len(ROLES)
