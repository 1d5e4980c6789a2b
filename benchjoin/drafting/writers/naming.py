"""Names of files: words of a design as a name that every system takes, Windows among them."""

from __future__ import annotations

import unicodedata

RESERVED = {"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(10))}
"""Names that Windows keeps for its devices, whatever their ending (Microsoft, Naming Files, Paths, and Namespaces; from
memory)."""
LONGEST = 60


def file_name(words: str) -> str:
    """Words as the stem of a file name: letters, figures and hyphens, in small letters.

    >>> file_name("Bee club: honey-house bench, 2nd (oak?)"), file_name("CON"), file_name("…")
    ('bee-club-honey-house-bench-2nd-oak', 'design-con', 'design')
    """
    plain = unicodedata.normalize("NFKC", words).casefold()
    kept = "".join(sign if sign.isalnum() else " " for sign in plain)
    stem = "-".join(kept.split())[:LONGEST].strip("-")
    return f"design-{stem}".rstrip("-") if not stem or stem in RESERVED else stem
