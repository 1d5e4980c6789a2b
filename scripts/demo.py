"""Draws the honey-house bench into out/ and says what it wrote and what the checks found."""

import sys
from pathlib import Path

root = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(root / "gallery"))

from honey_house_bench import bench  # noqa: E402

from benchjoin import bind, cut_list, elevation, lay_out, set_page, templates  # noqa: E402
from benchjoin.errors import MissingLibrary  # noqa: E402

out = root / "out"
out.mkdir(exist_ok=True)
layout = lay_out(bench)
print(layout)

sheets = [
    elevation(layout, "front"),
    elevation(layout, "left"),
    set_page(layout, "A"),
    set_page(layout, "A", paper="Letter"),
]
wrote = [sheet.save(out / f"{sheet.name}.svg") for sheet in sheets]
wrote.append(out / "cut-list.txt")
wrote[-1].write_text(f"{cut_list(layout)}\n", encoding="utf-8")
try:
    wrote += [sheet.save(out / f"{sheet.name}.pdf") for sheet in sheets]
    wrote.append(bind(layout, out / "honey-house-bench.pdf"))
    wrote.append(templates(layout, out / "templates.pdf"))
except MissingLibrary as error:
    print(f"No PDF: {error}")

for path in wrote:
    print(f"wrote {path.relative_to(root)}")
for finding in layout.findings:
    print(finding)
print(f"{len(layout.findings) or 'no'} findings; lay out/set-a.pdf on the clamped legs, printed at 100 %")
