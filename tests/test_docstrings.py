"""Every docstring of the package reads as numpydoc, and tells of the parameters that there are."""

from pathlib import Path

import pytest
from read_docstrings import documented, errors_of, faults

import benchjoin

PACKAGE = Path(benchjoin.__file__).parent
SOURCES = {path: path.read_text("utf-8") for path in sorted(PACKAGE.rglob("*.py"))}
ERRORS = errors_of(SOURCES.values())
GOOD = '''
def cut(length, *names, depth=None):
    """Cut a notch.

    Two dashes -- as here -- are prose.

    Parameters
    ----------
    length, depth : length
        How long, and how deep.
    names : str

    Raises
    ------
    ValueError
        If it is too deep.

    Examples
    --------
    >>> cut(3)
    """
'''
SLIPS = [
    ("Raises\n    ------\n    ValueError\n        If", "Raises ------ ValueError If", "drawn into the prose"),
    ("Examples\n    --------\n    >>>", "Examples\n    --------\n    So it is >>>", "prompt is drawn"),
    ("    --------\n", "", "not underlined"),
    ("    --------\n", "    -----\n", "another length"),
    ("\n\n    Examples", "\n    Examples", "no empty line"),
    ("Examples\n    --------", "Example\n    -------", "no section"),
    ("Examples\n    --------", "Returns\n    -------", "another order"),
    ("length, depth : length", "length, depth, width : length", "'width' is told"),
    ("length, depth : length", "length : length", "'depth' is in the signature"),
    ("*names, ", "", "'names' is told"),
    ("    ValueError\n", "    TooDeep\n", "no error"),
    ("    ValueError\n        If", "    ValueError If", "no error"),
    ("    Examples\n    --------\n", "", "an example stands in section 'Raises'"),
]


def told(source):
    return [f"{name}: {fault}" for name, node, text in documented(source) for fault in faults(node, text, ERRORS)]


def test_every_docstring_reads_as_numpydoc():
    found = [
        f"{path.relative_to(PACKAGE.parent)}, {fault}" for path, source in SOURCES.items() for fault in told(source)
    ]
    assert not found, "\n".join(found)


def test_the_reader_meets_the_whole_package():
    assert sum(len(list(documented(source))) for source in SOURCES.values()) > 900


def test_a_good_docstring_has_no_faults():
    assert told(GOOD) == []


@pytest.mark.parametrize("right, slip, said", SLIPS)
def test_the_reader_sees(right, slip, said):
    assert right in GOOD
    assert said in "\n".join(told(GOOD.replace(right, slip, 1)))


def test_fields_are_the_parameters_of_a_class():
    text = '    """A leg.\n\n    Parameters\n    ----------\n    height : float\n    """\n'
    source = f"class Leg:\n{text}\n    width: float\n"
    assert told(source) == [
        "Leg: parameter 'height' is told, and the signature has none",
        "Leg: parameter 'width' is in the signature, and nothing is told of it",
    ]
