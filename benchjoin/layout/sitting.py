"""Sitting: on which shoulder of a cut its mate comes to sit, where the maker says so.

A notch that was cut wider than its rail is by now leaves a gap, and the rail sits on one of its two shoulders. If
nobody says on which, it lies as its level has it, at the edge from which the level is set.
"""

from __future__ import annotations

from collections.abc import Mapping

import attrs

from ..errors import AddressError, typed
from ..frame.finished import Finished, FinishedCut, Shoulder
from ..frame.frame import Frame, must_be_a_frame
from ..frame.identity import piece_of
from .counting import counted

SHOULDERS = (("left", "right"), ("front", "back"), ("bottom", "top"))
"""Words for the shoulder nearer to a part's datum end and for the other, by the axis that the part runs along."""
SIDES: tuple[Shoulder, Shoulder] = ("near", "far")


def sit(frame: Frame, name: str, *, on: Mapping[str, str]) -> Frame:
    """A frame that says on which shoulder of a finished part its mates sit.

    Parameters
    ----------
    frame : Frame
    name : str
        A part that is marked or cut; without a piece, in every piece in which it is.
    on : mapping of str to str
        For each mate the shoulder: bottom or top of a leg's notch, left or right (front or back) of a rail's lap; near
        or far as seen from the end that the part is measured from; "" for where its level has it.

    Raises
    ------
    AddressError
        If the part is not marked or cut, has no cut for a mate, or has no such shoulder.

    Examples
    --------
    ``later = sit(frame, "2/front left leg", on={"bench/front rail": "top"})``
    """
    must_be_a_frame(frame, "sit")
    piece, identity = piece_of(name) if isinstance(name, str) else (None, "")
    own = {
        each: done
        for each, done in frame.finished.items()
        if done.cuts and piece_of(each)[1] == identity and piece in (None, piece_of(each)[0])
    }
    if not own:
        known = tuple(each for each, done in frame.finished.items() if done.cuts)
        said = f"Marked or cut are {', '.join(known)}." if known else "Nothing is marked or cut in this frame."
        raise AddressError(f"{typed(name)} is not marked or cut. {said}", address=name, known=known)
    if not isinstance(on, Mapping):
        raise AddressError(f"on is {typed(on)}. Write on={{'bench/front rail': 'top'}}.", address=on)
    words = shoulders(frame, identity)
    sits = {mate: _side(word, words) for mate, word in on.items()}
    return attrs.evolve(
        frame, finished={**frame.finished, **{each: _seated(each, done, sits) for each, done in own.items()}}
    )


def shoulders(frame: Frame, identity: str) -> tuple[str, str]:
    """Words for the near and the far shoulder of a part."""
    axis = next(slot.axes[0] for slot in counted(frame).slots() if slot.name == identity)
    return SHOULDERS[axis]


def _side(word: str, words: tuple[str, str]) -> Shoulder:
    if word == "":
        return ""
    for known in (words, SIDES):
        if word in known:
            return SIDES[known.index(word)]
    raise AddressError(f"on says {typed(word)}. Choose one of {', '.join(words)}.", address=word, known=words)


def _seated(name: str, done: Finished, sits: Mapping[str, Shoulder]) -> Finished:
    mates = tuple(dict.fromkeys(cut.mate for cut in done.cuts))
    for mate in sits:
        if mate not in mates:
            said = f"{name} has no cut for {typed(mate)}. It has cuts for {', '.join(mates)}."
            raise AddressError(said, address=mate, known=mates)
    return attrs.evolve(done, cuts=tuple(_on(cut, sits) for cut in done.cuts))


def _on(cut: FinishedCut, sits: Mapping[str, Shoulder]) -> FinishedCut:
    return attrs.evolve(cut, sits=sits.get(cut.mate, cut.sits))
