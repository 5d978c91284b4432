"""What a line of text may be made of, by the categories of Unicode. Pure."""

import unicodedata

_BREAKS = {"Cc", "Cs", "Zl", "Zp"}  # controls (tabs and ends of lines too), halves of a pair, separators
# What turns the letters after it round, beyond the text's own end (UAX 9); letters know their way without it.
_TURNS = dict.fromkeys([*range(0x202A, 0x202F), *range(0x2066, 0x206A)])


def without_turns(text: str) -> str:
    """Leave out the characters that only say which way others run."""
    return text.translate(_TURNS)


def is_one_line(text: str) -> bool:
    """Tell whether it stays on one line, without tabs or control characters."""
    return not any(unicodedata.category(one) in _BREAKS for one in text)


def can_be_seen(text: str) -> bool:
    """Tell whether anything of it leaves a mark: a letter, a mark on one, a number, a sign."""
    return any(unicodedata.category(one)[0] in "LMNPS" for one in text)
