"""Scripts that start together are sent together: modules joined into their entry as it is served.

The modules in ``static/js`` stay small and run as they are; joined, the counter's first load is a third
lighter on the wire. An entry holds each of its modules in a function of its own, in the order in which
they need each other, so that no name meets another. A module that was joined into an entry is, at its own
address, a few words that pass on what the entry holds: whoever imports it later gets the same one.

What a module may say is kept simple, and said here if it is not: ``import { a, b as c } from "./x.js"``,
``import "./x.js"``, ``import("./x.js")``, ``export const``, ``export function``, ``export class``.
"""

import posixpath
import re
from functools import cache

from webapp.places import STATIC

# What is joined into each entry, beside what it imports; and which entries' modules it leaves to them.
ENTRIES: dict[str, tuple[tuple[str, ...], str | None]] = {
    "js/app.js": (
        ("js/journal/phone.js", "js/pwa/register.js", "js/reminders/island.js", "js/stitching/island.js"),
        None,
    ),
    "js/cloth/island.js": ((), "js/app.js"),
    "js/threads/shopping_page.js": ((), "js/app.js"),
    "js/cloth/ruler.js": ((), None),
    "js/cloth/size.js": ((), None),
    "js/cloth/slip.js": ((), None),
    "js/cloth/piece_page.js": ((), None),
    "js/cloth/class_page.js": ((), None),
    "js/threads/quick_page.js": ((), None),
    "js/hours/hours.js": ((), None),
    "js/pwa/wake.js": ((), None),  # for the worker, which has no page: nothing in it may be shared with one
}
_IMPORT = re.compile(r"""(?:^|(?<=[;}\n]))import\s*(?:\{([^}]*)\}\s*from\s*)?"([^"]+)";?""")
_DYNAMIC = re.compile(r"""\bimport\(\s*"([^"]+)"\s*\)""")
_EXPORT = re.compile(r"(?:^|(?<=[;}\n]))export\s+((?:async\s+)?function\*?|class|const)\s+(\w+)")
_OTHER = re.compile(
    r"(?:^|(?<=[;}\n]))(?:export\b(?!\s+(?:async\s+)?(?:function|class|const)\b)|import\s*[*\w])|\bimport\.meta"
)


class NotJoinable(ValueError):
    """A module says something that cannot be joined; the message names it."""


@cache
def lean(path: str) -> str:
    """Read a script of our own, made small: no comments, short names."""
    return small((STATIC / path).read_text(), "application/javascript")


def small(text: str, kind: str) -> str:
    """Make a script or style sheet small.

    The library is loaded only here, in the process that answers: it cannot be carried over a fork.
    """
    import minify

    made: str = minify.string(kind, text)
    return made


def beside(path: str, name: str) -> str:
    """Resolve what a module at ``path`` calls ``name``."""
    return posixpath.normpath(posixpath.join(posixpath.dirname(path), name))


@cache
def needed(path: str) -> tuple[str, ...]:
    """List what a module needs before it runs, each after what it needs itself, and last the module."""
    found: dict[str, None] = {}
    for _names, name in _IMPORT.findall(lean(path)):
        found |= dict.fromkeys(needed(beside(path, name)))
    return (*found, path)


@cache
def members(entry: str) -> tuple[str, ...]:
    """List the modules that an entry holds."""
    beside_it, base = ENTRIES[entry]
    held: dict[str, None] = {}
    for path in (*beside_it, entry):
        held |= dict.fromkeys(needed(path))
    elsewhere = set(members(base)) if base else set()
    return tuple(path for path in held if path not in elsewhere)


@cache
def holder(path: str) -> str | None:
    """Tell which entry a page finds a module in, if it is not the entry itself."""
    entries = [e for e in ENTRIES if e != "js/pwa/wake.js" and e != path and path in members(e)]
    return entries[0] if entries else None


def place(entry: str, path: str) -> int:
    """Tell where among an entry's modules one stands."""
    return members(entry).index(path)


def _base(entry: str) -> str:
    return ENTRIES[entry][1] or entry


def exports(path: str) -> list[str]:
    """List what a module exports."""
    return [name for _kind, name in _EXPORT.findall(lean(path))]


def script(path: str) -> str:
    """Give a script of our own as it is sent."""
    if path in ENTRIES:
        return _entry(path)
    entry = holder(path)
    if entry is None:
        return lean(path)
    names = ",".join(exports(path))
    return f'import{{$held}}from"{_from(path, entry)}";export const{{{names}}}=$held[{place(entry, path)}];'


def _entry(entry: str) -> str:
    base = ENTRIES[entry][1]
    held = members(entry)
    start = f'import{{$held as $base}}from"{_from(entry, base)}";' if base else ""
    bodies = "".join(_module(entry, path, set(held)) for path in held)
    own = exports(entry)
    end = f"export const{{{','.join(own)}}}=$held[{place(entry, entry)}];" if own else ""
    return small(f"{start}export const $held=[];{bodies}{end}", "application/javascript")


def _module(entry: str, path: str, held: set[str]) -> str:
    text = lean(path)
    if _OTHER.search(text):
        raise NotJoinable(f"{path} imports or exports in a way that cannot be joined; see webapp/joined.py")
    text = _IMPORT.sub(lambda found: _given(entry, path, found, held), text)
    text = _DYNAMIC.sub(lambda found: _later(entry, path, found.group(1), held), text)
    text = _EXPORT.sub(r"\1 \2", text)
    return f"$held[{place(entry, path)}]=(()=>{{{text}\nreturn{{{','.join(exports(path))}}}}})();\n"


def _given(entry: str, path: str, found: re.Match[str], held: set[str]) -> str:
    if found.group(1) is None:
        return ""
    wanted = beside(path, found.group(2))
    names = re.sub(r"\s+as\s+", ":", found.group(1).strip())
    where = f"$held[{place(entry, wanted)}]" if wanted in held else f"$base[{place(_base(entry), wanted)}]"
    return f"const{{{names}}}={where};"


def _later(entry: str, path: str, name: str, held: set[str]) -> str:
    wanted = beside(path, name)
    if wanted in held:
        return f"Promise.resolve().then(()=>$held[{place(entry, wanted)}])"
    return f'import("{_from(entry, wanted)}")'


def _from(path: str, wanted: str | None) -> str:
    relative = posixpath.relpath(wanted or "", posixpath.dirname(path))
    return relative if relative.startswith(".") else f"./{relative}"
