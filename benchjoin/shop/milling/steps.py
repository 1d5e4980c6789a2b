"""What milling asks of a batch at each step of the order of work: which faces and edges are flattened and planed.

The steps and their numbers are those of `trade.order_of_work`; a step that a batch does not need is left out.
"""

from __future__ import annotations

from ...readings import Tape
from ...trade.order_of_work import Step, Word, step
from .batches import Batch

CAUTIONS = (
    "The manuals of your machines and local rules come first; this sheet only reminds.",
    "No blank shorter, thinner or wider than the manual allows. Short parts are cut apart last.",
    "Push blocks at the jointer, a push stick at the saw; hands never over or behind the cutter.",
    "Support long stock on both sides of the machine. Look for nails, loose knots and checks first.",
    "Protect eyes and ears, run the dust collection; unplug the machine before you reach into it.",
)


def steps(batch: Batch, tape: Tape) -> tuple[tuple[Step, str], ...]:
    """What to do with a batch, in order, in sentences."""
    face, other = _faces(batch)
    told: dict[Word, str] = {
        "rough length": "Cross-cut the blanks to their rough lengths; write each blank's marks on its end.",
        "face": face,
        "edge": "Straighten one edge square to the face side and mark it as the face edge.",
        "thickness": f"{other}, all blanks of the batch at every setting of the planer, down to "
        f"{tape.say(batch.thickness)}.",
        "width": _width(batch, tape),
        "sizes": "Measure every part in the middle and near both ends, write the size that its joints will meet, and "
        f"lay the work out again from that.{_apart(batch)}",
    }
    return tuple((step(word), sentence) for word, sentence in told.items() if word != "thickness" or other)


def _faces(batch: Batch) -> tuple[str, str]:
    """How the face side is made, and how the other face; nothing for the other where it stays as it was bought."""
    if batch.as_bought:
        return "Leave the faces as they were bought; choose the better one and mark it as the face side.", ""
    if batch.state == "milled":
        return "Check one face for flat and mark it as the face side.", "Plane the other face"
    if batch.state == "rough on one face":
        flat = "Check the smooth face for flat; flatten it only where it is not. Mark it as the face side."
        return flat, "Plane the rough face"
    flat = "Flatten one face of every blank, hollow side down, and mark it as the face side."
    return flat, "Plane the other face, parallel to the first"


def _width(batch: Batch, tape: Tape) -> str:
    widths = _listed([tape.read(line.width) for line in batch.lines])
    return (
        "Rip to width with a little over, face edge against the fence, and plane the sawn edges, all of one width at "
        f"every setting, down to {widths} {tape.unit}."
    )


def _apart(batch: Batch) -> str:
    together = any(len(blank.items) > 1 for line in batch.lines for blank in line.blanks)
    return " Cut the short parts apart only after that." if together else ""


def _listed(words: list[str]) -> str:
    return words[0] if len(words) == 1 else ", ".join(words[:-1]) + " and " + words[-1]
