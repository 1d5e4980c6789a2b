"""Moves the sliders of a notebook in JupyterLab, and reads the binder for a tablet, in a browser without a window.

    python scripts/in_browser.py [FOLDER]

Needs the extra `browser` (pip install -e '.[browser]') and Chromium, which CHROMIUM names where it is not on the path.

Photographs of both are left in a folder (out/browser), light and dark, for a laptop, a tablet and a phone: look at
them. What can be told without eyes is asserted: that pictures follow the slider, that one which cannot be built fades,
that nothing runs out of its cell or off the page, that all words stand apart from their ground (WCAG 2.2, 1.4.3: 4.5
to 1), and that the page asks for nothing on any network. How long a step takes is printed.
"""

from __future__ import annotations

import json
import os
import shutil
import socket
import statistics
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from playwright.sync_api import Page, sync_playwright

ROOT = Path(__file__).parents[1]
WIDTHS = {"laptop": 1280, "tablet": 820, "phone": 390}
THEMES = {"light": "JupyterLab Light", "dark": "JupyterLab Dark"}
STEPS = 20
LIKE_READERS = 4.5
"""WCAG 2.2, success criterion 1.4.3: the least contrast of words and their ground."""

WATCH = """() => {
  const cell = window.watched;
  document.addEventListener('keydown', () => { window.pressed = performance.now(); window.settled = null; }, true);
  for (const view of cell.querySelectorAll('.widget-html-content'))
    new MutationObserver(() => { window.settled = performance.now(); })
      .observe(view, {subtree: true, childList: true, characterData: true});
}"""
CONTRAST = """(root) => {
  const part = own => { own /= 255; return own <= 0.04045 ? own / 12.92 : ((own + 0.055) / 1.055) ** 2.4; };
  const bright = own => 0.2126 * part(own[0]) + 0.7152 * part(own[1]) + 0.0722 * part(own[2]);
  const colour = text => (text.match(/[\\d.]+/g) || []).map(Number);
  const ground = own => {
    for (let at = own; at; at = at.parentElement) {
      const found = colour(getComputedStyle(at).backgroundColor);
      if (found.length && (found.length < 4 || found[3] > 0.9)) return found;
    }
    return [255, 255, 255];
  };
  const bad = [];
  for (const own of document.querySelectorAll(root)) {
    const words = [...own.childNodes].filter(n => n.nodeType === 3).map(n => n.textContent.trim()).join('');
    if (!words || !own.getClientRects().length) continue;
    if (own.closest('svg')) continue;
    const [a, b] = [bright(colour(getComputedStyle(own).color)), bright(ground(own))].sort((x, y) => y - x);
    const ratio = (a + 0.05) / (b + 0.05);
    if (ratio < LEAST) bad.push([words.slice(0, 40), Math.round(ratio * 100) / 100]);
  }
  return bad;
}""".replace("LEAST", str(LIKE_READERS))


def free_port() -> int:
    with socket.socket() as own:
        own.bind(("127.0.0.1", 0))
        port: int = own.getsockname()[1]
        return port


def with_too_much(notebook: Path) -> None:
    """Put one more slider at the end of a notebook: it can be drawn to where the frame cannot be built."""
    book = json.loads(notebook.read_text(encoding="utf-8"))
    more = 'explore(bench, {"clear below foot shelf.size": ("1 in", "40 in", "1 in")})'
    empty = {"cell_type": "code", "execution_count": None, "id": "too-much", "metadata": {}, "outputs": []}
    book["cells"].append({**empty, "source": [more]})
    notebook.write_text(json.dumps(book), encoding="utf-8")


