"""A bare machine: a Python that has imported this starts no program but those of its environment, git and bash.

So nothing that the tests need can hide among what happens to be installed. `conftest` imports it, `sitecustomize`
beside it does so in every Python that is started with this folder on PYTHONPATH, and all that these start inherit that.
What other programs look for is cut down by `bare` in scripts/environment.sh. A refusal is an OSError, as from a program
that is not there: a library that only asks whether it is, as ctypes asks ldconfig and gcc for libraries, does without.
"""

from __future__ import annotations

import os
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
ROOT = os.path.dirname(os.path.dirname(HERE))  # with scripts/ and .venv/
FREE = {"bash", "git"}


class ForeignProgram(PermissionError):
    """A program was started that is neither of the environment nor git or bash."""


def is_ours(program, folder=None, path=None):
    """Whether a program, as it is called from a folder, lies in the environment or the project, or is free to use.

    A name that is found nowhere is foreign too: no test is to pass only because something is not installed.
    """
    import shutil  # here, since this module is loaded by every Python that is started

    found = shutil.which(program, path=path) or program
    place = os.path.abspath(os.path.join(folder or "", found))
    ours = [ROOT] if sys.prefix == sys.base_prefix else [ROOT, sys.prefix]
    return (
        place == sys.executable
        or os.path.basename(place) in FREE
        or (os.path.dirname(found) != "" and any(place.startswith(os.path.join(one, "")) for one in ours))
    )


def refuse(event, details):
    """The audit hook: events of the interpreter, of which those that start a program are few."""
    if event == "subprocess.Popen":
        program, _, folder, settings = details
        path = (os.environ if settings is None else settings).get("PATH")
    elif event in ("os.exec", "os.posix_spawn"):
        program, folder, path = details[0], None, None
    elif event == "os.system":
        raise ForeignProgram(f"a shell was started, and what it calls cannot be told: {details[0]}")
    else:
        return
    if not is_ours(os.fsdecode(program), folder and os.fsdecode(folder), path):
        raise ForeignProgram(f"{os.fsdecode(program)} is neither of the environment nor git or bash")


if os.name == "posix":  # where scripts/test runs
    sys.addaudithook(refuse)
    known = os.environ.get("PYTHONPATH", "").split(os.pathsep)
    if HERE not in known:
        os.environ["PYTHONPATH"] = os.pathsep.join([HERE, *filter(None, known)])
