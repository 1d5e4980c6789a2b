"""Runs a notebook and shows it in a browser without a window, as a picture, so that one can look at it.

    python scripts/show_notebook.py gallery/vary_a_bench.ipynb out/vary.png [height in pixels]

Needs what the tests need, and Chromium (CHROMIUM names it). Sliders are drawn as they stand: the page is a picture of
what the cells gave, made of the state of their widgets.
"""

from __future__ import annotations

import html
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import nbformat
from nbclient import NotebookClient

VIEW = "application/vnd.jupyter.widget-view+json"
STATE = "application/vnd.jupyter.widget-state+json"
STYLE = """
body { font: 15px/1.4 sans-serif; max-width: 1040px; margin: 1em auto; color: #000; background: #fff }
pre { background: #f4f4f4; padding: 0.6em; white-space: pre-wrap } pre.out { background: #fff }
table { border-collapse: collapse; font-size: 13px } td, th { padding: 2px 8px; border-bottom: 1px solid #ccc }
caption { font-weight: bold; text-align: left } svg { max-width: 100%; height: auto }
.row { display: flex; flex-wrap: wrap; gap: 1em } .slider { display: flex; gap: 1em } .slider span { width: 14em }
"""


def executed(path: Path) -> Any:
    book = nbformat.read(path, as_version=4)
    place = {"metadata": {"path": str(path.parent)}}
    client = NotebookClient(book, timeout=300, resources=place, store_widget_state=True)
    client.execute()
    return book


def page(book: Any) -> str:
    """The whole notebook as HTML."""
    state = book.metadata.get("widgets", {}).get(STATE, {}).get("state", {})
    parts = []
    for cell in book.cells:
        if cell.cell_type == "markdown":
            parts.append(_words(cell.source))
            continue
        parts.append(f"<pre>{html.escape(cell.source)}</pre>")
        parts += [_output(output, state) for output in cell.outputs]
    return f"<!doctype html><meta charset=utf-8><style>{STYLE}</style>{''.join(parts)}"


def _words(source: str) -> str:
    """Headings and paragraphs, which is all that our notebooks say."""
    told = []
    for block in source.split("\n\n"):
        level = len(block) - len(block.lstrip("#"))
        told.append(f"<h{level}>{html.escape(block[level:])}</h{level}>" if level else f"<p>{html.escape(block)}</p>")
    return re.sub("`(.+?)`", r"<code>\1</code>", "".join(told))


def _output(output: Any, state: dict[str, Any]) -> str:
    if output.output_type in ("stream", "error"):
        return f'<pre class="out">{html.escape(output.get("text") or "".join(output.get("traceback", [])))}</pre>'
    data = output.data
    if VIEW in data:
        return _widget(data[VIEW]["model_id"], state)
    for kind in ("image/svg+xml", "text/html"):
        if kind in data:
            return f"<div>{data[kind]}</div>"
    if "image/png" in data:
        return f'<img src="data:image/png;base64,{data["image/png"].strip()}">'
    return f'<pre class="out">{html.escape(data.get("text/plain", ""))}</pre>'


def _widget(model: str, state: dict[str, Any]) -> str:
    """A widget as it stands, from its state."""
    own = state[model]["state"]
    children = "".join(_widget(child.removeprefix("IPY_MODEL_"), state) for child in own.get("children", []))
    name = own.get("_model_name", "")
    if name == "HTMLModel":
        layout = state.get(own.get("layout", "").removeprefix("IPY_MODEL_"), {}).get("state", {})
        return f'<div style="opacity:{layout.get("opacity") or 1}">{own.get("value", "")}</div>'
    if name == "SelectionSliderModel":
        labels, index = own["_options_labels"], own["index"]
        bar = f'<input type="range" min="0" max="{len(labels) - 1}" value="{index}" style="width:30em">'
        return f'<div class="slider"><span>{html.escape(own["description"])}</span>{bar}<b>{labels[index]}</b></div>'
    return f'<div class="{"row" if name == "HBoxModel" else ""}">{children}</div>'


def shot(text: str, out: Path, height: int) -> None:
    """The page as a picture."""
    browser = os.environ.get("CHROMIUM") or shutil.which("chromium") or shutil.which("chromium-browser")
    if browser is None:
        sys.exit("there is no Chromium here; CHROMIUM names one")
    with TemporaryDirectory() as folder:
        source = Path(folder) / "page.html"
        source.write_text(text, encoding="utf-8")
        command = [browser, "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars"]
        command += [f"--window-size=1100,{height}", f"--screenshot={out.resolve()}", source.as_uri()]
        subprocess.run(command, check=True, capture_output=True, timeout=120)


def main() -> None:
    if len(sys.argv) not in (3, 4):
        sys.exit((__doc__ or "").split("\n\n")[1].strip())
    book, out = executed(Path(sys.argv[1])), Path(sys.argv[2])
    out.parent.mkdir(parents=True, exist_ok=True)
    shot(page(book), out, int(sys.argv[3]) if len(sys.argv) == 4 else 6000)
    print(f"wrote {out}")


if __name__ == "__main__":
    main()
