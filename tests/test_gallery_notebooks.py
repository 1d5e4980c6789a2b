"""The notebooks of the gallery run from the first cell to the last, and show what they should."""

from __future__ import annotations

import nbformat
import pytest
from designs import GALLERY
from nbclient import NotebookClient

NOTEBOOKS = sorted(GALLERY.glob("*.ipynb"))


def executed(path):
    book = nbformat.read(path, as_version=4)
    NotebookClient(book, timeout=120, kernel_name="python3", resources={"metadata": {"path": str(GALLERY)}}).execute()
    return book


def kinds(book):
    return [set(output.get("data", {})) for cell in book.cells for output in cell.get("outputs", [])]


def test_there_are_notebooks():
    assert [path.stem for path in NOTEBOOKS] == ["from_planer_to_paper", "vary_a_bench"]


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_notebook_is_kept_without_outputs(path):
    book = nbformat.read(path, as_version=4)
    assert all(not cell.outputs and cell.execution_count is None for cell in book.cells if cell.cell_type == "code")


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_notebook_runs_and_its_values_show_themselves(path):
    book = executed(path)
    assert all(output.output_type != "error" for cell in book.cells for output in cell.get("outputs", []))
    assert not [output for cell in book.cells for output in cell.get("outputs", []) if output.get("name") == "stderr"]
    found = kinds(book)
    shown = [output.get("data", {}).get("text/html", "") for cell in book.cells for output in cell.get("outputs", [])]
    assert any("<svg" in page for page in shown)
    assert sum("text/html" in kind for kind in found) >= 4
    if path.stem == "vary_a_bench":
        assert any("application/vnd.jupyter.widget-view+json" in kind for kind in found)
        assert any("image/png" in kind for kind in found)
