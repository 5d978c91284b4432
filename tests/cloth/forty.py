"""A legend of forty threads, as an invented pattern might print it."""

from webapp.threads.legend import Line, Part

SYMBOLS = "●○▲△■□◆◇★☆♥♦♣♠◐◑◒◓▼▽ABCDEFGHKLMNPRSTUXYZ"
COLOURS = ("Madder", "Weld", "Indigo", "Walnut", "Moss", "Oak gall", "Rose hip", "Heather")
SHADES = ("dark", "mid", "light", "very light", "pale")


def forty() -> tuple[Line, ...]:
    names = [f"{1000 + 37 * n} {COLOURS[n % 8]} {SHADES[n % 5]}" for n in range(40)]
    kinds = ["silk" if n % 9 == 8 else "cotton" for n in range(40)]
    return tuple(
        Line((Part(names[n], kinds[n], 2),), SYMBOLS[n], full=(n * 137) % 900 + 20, back=n % 3 * 40)
        for n in range(40)
    )
