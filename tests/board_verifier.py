"""An independent verifier of board plans: it knows boards, parts, cuts and defects, and no pattern or solver.

`from board_verifier import verify`. Each fault is a sentence; a sound plan has none.
"""

from itertools import combinations, pairwise

HAIR = 1e-6


def verify(plan, boards, *, all_placed=True):
    """Faults of a plan over the boards that it was made for."""
    by_name = {board.name: board for board in boards}
    faults, counts, seen = [], {}, []
    for own in plan.boards:
        board = by_name[own.board.name]
        counts[board.name] = counts.get(board.name, 0) + 1
        faults += list(_of_a_board(plan, own, board))
        seen += [placed.part.name for placed in own.parts if placed.part is not None]
    there = {name: by_name[name].count for name in counts}
    faults += [f"{n} is cut {c} times" for n, c in counts.items() if there[n] is not None and c > there[n]]
    wanted = [part.name for blank in plan.rough.blanks for part in blank.parts]
    faults += [f"{name} twice" for name in set(seen) if seen.count(name) > 1]
    left = [part.name for part in plan.unplaced if part is not None]
    if sorted([*seen, *left]) != sorted(wanted) and not set(wanted) <= set([*seen, *left]):
        faults.append("parts are lost")
    if all_placed and left:
        faults.append(f"{left[0]} is not placed")
    return faults


def _of_a_board(plan, own, board):
    kerf = plan.sawing.kerf
    for a, b in pairwise(own.sections):
        if b.start < a.start + a.length + kerf - HAIR:
            yield f"{own.name}: no kerf between sections at {a.start} and {b.start}"
    for section in own.sections:
        for placed in section.parts:
            if abs(placed.start - section.start) > HAIR or placed.blank.length > section.length + HAIR:
                yield f"{own.name}: {placed.mark} is not in its section"
            yield from _in_the_board(plan.sawing.trim, own, board, placed)
            yield from _on_defects(own, board, placed)
        for a, b in combinations(section.parts, 2):
            low, high = sorted((a, b), key=lambda p: p.low)
            if high.low < low.high + kerf - HAIR:
                yield f"{own.name}: no kerf between {a.mark} and {b.mark}"


def _in_the_board(trim, own, board, placed):
    blank = placed.blank
    if placed.start < trim - HAIR or placed.end > board.length - trim + HAIR:
        yield f"{own.name}: {placed.mark} reaches into the trimmed ends"
    if placed.low < -HAIR or placed.high > board.width + HAIR:
        yield f"{own.name}: {placed.mark} is wider than the board"
    if board.thickness < blank.thickness - HAIR or (board.stock is not None and board.stock != blank.stock):
        yield f"{own.name}: {placed.mark} is of other wood"


def _on_defects(own, board, placed):
    blank = placed.blank
    sound = [(blank.length - h, blank.length - a) for a, h in blank.sound] if placed.turned else blank.sound
    for defect in board.defects:
        low, high = {
            "across": (0.0, board.width),
            "near edge": (0.0, defect.deep or 0.0),
            "far edge": (board.width - (defect.deep or 0.0), board.width),
        }[defect.where]
        if placed.low >= high - HAIR or placed.high <= low + HAIR:
            continue
        if placed.start >= defect.end - HAIR or placed.end <= defect.start + HAIR:
            continue
        if defect.kind != "knot":
            yield f"{own.name}: {placed.mark} holds a {defect.kind} at {defect.start}"
        elif any(placed.start + a < defect.end - HAIR and placed.start + b > defect.start + HAIR for a, b in sound):
            yield f"{own.name}: a knot at {defect.start} lies where {placed.mark} is cut, joined or ends"
