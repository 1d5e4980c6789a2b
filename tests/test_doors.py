import ast
from pathlib import Path

import benchjoin

SOURCE = Path(benchjoin.__file__)


def test_all_is_sorted():
    assert list(benchjoin.__all__) == sorted(set(benchjoin.__all__))


def test_every_name_in_all_exists_and_is_ours():
    things = {name: getattr(benchjoin, name) for name in benchjoin.__all__ if name != "__version__"}
    strangers = [name for name, thing in things.items() if not thing.__module__.startswith("benchjoin")]
    assert strangers == []


def test_names_are_loaded_from_where_the_type_checker_sees_them():
    seen = {
        f".{node.module}": ", ".join(name.name for name in node.names)
        for node in ast.walk(ast.parse(SOURCE.read_text(encoding="utf-8")))
        if isinstance(node, ast.ImportFrom) and node.level == 1 and node.module != "notebook"
    }
    assert seen == benchjoin._HOMES
    assert sorted(benchjoin._HOME) == list(benchjoin.__all__)


def test_no_name_is_that_of_a_module_beside_it():
    """A module that is imported stands in the package under its own name, and would hide the other."""
    modules = {path.stem for path in SOURCE.parent.iterdir() if path.is_dir() or path.suffix == ".py"}
    assert modules.isdisjoint(benchjoin.__all__)


def test_a_name_that_is_not_there_is_an_ordinary_error():
    assert not hasattr(benchjoin, "saw")
    assert set(benchjoin.__all__) <= set(dir(benchjoin))
