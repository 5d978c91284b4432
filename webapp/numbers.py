"""Numbers as they are read: thousands apart, everywhere alike. Pure."""


def number(value: float) -> str:
    """Write a whole number: 4,992; any other is rounded to one."""
    return f"{round(value):,}"


def counted(value: int, one: str, many: str) -> str:
    """Write a number with what it counts: "1 row", "4,992 stitches"."""
    return f"{number(value)} {one if value == 1 else many}"
