"""Where every part of every sample lies, what is cut of it, and how its lines are struck, as numbers.

Heights are held by hand and by another reckoning elsewhere; here any that moves is seen.
"""

from __future__ import annotations

import pytest
from designs import DESIGNS
from recorded import lies, marks, spaced, stood
from samples import SAMPLES

from benchjoin import lay_out

OF_THE_SAMPLES = (
    *(
        "ends in wide faces",
        "three pairs",
        "four pairs, lapped",
        "left and right differ",
        "measured batch",
        "staggered",
    ),
    *(
        "staggered",
        "single row, turned",
        "honey bench",
        "boarded foot shelf",
        "slatted seat and back",
        "egg crate",
        "drip board",
    ),
    *("bearers of every kind", "lids", "trays"),
)
FRAMES = {**{name: SAMPLES[name] for name in OF_THE_SAMPLES}, "glove rack": DESIGNS["stand"]}


@pytest.mark.parametrize("name", FRAMES)
def test_where_everything_lies(name, file_regression):
    layout = lay_out(FRAMES[name])
    file_regression.check(
        "\n".join([*lies(layout), "", *marks(layout), *stood(layout), *spaced(layout)]), encoding="utf-8"
    )
