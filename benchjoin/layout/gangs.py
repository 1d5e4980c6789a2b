"""Gangs: which parts are clamped together, before they are letters and bands, and how every part is marked.

The legs of a piece go together, and so do its half-lapped rails that run the same way; all parts of a piece bear the
letter of its legs. Boards and bearers are made for the whole batch: those that take the same lines go together,
whichever piece they are for, in gangs no wider than clamps span, and bear the letter of their set. Those that are not
cut share one letter for each size; one that was measured or finished has a number of its own behind it.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Sequence
from itertools import count

import attrs

from ..lengths import steady
from ..trade.practice import GANG
from .parts import Part


@attrs.frozen(slots=False)
class Gang:
    """Parts that are clamped together, with the title of their set; shared by the whole batch or of one piece."""

    title: str
    members: tuple[Part, ...]
    shared: bool = False


def letters() -> Iterator[str]:
    """A, B … Z, AA, AB …"""
    for number in count(1):
        word = ""
        while number:
            number, place = divmod(number - 1, 26)
            word = chr(65 + place) + word
        yield word


def gangs(parts: Sequence[Part]) -> list[Gang]:
    """What is clamped whole (legs) of every piece first, then what is cut of the rest, then what all pieces share."""
    whole: dict[tuple[int, str], list[Part]] = {}
    lapped: dict[tuple[int, str], list[Part]] = {}
    shared: dict[tuple[object, ...], list[Part]] = {}
    for part in parts:
        role = part.slot.role
        title = role.sets.get(part.side, "")
        if not title or not (role.whole_set or part.cuts):
            continue
        if role.shared:
            shared.setdefault((title, *_lines(part)), []).append(part)
        else:
            (whole if role.whole_set else lapped).setdefault((part.piece, title), []).append(part)
    titles = [title for part in parts for title in dict.fromkeys(part.slot.role.sets.values())]
    place = {title: n for n, title in enumerate(dict.fromkeys(titles))}
    later = sorted(lapped.items(), key=lambda item: (item[0][0], place[item[0][1]]))
    own = [Gang(title, tuple(members)) for (_, title), members in (*whole.items(), *later)]
    return [*own, *(Gang(str(key[0]), some, True) for key, members in shared.items() for some in _clamped(members))]


def _lines(part: Part) -> tuple[object, ...]:
    """What parts have in common that are marked across together: their length, and where lines are struck. [mm]"""
    seen = sorted((cut.called, *steady(cut.start, cut.end)) for cut in map(part.on_face, part.cuts))
    return (steady(part.length), tuple(dict.fromkeys(seen)))


def _clamped(members: Iterable[Part]) -> Iterator[tuple[Part, ...]]:
    """Members in gangs that clamps span; one that is wider than that is a gang by itself."""
    gang: list[Part] = []
    wide = 0.0
    for part in members:
        if gang and wide + part.size[1] > GANG:
            yield tuple(gang)
            gang, wide = [], 0.0
        gang.append(part)
        wide += part.size[1]
    yield tuple(gang)


def marks_of(parts: Sequence[Part], own: Container[str] = ()) -> dict[str, str]:
    """Marks by name; own are the names of parts that were measured or finished for themselves."""
    known, found = letters(), dict[str, str]()
    pieces: dict[int, tuple[str, list[str]]] = {}
    for gang, letter in zip(gangs(parts), known, strict=False):
        if gang.shared:
            found |= {part.name: f"{letter}{n}" for n, part in enumerate(gang.members, 1)}
        else:
            pieces.setdefault(gang.members[0].piece, (letter, []))[1].extend(part.name for part in gang.members)
    rest = [part for part in parts if part.slot.role.shared and part.name not in found]
    for part in parts:
        if not part.slot.role.shared:
            pieces[part.piece][1].append(part.name)
    found |= {
        name: f"{letter}{n}" for letter, names in pieces.values() for n, name in enumerate(dict.fromkeys(names), 1)
    }
    return found | _of_a_size(rest, own, known)


def _of_a_size(rest: Sequence[Part], own: Container[str], free: Iterator[str]) -> dict[str, str]:
    """Marks of parts that are not cut: a letter for each size, and a number too for one that goes its own way."""
    apart = {part.name for part in rest if part.name in own or part.identity in own}
    lengths: dict[tuple[str | None, str], float] = {}
    for part in sorted(rest, key=lambda part: part.name in apart):
        lengths.setdefault((part.level, part.slot.run), part.length)
    sizes: dict[object, str] = {}
    numbers: dict[str, int] = {}
    marks: dict[str, str] = {}
    for part in rest:
        length = lengths[part.level, part.slot.run] if part.name in apart else part.length
        shape = tuple((face, steady(edge.depth(part.length / 2))) for face, edge in part.shaped.items())
        key = (part.role, part.stock.name, steady(length, part.slot.width, part.slot.thickness), shape)
        letter = sizes[key] = sizes.get(key) or next(free)
        numbers[letter] = numbers.get(letter, 0) + 1
        marks[part.name] = f"{letter}{numbers[letter]}" if part.name in apart else letter
    return marks
