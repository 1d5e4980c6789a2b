"""What the maker must know before the wood goes to the machines: too little wood, blanks that no machine takes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs

from ...findings import Finding, Severity
from ...layout.about import about
from ...layout.parts import Part
from ...lengths import TOUCH
from ...readings import Tape
from ...trade.allowances import Milling
from .batches import Batch, Line


def find(batch: Batch, practice: Milling, tape: Tape, quantity: int) -> Iterator[Finding]:
    """Findings about one batch of so many pieces, each with the parts that it is about."""
    parts = [part for line in batch.lines for part in line.parts]
    for found in (*_start_not_said(batch, practice, tape), *_thickness(batch, practice, tape)):
        yield attrs.evolve(found, **about(parts, quantity))
    for line in batch.lines:
        for found in (*_width(batch, line, practice, tape), *_lengths(batch, line, practice, tape)):
            yield attrs.evolve(found, **about(line.parts, quantity))
        short = [part for part in line.parts if part.length < practice.least - TOUCH]
        if short and not batch.as_bought:
            yield attrs.evolve(_short(batch, short, practice, tape), **about(short, quantity))


def _finding(
    batch: Batch, severity: Severity, kind: str, sentence: str, practice: Milling, **numbers: float
) -> Finding:
    return Finding(
        severity=severity, kind=kind, where=batch.stock.name, sentence=sentence, numbers=numbers, source=practice.source
    )


def _start_not_said(batch: Batch, practice: Milling, tape: Tape) -> Iterator[Finding]:
    if not batch.known:
        thick, wide = batch.rough_section(practice)
        sentence = (
            f'What "{batch.stock.name}" is milled from is not said. Rough stock of {tape.say(thick)} × '
            f"{tape.say(wide)} or more should clean up. Say what it is, and it is checked."
        )
        yield _finding(batch, "note", "start not said", sentence, practice, thickness=thick, width=wide)


def _thickness(batch: Batch, practice: Milling, tape: Tape) -> Iterator[Finding]:
    start, clean = batch.source.thickness, batch.clean
    if batch.start is not None and clean is not None:
        yield from _too_little(batch, "thick", start, clean, batch.thickness, practice, tape)
    if not batch.as_bought and batch.thickness < practice.thinnest - TOUCH:
        sentence = (
            f"{tape.say(batch.thickness)} is thinner than the planer takes ({tape.say(practice.thinnest)}). Plane it "
            "on a carrier board only if the manual allows that, or by hand."
        )
        yield _finding(batch, "warning", "too thin", sentence, practice, thickness=batch.thickness)


def _width(batch: Batch, line: Line, practice: Milling, tape: Tape) -> Iterator[Finding]:
    start = batch.source.width
    if line.clean is not None and start is not None:
        yield from _too_little(batch, "wide", start, line.clean, line.width, practice, tape)
    through = start if start is not None and batch.known else line.width
    machines = () if batch.as_bought else (("jointer", practice.jointer_width), ("planer", practice.planer_width))
    for machine, widest in machines:
        if through > widest + TOUCH:
            sentence = (
                f"Blanks {tape.say(through)} wide do not go over a {machine} of {tape.say(widest)}. Rip them first, "
                "or flatten them by hand."
            )
            yield _finding(batch, "warning", f"too wide for the {machine}", sentence, practice, width=through)


def _too_little(
    batch: Batch, way: str, start: float, clean: float, wanted: float, practice: Milling, tape: Tape
) -> Iterator[Finding]:
    name, say = batch.source.name, tape.say
    if start < wanted - TOUCH:
        sentence = f'"{name}" is {say(start)} {way}, and {say(wanted)} is drawn: {say(wanted - start)} too little.'
        yield _finding(batch, "error", f"not {way} enough", sentence, practice, start=start, drawn=wanted)
    elif clean < wanted - tape.hair:
        sentence = (
            f'"{name}" is likely to be clean at {say(clean)} {way}, and {say(wanted)} is drawn: {say(wanted - clean)} '
            "less. Draw it at the smaller size, choose the straightest pieces, or start from larger stock."
        )
        yield _finding(batch, "warning", f"may not clean up {way}", sentence, practice, clean=clean, drawn=wanted)


def _lengths(batch: Batch, line: Line, practice: Milling, tape: Tape) -> Iterator[Finding]:
    say, longest = tape.say, max(blank.length for blank in line.blanks)
    comes = batch.source.length if batch.known else None
    if comes is not None and longest > comes + TOUCH:
        sentence = f'A blank of {say(longest)} does not go into "{batch.source.name}", which is {say(comes)} long.'
        yield _finding(batch, "error", "not long enough", sentence, practice, blank=longest, stock=comes)


def _short(batch: Batch, short: Sequence[Part], practice: Milling, tape: Tape) -> Finding:
    least = min(part.length for part in short)
    parts = "1 part is" if len(short) == 1 else f"{len(short)} parts are"
    sentence = (
        f"{parts} shorter than the {tape.say(practice.least)} that the machines ask for, down to {tape.say(least)}. "
        "Keep them in blanks of that length or more until they are milled."
    )
    return _finding(batch, "warning", "short parts", sentence, practice, least=practice.least, shortest=least)
