"""A legend of forty threads as it is copied off a pattern, six of its lines not as they should be."""

NAMES = (
    *("Madder dark", "Madder", "Madder pale", "Weld", "Weld pale", "Walnut", "Walnut dark", "Oak gall"),
    *("Indigo", "Indigo mid", "Indigo pale", "Woad", "Slate", "Harbour grey", "Lamp black", "Chalk"),
    *("Bracken", "Moss", "Moss dark", "Fern", "Reed", "Sea green", "Tide", "Foam", "Shell", "Sand"),
    *("Rope", "Tar", "Rust", "Copper", "Brass", "Lantern", "Ember", "Ash", "Plum", "Sloe", "Heather", "Rose"),
    *("Cream", "Ink"),
)
SIGNS = "X/\\o+=-@#%&*^~<>?!ABCDEFGHJKLMNPQRSTUVWZ"
FULL = [(n * 137) % 900 + 12 for n in range(len(NAMES))]
LINES = [
    f"{sign}  {name}  {2 if n % 7 else 1} strands  {full:,}"
    for n, (sign, name, full) in enumerate(zip(SIGNS, NAMES, FULL, strict=True))
]
WRONG = {  # line by line from 0: as it came out of the copy, and what has to be typed in which field
    3: (f"o  Weld  2 strands  4O{FULL[3] % 10}", "full"),
    9: ("%  Indigo mid  2 strands", "full"),
    14: (f"~  Lamp black  30 strands  {FULL[14]}", "strands"),
    20: (f"D  2 strands  {FULL[20]}", "thread"),
    27: (f"L  Tar  2 strands  {FULL[27]}l", "full"),
    33: ("S  Ash  2 strands  ?", "full"),
}
TEXT = "\n".join(WRONG[n][0] if n in WRONG else line for n, line in enumerate(LINES))
