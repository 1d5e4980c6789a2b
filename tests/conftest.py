import bare_machine  # noqa: F401 - from here on, programs from outside the environment are refused
import pytest
from hypothesis import HealthCheck, settings

collect_ignore = ["bare", "words"]  # a second import would lay a second hook; wrong words are for the type checkers

settings.register_profile("ci", derandomize=True, deadline=None, max_examples=30)
settings.register_profile(
    "mutation", derandomize=True, deadline=None, max_examples=12, suppress_health_check=list(HealthCheck), database=None
)
settings.load_profile("ci")  # another one: pytest --hypothesis-profile=…

HEAVY = {"rack", "stand", "bench", "bearers of every kind", "egg crate", "four pairs, lapped"}
HEAVY |= {
    "slatted seat and back",
    "boarded foot shelf",
    "tops aligned",
    "weighed clears",
    "by end rails",
    "honey bench",
}
"""Frames with the most parts, and those that differ from another one in their sizes alone. Smaller samples have members
of every kind that they have, so where a test meets every frame of the shelf, these are left to the slow run."""
MEETS_ALL = {
    "test_advice_and_finished_parts.py",
    "test_all_pages.py",
    "test_arrangement.py",
    "test_clears_on_sheets.py",
    "test_details.py",
    "test_finished_parts.py",
    "test_full_size_paper.py",
    "test_hidden_lines.py",
    "test_milling_sheet.py",
    "test_minutes.py",
    "test_parts_sheet.py",
    "test_pictures.py",
    "test_sections.py",
    "test_settings.py",
    "test_sizes_once.py",
    "test_stamps.py",
    "test_what_lies_on_the_wood.py",
}


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items):
    for item in items:
        values = item.callspec.params.values() if hasattr(item, "callspec") else ()
        if item.path.name in MEETS_ALL and HEAVY & {value for value in values if isinstance(value, str)}:
            item.add_marker(pytest.mark.slow)
