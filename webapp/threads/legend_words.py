"""Words of the trade by which a legend names its columns, its stitches and its kinds of thread. Pure."""

import re

COLUMNS: dict[str, tuple[str, ...]] = {
    "symbol": ("symbol", "symbols", "sym", "sign", "mark", "icon", "char"),
    "thread": (
        *("thread", "threads", "name", "names", "thread name", "colour name", "color name", "description"),
        *("colour", "color", "shade", "number", "no", "nr", "code", "thread number", "floss", "yarn", "silk"),
    ),
    "instead": ("instead", "substitute", "substitutes", "sub", "used instead", "alternative", "swap"),
    "colour": ("swatch", "hex", "rgb"),
    "kind": ("kind", "type", "fibre", "fiber", "material"),
    "strands": ("strands", "strand", "ply", "str", "no of strands", "number of strands"),
    "lots": ("lot", "lots", "dye lot", "dye lots", "dyelot", "batch"),
    "full": (
        *("full", "crosses", "cross", "full crosses", "full cross", "full stitches", "stitches", "sts", "st"),
        *("cross stitches", "cross stitch", "stitch count", "count", "number of stitches", "no of stitches"),
        *("total", "total stitches", "full stitch", "whole stitches", "whole"),
    ),
    "half": ("half", "halves", "half stitches", "half stitch", "half crosses", "half cross", "1/2", "½"),
    "quarter": ("quarter", "quarters", "quarter stitches", "quarter stitch", "1/4", "¼"),
    "three_quarter": (
        *("three quarter", "three quarters", "three quarter stitches", "three quarter stitch", "3/4", "¾"),
        *("threequarter",),
    ),
    "back": ("back", "backstitch", "back stitch", "backstitches", "back stitches", "outline", "bs"),
    "knots": ("knots", "knot", "french knots", "french knot", "fk"),
    "beads": ("beads", "bead"),
    "method": ("method", "worked"),
    "scatter": ("scatter", "lie", "lying"),
    "patches": ("patches", "patch"),
    "working": ("working length", "working length mm", "working"),
    "note": ("note", "notes", "remark", "remarks", "comment", "comments"),
}
MEANS = {word: field for field, words in COLUMNS.items() for word in words}
TOTAL = re.compile(r"(?:grand )?(?:totals?|sum|altogether|in all)(?: (?:stitches|crosses))?")

# By what is in a thread's name; the first that is found.
_KINDS = (
    ("filament", r"filament"),
    ("beads", r"beads?"),
    ("metallic", r"metallics?|lam[eé]"),
    ("satin", r"satin|rayon"),
    ("silk", r"silk"),
    ("wool", r"wool"),
    ("hand-dyed", r"hand[- ]?dyed|variegated|overdyed|hand[- ]?painted"),
)
KIND_WORDS = [(kind, re.compile(rf"\b(?:{words})\b", re.IGNORECASE)) for kind, words in _KINDS]

_STITCHES = {
    "three_quarter": r"(?:three[- ]?quarters?|3/4|¾)(?: ?stitch(?:es)?)?",
    "quarter": r"(?:quarters?|1/4|¼)(?: ?stitch(?:es)?)?",
    "half": r"(?:half|halves|1/2|½)(?: ?cross(?:es)?)?(?: ?stitch(?:es)?)?",
    "back": r"back ?stitch(?:es)?|back|bs",
    "knots": r"(?:french )?knots?",
    "beads": r"beads?",
    "full": (
        r"(?:full|whole)(?: ?cross(?:es)?)?(?: ?stitch(?:es)?)?"
        r"|cross(?:es)?(?: ?stitch(?:es)?)?|stitch(?:es)?|sts?"
    ),
}
NUMBER = r"(?<![\w.,#])[0-9]+(?:[,.'’ \u00a0\u202f\u2009][0-9]{3})*[¼½¾]?"
_END = r"(?![\w/])\.?"
FOUND = {  # "30 half", and for those that no thread is called after also "half: 30"
    field: re.compile(
        rf"(?P<before>{NUMBER})[ \u00a0]?(?:x )?(?:{words}){_END}"
        rf"|\b(?:{words})[ \u00a0]?[:=][ \u00a0]?(?P<after>{NUMBER})(?![\w/])",
        re.IGNORECASE,
    )
    for field, words in _STITCHES.items()
}
IN_WORDS = {"one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6"}
STRANDS = re.compile(
    rf"(?P<before>[0-9]{{1,2}}(?: ?\+ ?[0-9]{{1,2}}){{0,5}}|\b(?:{'|'.join(IN_WORDS)}))"
    rf"[ \u00a0]?(?:x )?(?:strands?|ply|str){_END}"
    r"(?P<each> (?:of )?each)?"
    r"|\bstrands?[ \u00a0]?[:=]?[ \u00a0]?(?P<after>[0-9]{1,2}(?: ?\+ ?[0-9]{1,2}){0,5})(?![\w/])",
    re.IGNORECASE,
)
SKEINS = re.compile(r"(?<![\w.,])[0-9]+[¼½¾]? ?(?:skeins?|spools?|packs?)\b", re.IGNORECASE)
SWATCH = re.compile(r"#[0-9a-fA-F]{6}\b")


def column(name: str) -> str | None:
    """Tell which of our fields a column of that name is; None where it is none of them."""
    return MEANS.get(" ".join(re.sub(r"[.:()*#_\-]", " ", name).lower().split()))


def kind_in(name: str) -> str | None:
    """Tell what kind a thread's name says it is."""
    return next((kind for kind, words in KIND_WORDS if words.search(name)), None)


def is_total(cell: str) -> bool:
    """Tell whether a line adds the others up."""
    return TOTAL.fullmatch(" ".join(re.sub(r"[:=.]", " ", cell).lower().split())) is not None
