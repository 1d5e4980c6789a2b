"""The binder as one page for a tablet: all sheets as SVG that zoom, lists as tables, boxes to tick.

The page stands by itself: no network, no picture or font beside it, and no script but the one that keeps what is ticked
on the device that it is read on. It prints as it reads.
"""

from __future__ import annotations

import html
import re
from collections.abc import Iterable, Sequence

from ...tables import Table
from ..sheets.sheet import Sheet
from .fonts import face_rules
from .svg import svg_text

TICK = "[ ]"
"""What stands in a list for a box to tick."""
STYLE = """
:root { color-scheme: light dark; --ink: #1b1b1b; --back: #fbfbf9; --line: #76736c; --soft: #eceae4; --link: #0b4f86 }
@media (prefers-color-scheme: dark) {
  :root { --ink: #ecebe7; --back: #1c1d1f; --line: #98958d; --soft: #2b2c2f; --link: #9ccbf5 }
}
* { box-sizing: border-box }
body { margin: 0 auto; padding: 1rem; max-width: 76rem; font: 1rem/1.5 system-ui, sans-serif; color: var(--ink);
  background: var(--back) }
h1 { margin: 0 0 .5rem; font-size: 1.6rem } h2 { margin: 2.5rem 0 .5rem; font-size: 1.2rem; scroll-margin-top: 1rem }
a { color: var(--link) } nav ol { margin: .5rem 0; padding-left: 1.6rem; columns: 20rem } nav a { display: inline-block;
  padding: .15rem 0 }
.paper { overflow: auto; background: #fff; border: 1px solid var(--line); max-height: 92vh }
.paper svg { display: block; width: 100%; height: auto }
.zoom { display: inline-block; margin: .3rem 0; padding: .35rem .8rem; border: 1px solid var(--line);
  border-radius: .3rem; background: var(--soft) }
.zoomed:focus-visible + .zoom { outline: 3px solid var(--link) }
.zoomed { position: absolute; opacity: 0 } .zoomed:checked ~ .paper svg { width: 260% }
.zoomed:checked + .zoom::after { content: " out" } .zoom::after { content: " in" }
.list { overflow-x: auto } table { border-collapse: collapse; width: 100%; font-size: .95rem }
th, td { padding: .4rem .6rem; border-bottom: 1px solid var(--line); text-align: left; vertical-align: top }
th { background: var(--soft) } .r { text-align: right } .c { text-align: center }
input[type=checkbox] { width: 1.4rem; height: 1.4rem }
@media print {
  .zoom, .zoomed, nav { display: none } h2 { break-before: page } .paper { max-height: none; border: 0 }
  .zoomed:checked ~ .paper svg { width: 100% } body { padding: 0; max-width: none; color: #000; background: #fff }
}
"""
SCRIPT = """
for (const box of document.querySelectorAll('input[data-key]')) {
  const key = document.body.dataset.binder + '/' + box.dataset.key;
  try { box.checked = localStorage.getItem(key) === '1' } catch (e) {}
  box.addEventListener('change', () => { try { localStorage.setItem(key, box.checked ? '1' : '0') } catch (e) {} });
}
"""
_OWN = re.compile(r'(\bid="|url\(#|href="#)')


def tablet_page(title: str, sheets: Iterable[Sheet], tables: Sequence[Table]) -> str:
    """One page of HTML with everything in it.

    Parameters
    ----------
    title : str
        What it is called; also what ticked boxes are kept by.
    sheets : iterable of Sheet
    tables : sequence of Table
        Lists that are read as tables, before the sheets.
    """
    shown = list(sheets)
    entries = [(f"list-{n}", table.title) for n, table in enumerate(tables, 1)]
    entries += [(f"sheet-{n}", sheet.title) for n, sheet in enumerate(shown, 1)]
    contents = "".join(f'<li><a href="#{place}">{html.escape(name)}</a></li>' for place, name in entries)
    body = "".join(_list(f"list-{n}", table) for n, table in enumerate(tables, 1))
    body += "".join(_sheet(f"sheet-{n}", sheet) for n, sheet in enumerate(shown, 1))
    said = html.escape(title)
    return (
        f'<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8"><title>{said}</title>\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<style>{face_rules(frozenset((False, True)))}{STYLE}</style></head>\n"
        f'<body data-binder="{html.escape(title, quote=True)}"><h1>{said}</h1>\n'
        f'<nav aria-label="Contents"><ol>{contents}</ol></nav>\n{body}\n<script>{SCRIPT}</script></body></html>\n'
    )


def _sheet(place: str, sheet: Sheet) -> str:
    """A sheet with its own names in its SVG, so that no two sheets share one."""
    drawn = svg_text(sheet)
    drawn = _OWN.sub(lambda found: f"{found[1]}{place}-", drawn[drawn.index("<svg") :])
    name = html.escape(sheet.title)
    head, mark, rest = drawn.partition(">")
    head = re.sub(r'\s(?:width|height)="[^"]*"', "", head)
    return (
        f'<section><h2 id="{place}">{name}</h2><input class="zoomed" type="checkbox" id="{place}-zoom">'
        f'<label class="zoom" for="{place}-zoom">Zoom</label>\n'
        f'<div class="paper">{head}{mark}{rest}</div></section>\n'
    )


def _list(place: str, table: Table) -> str:
    """A list as a table, its boxes to be ticked."""
    align = table.aligned()

    def cell(text: str, tag: str, side: str, key: str) -> str:
        inside = html.escape(text)
        if text == TICK:
            inside = f'<input type="checkbox" data-key="{html.escape(key, quote=True)}" aria-label="done">'
        kind = f' class="{side}"' if side != "l" else ""
        return f"<{tag}{kind}>{inside}</{tag}>"

    head = "".join(cell(text, "th", side, "") for text, side in zip(table.columns, align, strict=True))
    rows = []
    for row in table.rows:
        key = f"{table.title}/{' '.join(text for text in row if text != TICK)}"
        rows.append("<tr>" + "".join(cell(t, "td", side, key) for t, side in zip(row, align, strict=True)) + "</tr>")
    notes = "".join(f"<p>{html.escape(note)}</p>" for note in table.notes)
    name = html.escape(table.title)
    return (
        f'<section><h2 id="{place}">{name}</h2><div class="list"><table><thead><tr>{head}</tr></thead>'
        f"<tbody>{''.join(rows)}</tbody></table></div>{notes}</section>\n"
    )
