"""Which changed line of the numeric core would no test tell? One change at a time, by mutmut.

    python scripts/mutate.py                        lengths, runs, readings, joints and faces; a quarter of an hour
    python scripts/mutate.py settings               the settings of the saw, which take longer
    python scripts/mutate.py elsewhere --of 400     400 changes by lot, of layout, movement, strength and board plan
    python scripts/mutate.py numbers --show         with the changes that no test told

A lot is drawn by a seed (`--seed`), the same for the same code. Works in a copy of the project in a temporary folder,
and runs the tests that are nearest to the group alone. What is worked out while a module is imported cannot be changed
this way, and counts as not told; so do the changes that change nothing, such as the `strict` of a zip whose sides are
alike. Needs `pip install '.[mutation]'`.
"""

import argparse
import os
import random
import re
import shutil
import subprocess
import sys
import tempfile
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
GROUPS = {
    "numbers": (
        "lengths.py runs.py readings.py layout/joints/* layout/joining.py layout/on_face.py frame/faces.py "
        "frame/joints.py",
        "test_lengths.py test_runs.py test_readings.py layout/test_cuts_by_hand.py layout/test_on_face.py "
        "layout/test_boards.py layout/test_hands.py layout/test_new_members.py layout/test_hand_tables.py "
        "layout/test_measured_wood.py frame/test_bad_input.py properties/test_runs.py "
        "properties/test_lengths_and_readings.py outside/test_exact_arithmetic.py",
    ),
    "settings": (
        "shop/settings/* shop/settings/ways/*",
        "golden/test_settings_told.py shop/test_settings.py shop/test_dado_heads.py shop/test_minutes.py "
        "shop/test_open_notches.py shop/test_ordering.py shop/test_what_is_done.py outside/test_saws.py "
        "properties/test_settings_cut_true.py",
    ),
    "elsewhere": (
        "layout/* layout/checks/* layout/placing/* wood/* shop/gaps.py shop/swelling.py shop/boards/* shop/strength/*",
        "layout outside shop golden properties/test_random_frames.py properties/test_single_rows.py test_notebook.py",
    ),
}
"""What is changed, and the tests that are to tell."""
TOLD = {"killed", "timeout", "segfault"}
SETTINGS = """
[tool.mutmut]
source_paths = ["benchjoin"]
only_mutate = {modules}
also_copy = ["gallery", "README.md", "DEVELOPERS.md", "scripts"]
pytest_add_cli_args = ["-p", "no:cacheprovider", "-p", "no:xdist", "-q", "-x", "--hypothesis-profile=mutation"]
pytest_add_cli_args_test_selection = {tests}
use_git_change_detection = false
track_dependencies = false
"""


def mutmut(folder: Path, *words: str) -> str:
    """What mutmut says; what it draws while it works goes by."""
    clean = {name: value for name, value in os.environ.items() if name not in ("PYTHONPATH", "PYTEST_ADDOPTS")}
    asked = [sys.executable, "-m", "mutmut", *words]
    return subprocess.run(asked, cwd=folder, env=clean, capture_output=True, text=True, check=False).stdout


def said_of(folder: Path) -> dict[str, str]:
    """Every change by its name, and what came of it."""
    return dict(re.findall(r"^ *(\S+): (.+)$", mutmut(folder, "results", "--all", "true"), re.MULTILINE))


def main() -> None:
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("group", nargs="?", default="numbers", choices=sorted(GROUPS))
    asked.add_argument("--of", type=int, default=0, help="so many changes by lot; all of them if not given")
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--show", action="store_true", help="print the changes that no test told")
    given = asked.parse_args()
    modules, tests = (
        [f"{under}/{name}" for name in text.split()]
        for under, text in zip(("benchjoin", "tests"), GROUPS[given.group], strict=True)
    )
    with tempfile.TemporaryDirectory() as temporary:
        folder = Path(temporary) / "benchjoin"
        shutil.copytree(
            ROOT, folder, ignore=shutil.ignore_patterns(".git", ".venv", "mutants", "__pycache__", ".*_cache")
        )
        with (folder / "pyproject.toml").open("a", encoding="utf-8") as file:
            file.write(SETTINGS.format(modules=modules, tests=tests).replace("'", '"'))
        wanted: list[str] = []
        if given.of:
            mutmut(folder, "run", "no change has this name")  # makes all, and tries none
            names = sorted(said_of(folder))
            wanted = random.Random(given.seed).sample(names, min(given.of, len(names)))
        told = mutmut(folder, "run", "--max-children", str(os.cpu_count() or 1), *wanted)
        said = {name: how for name, how in said_of(folder).items() if not wanted or name in set(wanted)}
        tried = {name: how for name, how in said.items() if how != "not checked"}
        if not tried:
            sys.exit(f"Nothing was tried. Run the nearest tests by themselves and see that they pass.\n{told[-2000:]}")
        score: dict[str, Counter[str]] = {}
        for name, how in tried.items():
            score.setdefault(re.sub(r"\.x.*", "", name), Counter())["told" if how in TOLD else "not told"] += 1
            if given.show and how not in TOLD:
                print(f"{name}: {how}\n{mutmut(folder, 'show', name)}")
    for module, counts in [*sorted(score.items()), ("all", sum(score.values(), Counter()))]:
        print(f"{counts['told']:>6} of {counts.total():>5} told, {counts['told'] / counts.total():>4.0%}  {module}")
    if len(tried) < len(said):
        print(f"{len(said) - len(tried)} more were not tried")


if __name__ == "__main__":
    main()
