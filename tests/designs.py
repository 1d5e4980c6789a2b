"""The designs of the gallery, for tests: `from designs import bench, rack, stand, tools`."""

import runpy
from pathlib import Path

GALLERY = Path(__file__).parents[1] / "gallery"


def _of(file, name):
    return runpy.run_path(str(GALLERY / file))[name]


bench = _of("honey_house_bench.py", "bench")
rack = _of("print_room_rack.py", "rack")
stand = _of("boot_room_stand.py", "stand")
tools = _of("print_room_tools.py", "tools")

DESIGNS = {"bench": bench, "rack": rack, "stand": stand, "tools": tools}
