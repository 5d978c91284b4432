"""One line of a legend as patterns print it: which words are symbol, thread, strands and stitches. Pure.

What is told by its own words ("2 strands", "30 half") is taken out first; of what is left the first short
sign is the symbol, the words are the thread, and the numbers after them strands and full stitches. Where no
words are, a number that can be neither is the thread's.
"""

import re
from collections.abc import Sequence

from webapp.threads.legend_words import FOUND, IN_WORDS, SKEINS, STRANDS, SWATCH, is_total

Typed = dict[str, str]
FEW = 6  # strands that a number alone may mean
MEANT = re.compile(
    r"[=+\-]?[0-9][0-9OoIlB.,'’]*[¼½¾]?(?: ?x)?"
)  # a number, were it not for a slip of the pen
SUMS = re.compile(r"[0-9]{1,2}(?: ?\+ ?[0-9]{1,2})+")
CODED = re.compile(r"(\S|[^\w\s]{2,3}) ([0-9]+)")  # a symbol, and a thread that is called by a number
EMPTIED = re.compile(r"\([\s,;]*\)|\[[\s,;]*\]")  # brackets round what was taken out
APART = re.compile(r"\t+| {2,}|\u2003+|, (?=[0-9=])")
GAP = "\t"
NOTHING = ("-", "–", "—", "n/a", "?")
DROSS = re.compile(r"^(?:[ ,;:]+|[-–—] +)+|(?:[ ,;:]+| +[-–—])+$")  # what parted the cells


def cells_of(line: str) -> list[str]:
    """Part a printed line where its columns are apart: by tabs, by spaces, or before a number."""
    return [cell.strip() for cell in APART.split(line.strip())]


def by_words(cells: Sequence[str], *, loose: bool) -> Typed:
    """Read cells that no column names.

    loose: the cells are parted by spaces alone, so that one of them may hold several things. What is not
    understood comes back as "rest".
    """
    typed: Typed = {}
    left = [_told(cell, typed) for cell in cells]
    words = [word for cell in left for word in (cell.split(GAP) if GAP in cell else [cell])]
    words = [DROSS.sub("", word) if n and len(word) > 1 else word.strip() for n, word in enumerate(words)]
    if loose:
        words = [word for word in words if word]
    words = [word for word in _symbol(words, typed, loose) if word and word.lower() not in NOTHING]
    if loose:
        words = [part for word in _peel(words, typed) for part in _coded(word, typed)]
    named, numbers = _named(words)
    if not named and _has_code(numbers, typed):
        named, numbers = numbers[:1], numbers[1:]
    if named:
        typed["thread"] = " ".join(named)
    _numbers(numbers, typed)
    return {name: text for name, text in typed.items() if text}


def _told(cell: str, typed: Typed) -> str:
    """Take out of a cell what its own words tell, and leave a gap there."""

    def take(name: str, text: str) -> str:
        typed[name if name not in typed else "rest"] = text.strip()
        return GAP

    cell = SWATCH.sub(lambda m: take("colour", m[0]), cell)
    cell = SKEINS.sub(GAP, cell)
    cell = STRANDS.sub(lambda m: take("strands", _strands(m)), cell)
    if is_total(cell.split(GAP)[0]):
        return cell
    for name, pattern in FOUND.items():
        cell = pattern.sub(lambda m, name=name: take(name, m["before"] or m["after"]), cell)  # type: ignore[misc]
    return EMPTIED.sub(GAP, cell)


def _strands(found: re.Match[str]) -> str:
    many = found["before"] or found["after"]
    return IN_WORDS.get(many.lower(), many) + (" each" if found["each"] else "")


