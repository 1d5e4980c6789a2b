"""What the maker must know of the fasteners: what has no room, what carries nothing, what goes in before what."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

from ...findings import Finding, Severity
from ...layout.layout import Layout
from ...phrases import counted, listed
from ...sources import COMMON_PRACTICE, Source
from ...trade.fasteners import END_GRAIN
from ...trade.spacing import EUROCODE_SCREWS
from ...trade.species import Species
from .fixing import Fixing
from .placing import PENETRATION

PENETRATION_RULE = Source("NDS", "12.1.5.6, least penetration 6 diameters", standing="from memory")
Said = tuple[Severity, str, str, dict[str, float], Source]
"""Severity, kind, sentence with {joint} in it, numbers, source."""


def found_in(layout: Layout, fixings: Sequence[Fixing], woods: Mapping[str, Species | None]) -> Iterator[Finding]:
    """All findings, those that are alike as one."""
    for check in CHECKS:
        alike: dict[tuple[Severity, str, str], list[tuple[Fixing, Said]]] = {}
        for fixing in fixings:
            for said in check(layout, fixing):
                alike.setdefault(said[:3], []).append((fixing, said))
        yield from (_together(layout, own) for own in alike.values())
    yield from _loose_boards(layout, fixings)
    missing = [name for name, wood in woods.items() if wood is None]
    if missing and fixings:
        yield Finding(
            severity="note",
            kind="wood not said",
            where=layout.frame.name,
            sentence=f"The stock of {counted(len(missing), 'part')} does not say its wood: lead holes are those for "
            "softwood, and nothing is said of what the fasteners hold. Give the stock a species, or write wood=.",
            source=COMMON_PRACTICE,
        )


def _together(layout: Layout, own: Sequence[tuple[Fixing, Said]]) -> Finding:
    """One finding for joints of which the same is said."""
    severity, kind, sentence, numbers, source = own[0][1]
    first = own[0][0]
    names = list(dict.fromkeys((fixing.guest, fixing.host) for fixing, _ in own))
    more = f", and {counted(len(names) - 1, 'more joint')} like it" if len(names) > 1 else ""
    guests = tuple(dict.fromkeys(guest for guest, _ in names))
    pieces = tuple(dict.fromkeys(fixing.piece for fixing, _ in own))
    return Finding(
        severity=severity,
        kind=kind,
        where=first.guest,
        parts=guests,
        mates=tuple(dict.fromkeys(host for _, host in names)),
        pieces=() if len(pieces) == layout.frame.quantity else pieces,
        sentence=sentence.format(joint=f"{first.guest} at {first.host}{more}"),
        numbers=numbers,
        source=source,
    )


def _no_room(layout: Layout, fixing: Fixing) -> Iterator[Said]:
    """A joint for which no place was found: told where it carries, or where the maker asked for metal."""
    if fixing.driven or fixing.duty == "holds down":
        return
    tape, drive = layout.frame.tape, fixing.drive
    if fixing.asked and not fixing.size.metal:
        if fixing.duty == "carries":
            what = "glue alone" if fixing.size.kind == "glue" else "nothing"
            end = ", on end grain" if drive.into_end or drive.joint.how.between else ""
            yield (
                "warning",
                "glue alone",
                f"{{joint}}: held by {what}{end}, and it carries. Glue on end grain holds next to nothing; add a "
                "screw, a cleat or a corner block, or let it in.",
                {},
                COMMON_PRACTICE,
            )
        return
    wide, high = (abs(a - b) for a, b in zip(drive.high, drive.low, strict=True))
    room = f"the contact is {tape.say(wide)} by {tape.say(high)}"
    carries = fixing.duty in ("carries", "hangs")
    ways = "A bolt through both, glue with no credit for a screw, a shallower notch or thicker stock are ways out."
    asked = f" for a {fixing.size.name}" if fixing.asked else " for a screw"
    yield (
        "warning" if carries or fixing.asked else "note",
        "no room for a fastener",
        f"{{joint}}: no room{asked}: {room}. {ways}",
        {"wide": wide, "high": high},
        COMMON_PRACTICE,
    )


def _no_credit(layout: Layout, fixing: Fixing) -> Iterator[Said]:
    """A joint that carries, and whose fasteners do not keep what that asks for."""
    if fixing.duty != "carries" or not fixing.driven or fixing.full:
        return
    tape, one = layout.frame.tape, fixing.driven[0]
    d = one.size.diameter
    asked, inside = PENETRATION * d, one.inside
    if inside < asked - 1e-6 and not one.size.through:
        yield (
            "warning",
            "too short to carry",
            f"{{joint}}: a {one.size.name} goes in {tape.say(inside)}, {inside / d:.1f} diameters, and {PENETRATION:g} "
            f"({tape.say(asked)}) are asked of what carries; nothing slimmer has them either. It is counted as holding "
            "nothing across. Bolt it through, take thicker stock, or put a block under it.",
            {"inside": inside, "asked": asked},
            PENETRATION_RULE,
        )
        return
    grain = "end grain of " if fixing.drive.into_end else ""
    thin = min(high - low for low, high in zip(fixing.drive.low, fixing.drive.high, strict=True))
    yield (
        "warning",
        "too near an edge to carry",
        f"{{joint}}: in {grain}wood {tape.say(thin)} wide a {one.size.name} cannot keep what carries keeps (3 "
        f"diameters from an edge, 7 from an end; more where it pushes): it holds the joint together and is counted as "
        "carrying nothing. A corner block or a cleat under it, screwed both ways into side grain, a half-lap, or a "
        "let-in rail carries.",
        {"wide": thin, "diameter": d},
        END_GRAIN if fixing.drive.into_end else EUROCODE_SCREWS,
    )


def _short(layout: Layout, fixing: Fixing) -> Iterator[Said]:
    """A screw that only keeps a part home may be short; that is told."""
    if fixing.duty not in ("keeps home", "hangs") or not fixing.driven:
        return
    tape, one = layout.frame.tape, fixing.driven[0]
    if one.size.through or one.inside >= PENETRATION * one.size.diameter:
        return
    why = "sits on its shoulder, so it only keeps it home" if fixing.duty == "keeps home" else "hangs on the thread"
    if fixing.duty == "hangs" and fixing.withdrawal:
        why += f", which holds {fixing.withdrawal:.0f} N here"
    yield (
        "note",
        "short thread",
        f"{{joint}}: a {one.size.name} goes in {tape.say(one.inside)}, {one.inside / one.size.diameter:.1f} diameters; "
        f"the {fixing.drive.guest.role} {why}.",
        {"inside": one.inside},
        COMMON_PRACTICE,
    )


def _before(layout: Layout, fixing: Fixing) -> Iterator[Said]:
    """Heads that another part covers: driven before it, and never tightened later."""
    del layout
    drive = fixing.drive
    covers = [cut.mate for cut in drive.head.cuts if cut.mate in fixing.before]
    if not covers or not fixing.driven:
        return
    yield (
        "note",
        "under another part",
        f"{{joint}}: the screws go in through the floor of a notch, before {listed(covers)} comes in: sink their heads "
        "below the floor. They cannot be tightened later.",
        {},
        COMMON_PRACTICE,
    )


def _fewer(layout: Layout, fixing: Fixing) -> Iterator[Said]:
    """A joint that the maker asked so many for, and that has room for fewer."""
    wanted = fixing.size.count
    if not fixing.asked or wanted is None or not fixing.driven or len(fixing.driven) >= wanted:
        return
    del layout
    yield (
        "warning",
        "room for fewer",
        f"{{joint}}: room for {len(fixing.driven)} of {wanted} {fixing.size.name}s at their distances.",
        {"room": len(fixing.driven), "wanted": wanted},
        EUROCODE_SCREWS,
    )


def _undrilled(layout: Layout, fixing: Fixing) -> Iterator[Said]:
    """Nails are laid out as if drilled for."""
    del layout
    if fixing.driven and fixing.size.kind == "nail":
        yield (
            "note",
            "drill for nails",
            "{joint}: nails keep the distances of drilled holes; without, they want nearly twice as much to edges "
            "and ends.",
            {},
            EUROCODE_SCREWS,
        )


CHECKS: tuple[Callable[[Layout, Fixing], Iterable[Said]], ...] = (
    _no_room,
    _no_credit,
    _fewer,
    _before,
    _short,
    _undrilled,
)


def _loose_boards(layout: Layout, fixings: Sequence[Fixing]) -> Iterator[Finding]:
    """Boards that fewer than two places hold, and that do not lift out with what they are fixed to."""
    held: dict[tuple[int, str], int] = {}
    glued: set[tuple[int, str]] = set()
    for fixing in fixings:
        board = next((p for p in (fixing.drive.guest, fixing.drive.point) if p.slot.role.surface), None)
        if board is None:
            continue
        key = (fixing.piece, board.identity)
        held[key] = held.get(key, 0) + len(fixing.driven)
        if fixing.asked and not fixing.size.metal:
            glued.add(key)
    loose = [key for key, count in held.items() if count < 2 and key not in glued]
    names = tuple(dict.fromkeys(name for _, name in loose))
    if names:
        pieces = tuple(dict.fromkeys(piece for piece, _ in loose))
        several = f" and {counted(len(names) - 1, 'more board')}" if len(names) > 1 else ""
        yield Finding(
            severity="warning",
            kind="loose board",
            where=names[0],
            parts=names,
            pieces=() if len(pieces) == layout.frame.quantity else pieces,
            sentence=f"{names[0]}{several}: held in fewer than two places, since screws there would stand too near an "
            "end or an edge. Bring a bearer under it, further in, or a ledger beside the rail.",
            source=COMMON_PRACTICE,
        )
