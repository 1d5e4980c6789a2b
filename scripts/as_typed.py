"""Does what README says on a fresh clone in a fresh environment, as typed, and compares what is printed.

    python scripts/as_typed.py [--test]

The last commit is cloned. `scripts/demo` is run in it; the package is installed into an empty environment, and the
Python blocks of README run there one after the other, in an empty folder. With --test, `scripts/test` runs as well.
How long each step takes is printed.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
import time
import venv
from pathlib import Path
from tempfile import TemporaryDirectory

ROOT = Path(__file__).parents[1]
BLOCK = re.compile(r"^```(\w+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
WRITTEN = ("binder.html", "binder.pdf", "templates.pdf")


def run(*command: str, at: Path) -> str:
    """What a command prints; its time is told."""
    started = time.perf_counter()
    clean = {name: own for name, own in os.environ.items() if name not in ("PYTHONPATH", "VIRTUAL_ENV")}
    done = subprocess.run(command, cwd=at, env=clean, capture_output=True, text=True, check=False)
    print(f"{time.perf_counter() - started:6.1f} s  {' '.join(command)[:90]}", flush=True)
    if done.returncode:
        sys.exit(f"{done.stdout}\n{done.stderr}\n{' '.join(command)} failed")
    return done.stdout


def main() -> None:
    with TemporaryDirectory() as scratch:
        clone, place, environment = (Path(scratch) / name for name in ("clone", "empty", "environment"))
        place.mkdir()
        run("git", "clone", "--quiet", str(ROOT), str(clone), at=Path(scratch))
        run("scripts/demo", at=clone)
        if "--test" in sys.argv[1:]:
            run("scripts/test", at=clone)
        venv.create(environment, with_pip=True)
        python = str(environment / ("Scripts" if os.name == "nt" else "bin") / "python")
        run(python, "-m", "pip", "-qq", "install", ".", at=clone)
        found = BLOCK.findall((clone / "README.md").read_text(encoding="utf-8"))
        script = "\n".join(block for language, block in found if language == "python")
        expected = "\n".join(block.strip() for language, block in found if language == "text" and "┌┐" not in block)
        (place / "bench.py").write_text(script, encoding="utf-8")
        printed = run(python, "bench.py", at=place)
        lines, wanted = ([line for line in text.splitlines() if line.strip()] for text in (printed, expected))
        assert lines == wanted, f"README says\n{expected}\nand it prints\n{printed}"
        assert sorted(path.name for path in place.iterdir() if path.suffix != ".py") == list(WRITTEN)
        print(run(str(Path(python).parent / "benchjoin"), "--version", at=place).strip())
    print("README does what it says")


if __name__ == "__main__":
    main()