def _symbol(words: list[str], typed: Typed, loose: bool) -> list[str]:
    """Take the symbol off the front, if there is one."""
    if not words or (not words[0] and loose):
        return words
    first, rest = words[0], words[1:]
    numbers = [word for word in rest if word and word.lower() not in NOTHING]
    if _is_sign(first) and (any(_is_name(word) for word in rest) or _has_code(numbers, typed)):
        typed["symbol"] = _sign(first)
        return rest
    if not first:
        return rest
    sign, _, more = first.partition(" ")
    if loose and more and (len(sign) == 1 or (len(sign) <= 3 and not sign.isalnum())) and _is_name(more):
        typed["symbol"] = _sign(sign)
        return [DROSS.sub("", more), *rest]
    return words


def _sign(word: str) -> str:
    return word.removesuffix(":") or word


def _coded(word: str, typed: Typed) -> list[str]:
    """Part a symbol from the number that a thread is called by."""
    found = None if "symbol" in typed else CODED.fullmatch(word)
    if found:
        typed["symbol"] = found[1]
    return [found[2]] if found else [word]


def _has_code(numbers: list[str], typed: Typed) -> bool:
    """Tell whether the first of numbers that no words stand before can only be what a thread is called."""
    if not numbers or not numbers[0].isdecimal() or not all(_is_number(one) for one in numbers):
        return False
    told = ("strands" in typed) + ("full" in typed)
    return len(numbers) + told > 2 or (len(numbers) == 2 and not _is_few(numbers[0])) or "full" in typed


def _is_sign(word: str) -> bool:
    return 0 < len(word) <= 3 and not (word.isdecimal() and len(word) == 3)


def _is_name(word: str) -> bool:
    return any(one.isalpha() for one in word)


def _peel(words: list[str], typed: Typed) -> list[str]:
    """Part numbers from the end of a name: stitches, before them strands; where nothing else tells them."""
    if any(_is_number(word) for word in words) or "full" in typed or not words:
        return words
    told = words[-1].split(" ")
    many = 0
    while many < min(len(told) - 1, 3) and _is_number(told[-1 - many]):
        many += 1
    numbers = _together(told[len(told) - many :], "strands" in typed)
    most = 1 if "strands" in typed else 2
    taken = numbers[-most:]
    if len(taken) == 2 and not (_is_few(taken[0]) or SUMS.fullmatch(taken[0])):
        taken = taken[1:]
    name = told[: len(told) - many] + numbers[: len(numbers) - len(taken)]
    return [*words[:-1], " ".join(name), *taken]


def _together(numbers: list[str], told: bool) -> list[str]:
    """Put thousands together that a space parts: "1 240", where it is clear that it is one number."""
    if len(numbers) < 2 or not re.fullmatch("[0-9]{3}", numbers[-1]):
        return numbers
    before = numbers[-2]
    clear = told or not _is_few(before) or (len(numbers) > 2 and _is_few(numbers[-3]))
    if re.fullmatch("[1-9][0-9]?", before) and clear:  # no colour has a hundred thousand stitches
        return [*numbers[:-2], f"{before} {numbers[-1]}"]
    return numbers


def _is_few(text: str) -> bool:
    return text.isdecimal() and 1 <= int(text) <= FEW


def _is_number(word: str) -> bool:
    return bool(MEANT.fullmatch(word) or SUMS.fullmatch(word) or re.fullmatch("[1-9][0-9]? [0-9]{3}", word))


def _named(words: list[str]) -> tuple[list[str], list[str]]:
    """Tell the words of the name from the numbers after them; a number before them is the thread's own."""
    last = max((n for n, word in enumerate(words) if not _is_number(word)), default=-1)
    return words[: last + 1], words[last + 1 :]


def _numbers(numbers: list[str], typed: Typed) -> None:
    """Understand the numbers after a name: strands first, if more than one or joined; then full stitches."""
    numbers = list(numbers)
    if numbers and "strands" not in typed and (SUMS.fullmatch(numbers[0]) or (len(numbers) > 1)):
        typed["strands"] = numbers.pop(0)
    if numbers and "full" not in typed:
        typed["full"] = numbers.pop(0)
    if numbers:
        typed["rest"] = " ".join([*([typed["rest"]] if "rest" in typed else []), *numbers])
