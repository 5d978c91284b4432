"""What a stitcher may be called, and when two names are the same.

Pure: text in, text out. Unicode's own terms are used: NFC, NFKC, casefold, general category.
"""

import unicodedata

LONGEST = 60
LONGEST_KEY = 200
JOINERS = {"\u200c", "\u200d"}  # they carry meaning inside words of some scripts


def tidy(text: str) -> str:
    """Compose a name as it will be shown: NFC, one space between words, none around."""
    return unicodedata.normalize("NFC", " ".join(text.split()))


def key(name: str) -> str:
    """Reduce a name to what makes it itself: two with the same key are one name.

    By NFKC and casefold, each twice, as the Unicode standard has it for compatibility caseless matching;
    what cannot be seen makes no difference.
    """
    seen = "".join(letter for letter in tidy(name) if _category(letter) != "C")
    folded = unicodedata.normalize("NFD", seen)
    for _ in range(2):
        folded = unicodedata.normalize("NFKC", folded.casefold())
    return " ".join(folded.split())


def fault(name: str) -> str | None:
    """Say what keeps a tidy name from being used, or give nothing."""
    if not any(_category(letter) not in "CZM" for letter in name):
        return "Give a name with at least one letter, number or sign that can be seen."
    if any(_unreadable(letter) for letter in name):
        return "This name has signs that cannot be shown. Type it anew."
    if len(name) > LONGEST or len(key(name)) > LONGEST_KEY:
        return f"That name is too long: {LONGEST} characters at most."
    return None


def _category(letter: str) -> str:
    return unicodedata.category(letter)[0]


def _unreadable(letter: str) -> bool:
    return letter == "\ufffd" or (_category(letter) == "C" and letter not in JOINERS)
