"""Regular expressions for strings and keys of TOML, for those who scan a text without parsing it.

Each pattern gives back nothing it has taken, so that no text, however odd, costs more than its length.
"""

from __future__ import annotations

LONG_STRING = r'"""(?:[^"\\]++|\\.|"(?!""))*+(?:"{3,5}|\Z)' + "|" + r"'''(?:[^']++|'(?!''))*+(?:'{3,5}|\Z)"
"""A string between three quotes, or the rest of the text where it is not closed; wants ``re.DOTALL``."""

SHORT_STRING = r'"(?:[^"\\\n]++|\\[^\n])*+(?:"|(?=\n)|\\?\Z|\\(?=\n))' + "|" + r"'[^'\n]*+(?:'|(?=\n)|\Z)"
"""A string on one line, or the rest of the line where it is not closed."""

BARE_KEY = r"[A-Za-z0-9_-]++"
"""A key without quotes."""

KEY = rf"(?:{BARE_KEY}|{SHORT_STRING})"
"""One part of a key."""
