"""The designs of the gallery, for tests: `from designs import bench, rack, stand, tools`.

The plain ones are the same frames with nothing on their levels: what is worked by hand in marks, notches and pages of
legs and rails is told of them. They stand on the shelf of samples, too.
"""

import runpy
from pathlib import Path

import attrs
from samples import BOOT_STAND, DRYING_RACK, HONEY_BENCH, SAMPLES
from topped import straight

GALLERY = Path(__file__).parents[1] / "gallery"


def _of(file, name):
    return runpy.run_path(str(GALLERY / file))[name]


bench = _of("honey_house_bench.py", "bench")
rack = _of("print_room_rack.py", "rack")
stand = _of("boot_room_stand.py", "stand")
tools = _of("print_room_tools.py", "tools")

plain_bench, plain_rack, plain_stand = (
    attrs.evolve(frame, name=frame.name.removesuffix(", plain")) for frame in (HONEY_BENCH, DRYING_RACK, BOOT_STAND)
)

DESIGNS = {"bench": bench, "rack": rack, "stand": stand, "tools": tools}
STRAIGHT_DESIGNS = {name: straight(frame) for name, frame in DESIGNS.items()}
"""With no shaped edge, for readers of wood that know boxes only; curves have tests of their own."""
PLAIN_DESIGNS = {"bench": plain_bench, "rack": plain_rack, "stand": plain_stand, "tools": tools}
PLAIN_SAMPLES = {name: frame for name, frame in SAMPLES.items() if not any(own.carries for own in frame.levels())}
"""Frames of legs and rails alone: what a level carries is told once for each run, as test_repeated_members.py holds."""
