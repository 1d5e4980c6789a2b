import subprocess
import sys

HEAVY = ("IPython", "cairocffi", "cairosvg", "ipywidgets", "matplotlib", "pandas", "scipy", "svgwrite", "tomllib")


def test_importing_benchjoin_loads_nothing_heavy():
    ask = f"import sys, benchjoin; print([name for name in {HEAVY} if name in sys.modules])"
    answer = subprocess.run([sys.executable, "-c", ask], capture_output=True, text=True, check=True)
    assert answer.stdout.strip() == "[]"
