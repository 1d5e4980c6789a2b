"""The gallery designs added up by hand with a tape, from the foot of the leg. All in mm.

Honey-house bench, in inches: the foot shelf stands on a clear of 7, 2 3/4 wide at the front and the ends and 4 1/4 at
the back. The bench is 3 1/2 wide and ends at the front legs' top, 35 1/2. The head rail is 5 1/4 wide and ends at the
back legs' top, 70. Between 35 1/2 and 64 3/4 there are 29 1/4; the hook rail takes 3 1/2, each clear half of the rest:
12 7/8.

Drying rack, in mm: six trays of 45 + 45, the first at 160, the last ending at 1750; five clears share
1750 - 160 - 6 * 90 = 1050, so 210 each, and a tray follows the one below at 300.
"""

from fractions import Fraction


def inches(text):
    """Millimetres of a sum in inches as it is written on paper: "48 3/8"."""
    return float(sum(map(Fraction, text.split())) * Fraction(254, 10))


def _edges(*pairs):
    return [(inches(bottom), inches(top)) for bottom, top in pairs]


FOOT_SHELF_FRONT, FOOT_SHELF_BACK = ("7", "9 3/4"), ("7", "11 1/4")
BENCH, HOOK_RAIL, HEAD_RAIL = ("32", "35 1/2"), ("48 3/8", "51 7/8"), ("64 3/4", "70")

BENCH_FRONT_LEG = _edges(FOOT_SHELF_FRONT, BENCH)
BENCH_BACK_LEG = _edges(FOOT_SHELF_BACK, BENCH, HOOK_RAIL, HEAD_RAIL)
BENCH_FRONT_HEIGHT, BENCH_BACK_HEIGHT, BENCH_LEG_WIDTH = inches("35 1/2"), inches("70"), inches("3 1/4")

RACK_LONG = [(160, 205), (460, 505), (760, 805), (1060, 1105), (1360, 1405), (1660, 1705)]
RACK_END = [(205, 250), (505, 550), (805, 850), (1105, 1150), (1405, 1450), (1705, 1750)]
RACK_HEIGHT, RACK_LEG_WIDTH = 1750, 45


def struck(edges, end):
    """The shoulder lines of notches or laps on a part: their edges, but for those that are an end of it."""
    return sorted({edge for pair in edges for edge in pair} - {0, end})
