"""A legend of forty threads, as an invented pattern might print it."""

from webapp.cloth.slip_threads import Part, Thread

SYMBOLS = "●○▲△■□◆◇★☆♥♦♣♠◐◑◒◓▼▽ABCDEFGHKLMNPRSTUXYZ"
COLOURS = ("Madder", "Weld", "Indigo", "Walnut", "Moss", "Oak gall", "Rose hip", "Heather")
SHADES = ("dark", "mid", "light", "very light", "pale")


def forty() -> tuple[Thread, ...]:
    names = [f"{1000 + 37 * n} {COLOURS[n % 8]} {SHADES[n % 5]}" for n in range(40)]
    kinds = ["silk" if n % 9 == 8 else "cotton" for n in range(40)]
    return tuple(
        Thread(SYMBOLS[n], (Part(names[n], kinds[n], 2),), full=(n * 137) % 900 + 20, back=n % 3 * 40)
        for n in range(40)
    )
