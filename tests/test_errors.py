"""Errors: one tree, each also a builtin, each with fields that survive pickling."""

from __future__ import annotations

import copy
import inspect
import pickle
import re

import pytest

import benchjoin.errors as errors
from benchjoin.borrowed import borrowed
from benchjoin.errors import (
    AddressError,
    AssemblyError,
    BenchjoinError,
    BoardError,
    BoardListError,
    CannotDraw,
    DescriptionError,
    DesignFileError,
    FastenerError,
    LengthError,
    LoadError,
    LumberError,
    MeasurementError,
    MillingError,
    MissingLibrary,
    MoistureError,
    NotLaidOut,
    OtherLettering,
    PaperError,
    RunError,
    RunMismatch,
    RunOverfull,
    typed,
)
from benchjoin.frame.doors import Fault

BUILTINS = {
    LengthError: ValueError,
    DescriptionError: ValueError,
    DesignFileError: ValueError,
    AddressError: LookupError,
    NotLaidOut: AttributeError,
    RunError: ValueError,
    RunOverfull: ValueError,
    RunMismatch: ValueError,
    LumberError: LookupError,
    MillingError: ValueError,
    MoistureError: ValueError,
    MeasurementError: ValueError,
    BoardListError: ValueError,
    BoardError: ValueError,
    FastenerError: ValueError,
    LoadError: ValueError,
    AssemblyError: ValueError,
    CannotDraw: ValueError,
    PaperError: ValueError,
    MissingLibrary: ImportError,
}


def every_class():
    found = [thing for _, thing in inspect.getmembers(errors, inspect.isclass) if issubclass(thing, Exception)]
    return [thing for thing in found if not issubclass(thing, Warning)]


def test_every_error_is_known_here():
    assert set(every_class()) == {BenchjoinError, *BUILTINS}


def test_the_one_warning_is_named_beside_the_tree():
    assert issubclass(OtherLettering, UserWarning)
    assert "OtherLettering (UserWarning)" in errors.__doc__


@pytest.mark.parametrize("error, builtin", BUILTINS.items())
def test_an_error_is_ours_and_also_a_builtin(error, builtin):
    assert issubclass(error, BenchjoinError)
    assert issubclass(error, builtin)


def test_the_tree_in_the_docstring_names_every_class_under_its_parent():
    parents = {"BenchjoinError": "Exception"}
    above = ["BenchjoinError"]
    for line in re.findall(r"^ .*[├└]── .*", errors.__doc__, re.MULTILINE):
        depth = re.search("[├└]", line).start() // 5  # four spaces and one of the tree a step
        name = re.search(r"── (\w+)", line)[1]
        del above[depth:]
        parents[name] = above[-1]
        above.append(name)
    assert parents == {error.__name__: error.__bases__[0].__name__ for error in every_class()}


@pytest.mark.parametrize("error", [BenchjoinError, *BUILTINS])
@pytest.mark.parametrize("copied", [lambda e: pickle.loads(pickle.dumps(e)), copy.copy, copy.deepcopy])
def test_sentence_and_fields_survive_pickling_and_copying(error, copied):
    again = copied(error("31 3/4 mm too much.", run="Levels", over=31.75, faults=(Fault("length", "too short"),)))
    assert type(again) is error
    assert str(again) == "31 3/4 mm too much."
    assert (again.run, again.over, again.faults) == ("Levels", 31.75, (Fault("length", "too short"),))


def test_a_field_that_was_not_given_does_not_exist():
    assert not hasattr(RunError("no"), "over")


def test_an_address_error_shows_its_sentence_and_not_the_repr_of_it():
    assert str(AddressError("'lenght' reaches no value.")) == "'lenght' reaches no value."


class Unwilling:
    def __repr__(self):
        raise RuntimeError("no")


@pytest.mark.parametrize(
    "value, shown",
    [
        ("57", "'57'"),
        (None, "None"),
        ("x" * 200, "'" + "x" * 59 + "…"),
        (10**5000, None),
        (Unwilling(), "a value of type Unwilling"),
    ],
    ids=["text", "nothing", "long", "large", "unwilling"],
)
def test_a_refused_value_is_always_shown_and_never_at_length(value, shown):
    assert len(typed(value)) <= 61
    assert shown in (None, typed(value))


@pytest.mark.parametrize(
    "tool, library", [("no_such_library", "no_such_library"), ("no_such_library.saw", "no_such_library")]
)
def test_a_library_that_is_not_there_is_told_with_how_to_install_it(tool, library):
    with pytest.raises(MissingLibrary, match=f"Plots are made by {library}. Install it: pip install {library}$"):
        borrowed(tool, "Plots")
    assert borrowed("json.decoder", "Texts").__name__ == "json.decoder"