@contextmanager
def jupyterlab(folder: Path, theme: str) -> Iterator[str]:
    """A JupyterLab over a folder with copies of the gallery, and its address."""
    port, home = free_port(), folder / "home"
    chosen = home / "settings" / "@jupyterlab" / "apputils-extension" / "themes.jupyterlab-settings"
    chosen.parent.mkdir(parents=True)
    chosen.write_text(json.dumps({"theme": theme}))
    news = home / "settings" / "@jupyterlab" / "apputils-extension" / "notification.jupyterlab-settings"
    news.write_text(json.dumps({"fetchNews": "false", "checkForUpdates": False}))
    around = {**os.environ, "HOME": str(home), "JUPYTERLAB_SETTINGS_DIR": str(home / "settings")}
    around |= {"PYTHONPATH": os.pathsep.join(filter(None, (str(ROOT), os.environ.get("PYTHONPATH"))))}
    command = [sys.executable, "-m", "jupyterlab", "--no-browser", "--allow-root", f"--port={port}"]
    command += ["--IdentityProvider.token=", "--LabApp.expose_app_in_browser=True", f"--notebook-dir={folder}"]
    own = subprocess.Popen(command, cwd=folder, env=around, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        for _ in range(300):
            try:
                urllib.request.urlopen(f"http://127.0.0.1:{port}/api", timeout=2).close()
                break
            except OSError:
                time.sleep(0.2)
        yield f"http://127.0.0.1:{port}"
    finally:
        own.terminate()
        own.wait(20)


def run_all(page: Page, address: str, notebook: str) -> None:
    """Open a notebook and run it from the first cell to the last."""
    page.goto(f"{address}/doc/tree/{notebook}")
    page.wait_for_selector(".jp-Notebook")
    page.wait_for_function("() => window.jupyterapp && window.jupyterapp.serviceManager.sessions")
    page.wait_for_function("() => document.querySelector('.jp-Notebook .jp-Cell')")
    page.wait_for_timeout(3000)
    page.evaluate("() => window.jupyterapp.commands.execute('notebook:run-all-cells')")
    page.wait_for_function(
        "() => { const all = [...document.querySelectorAll('.jp-CodeCell .jp-InputPrompt')];"
        " const wrong = document.querySelector('.jp-OutputArea-output[data-mime-type*=error]');"
        " return wrong || all.length && all.every(own => /\\[\\d+\\]/.test(own.textContent)); }",
        timeout=120_000,
    )
    page.wait_for_timeout(1500)
    wrong = page.locator(".jp-OutputArea-output[data-mime-type*=error]").all_inner_texts()
    assert not wrong, wrong[0]


def slide(page: Page, number: int, keys: list[str]) -> list[float]:
    """Press keys on a slider, and give from key to settled picture. [ms]"""
    page.evaluate(
        "n => { const own = document.querySelectorAll('.jp-OutputArea-output .noUi-handle')[n];"
        " window.watched = own.closest('.jp-OutputArea'); own.scrollIntoView({block: 'center'}); own.focus(); }",
        number,
    )
    page.evaluate(WATCH)
    took = []
    for key in keys:
        page.keyboard.press(key)
        page.wait_for_function(
            "() => performance.now() - (window.settled || window.pressed + 4000) > 300", timeout=20_000
        )
        found = page.evaluate("() => window.settled && window.settled - window.pressed")
        assert found, f"key {len(took) + 1} on slider {number} changes nothing"
        took.append(float(found))
    return took


def too_wide(page: Page) -> list[str]:
    """Pictures and tables that run out of their cells."""
    found: list[str] = page.evaluate(
        "() => [...document.querySelectorAll('.jp-OutputArea-output svg')].filter(own =>"
        " own.getBoundingClientRect().right > own.closest('.jp-OutputArea').getBoundingClientRect().right + 1"
        ").map(own => own.closest('.jp-OutputArea').getBoundingClientRect().right + ' < ' +"
        " own.getBoundingClientRect().right + ' ' + own.parentElement.outerHTML.slice(0, 80))"
    )
    return found


def spread(took: list[float]) -> str:
    return f"median {statistics.median(took):.0f} ms, worst {max(took):.0f} ms of {len(took)} steps"


def notebook(page: Page, out: Path, theme: str) -> None:
    views = ".jp-OutputArea-output .widget-html-content svg"
    page.wait_for_selector(views)
    before = page.inner_html(views)
    took = slide(page, 0, ["ArrowRight"] * STEPS)
    assert page.inner_html(views) != before, "the picture does not follow the slider"
    print(f"{theme}: from key to settled picture: {spread(took)}")
    faded = (
        "() => [...document.querySelectorAll('.widget-html-content > div')].some(own => own.style.opacity === '0.3')"
    )
    assert not page.evaluate(faded)
    slide(page, 4, ["End"])
    assert page.evaluate(faded), "a frame that cannot be built does not fade its picture"
    page.screenshot(path=out / f"refused-{theme}.png")
    slide(page, 4, ["Home"])
    assert not page.evaluate(faded)
    turned = slide(page, 2, ["ArrowRight"] * STEPS)
    print(f"{theme}: turning the picture: {spread(turned)}")
    for name, width in WIDTHS.items():
        page.set_viewport_size({"width": width, "height": 1000})
        page.wait_for_timeout(600)
        assert not too_wide(page), f"{theme}, {name}: {too_wide(page)}"
        for number, view in enumerate((".jp-RenderedHTMLCommon table", ".widget-html-content svg", "figure svg")):
            page.locator(view).first.evaluate("own => own.scrollIntoView({block: 'start'})")
            page.wait_for_timeout(400)
            page.screenshot(path=out / f"notebook-{theme}-{name}-{number + 1}.png")
    bad = page.evaluate(CONTRAST, ".jp-OutputArea-output *")
    assert not bad, f"{theme}: words that hardly stand apart from their ground: {bad[:5]}"


def tablet(browser: Any, out: Path, file: Path) -> None:
    for theme in THEMES:
        for name, width in WIDTHS.items():
            page = browser.new_page(viewport={"width": width, "height": 1000}, color_scheme=theme)
            asked: list[str] = []
            page.on("request", lambda request, asked=asked: asked.append(request.url))
            page.goto(file.as_uri())
            across = page.evaluate("() => document.documentElement.scrollWidth")
            assert across <= width, f"the page is {across} wide on {width}"
            assert not [own for own in asked if not own.startswith(("file:", "data:"))], asked
            bad = page.evaluate(CONTRAST, "body *")
            assert not bad, f"{theme}, {name}: {bad[:5]}"
            page.screenshot(path=out / f"tablet-{theme}-{name}.png")
            page.locator("input[data-key]").first.check()
            page.reload()
            assert page.locator("input[data-key]").first.is_checked(), "what is ticked is not kept"
            page.close()
    print(f"the binder for a tablet: {file.stat().st_size / 1e6:.1f} MB, nothing asked of a network")


def main() -> None:
    out = Path(sys.argv[1] if len(sys.argv) > 1 else ROOT / "out" / "browser")
    out.mkdir(parents=True, exist_ok=True)
    chromium = os.environ.get("CHROMIUM") or shutil.which("chromium") or shutil.which("chromium-browser")
    if chromium is None:
        sys.exit("there is no Chromium here; CHROMIUM names one")
    sys.path.insert(0, str(ROOT / "gallery"))
    from honey_house_bench import bench

    from benchjoin import bind, lay_out

    with sync_playwright() as own, TemporaryDirectory() as scratch:
        browser = own.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        tablet(browser, out, bind(lay_out(bench), Path(scratch) / "bench.html"))
        for theme, called in THEMES.items():
            folder = Path(scratch) / theme
            shutil.copytree(ROOT / "gallery", folder)
            with_too_much(folder / "vary_a_bench.ipynb")
            with jupyterlab(folder, called) as address:
                page = browser.new_page(viewport={"width": 1280, "height": 1000}, color_scheme=theme)
                run_all(page, address, "vary_a_bench.ipynb")
                notebook(page, out, theme)
                page.close()
        browser.close()
    print(f"photographs are in {out}")


if __name__ == "__main__":
    main()
