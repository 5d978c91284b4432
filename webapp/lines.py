"""What a line of text may be made of, by the categories of Unicode. Pure."""

import unicodedata

_BREAKS = {"Cc", "Cs", "Zl", "Zp"}  # controls (tabs and ends of lines too), halves of a pair, separators


def is_one_line(text: str) -> bool:
    """Tell whether it stays on one line, without tabs or control characters."""
    return not any(unicodedata.category(one) in _BREAKS for one in text)


def can_be_seen(text: str) -> bool:
    """Tell whether anything of it leaves a mark: a letter, a mark on one, a number, a sign."""
    return any(unicodedata.category(one)[0] in "LMNPS" for one in text)
