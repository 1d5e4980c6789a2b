"""Which changed line of the numeric core would no test tell? One change at a time, by mutmut.

    python scripts/mutate.py                  lengths, runs, readings, joints and faces; a quarter of an hour
    python scripts/mutate.py settings         the settings of the saw, which take longer
    python scripts/mutate.py numbers --show   with the changes that no test told

Works in a copy of the project in a temporary folder, and runs the tests that are nearest to the group alone. What is
worked out while a module is imported cannot be changed this way, and counts as not told; so do the changes that change
nothing, such as the `strict` of a zip whose sides are alike. Needs `pip install '.[mutation]'`.
"""

import argparse
import os
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
        "lengths runs readings layout/joints/* layout/joining layout/on_face frame/faces frame/joints",
        "test_lengths test_runs test_readings layout/test_cuts_by_hand layout/test_on_face layout/test_boards "
        "layout/test_hands layout/test_new_members layout/test_hand_tables layout/test_measured_wood "
        "frame/test_bad_input properties/test_runs properties/test_lengths_and_readings outside/test_exact_arithmetic",
    ),
    "settings": (
        "shop/settings/* shop/settings/ways/*",
        "golden/test_settings_told shop/test_settings shop/test_dado_heads shop/test_minutes shop/test_open_notches "
        "shop/test_ordering shop/test_what_is_done outside/test_saws properties/test_settings_cut_true",
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


def main() -> None:
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("group", nargs="?", default="numbers", choices=sorted(GROUPS))
    asked.add_argument("--show", action="store_true")
    given = asked.parse_args()
    modules, tests = GROUPS[given.group]
    with tempfile.TemporaryDirectory() as temporary:
        folder = Path(temporary) / "benchjoin"
        shutil.copytree(
            ROOT, folder, ignore=shutil.ignore_patterns(".git", ".venv", "mutants", "__pycache__", ".*_cache")
        )
        own = SETTINGS.format(
            modules=[f"benchjoin/{name}" for name in modules], tests=[f"tests/{name}" for name in tests]
        )
        with (folder / "pyproject.toml").open("a", encoding="utf-8") as file:
            file.write(own.replace("'", '"'))
        mutmut(folder, "run", "--max-children", str(os.cpu_count() or 1))
        score: dict[str, Counter[str]] = {}
        for name, said in re.findall(r"^ *(\S+): (.+)$", mutmut(folder, "results", "--all", "true"), re.MULTILINE):
            score.setdefault(re.sub(r"\.x.*", "", name), Counter())["told" if said in TOLD else "not told"] += 1
            if given.show and said not in TOLD:
                print(f"{name}: {said}\n{mutmut(folder, 'show', name)}")
    if not score:
        sys.exit("mutmut changed nothing; run the nearest tests by themselves and see that they pass")
    for module, counts in [*sorted(score.items()), ("all", sum(score.values(), Counter()))]:
        print(f"{counts['told']:>6} of {counts.total():>5} told, {counts['told'] / counts.total():>4.0%}  {module}")


if __name__ == "__main__":
    main()
