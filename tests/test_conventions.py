"""What a reader may rely on everywhere: sizes, arrows that run one way, nothing in line, one clock."""

import ast
import hashlib
import re
from pathlib import Path

import pytest

from webapp.joined import small

ROOT = Path(__file__).parent.parent
WEBAPP, TEMPLATES, STATIC, TESTS = (ROOT / name for name in ("webapp", "templates", "static", "tests"))

PYTHON = sorted(p for top in (WEBAPP, TESTS) for p in top.rglob("*.py") if "versions" not in p.parts)
SCRIPTS = sorted(p for p in STATIC.rglob("*.js") if "vendor" not in p.parts)
PAGES = sorted(TEMPLATES.rglob("*.html"))
MODULES = {".".join(p.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__"): p for p in PYTHON}
OURS = {name for name in MODULES if name.startswith("webapp")}

# Rules of the trade and other plain arithmetic: they must stay as they are, whatever is built around them.
SUBJECTS = {
    "journal": ["fold", "keys", "order", "whole", "moments", "sittings", "quarters"],
    "cloth": [
        *("gauge", "naming", "answer", "typed", "words", "saying", "meant"),
        *("bounds", "sizing", "margins", "packing", "advice", "lengths"),
        *("reads", "piece", "piece_drawing", "classroom"),
        *("size_asking", "size_answer", "size_saying", "size_figures", "drawing"),
        *("slip_text", "slip_saying", "slip_asking", "slip_code"),
        *("slip_threads", "slip_rows", "class_threads"),
    ],
    "threads": [
        *("bounds", "geometry", "estimate", "own", "kinds"),
        *("quick", "quick_saying", "in_words"),
        *("legend", "legend_words", "legend_separators", "legend_lines", "legend_table", "legend_text"),
        *("legend_reads", "legend_csv", "legend_forms", "legend_preview", "legend_needs"),
        *("legend_saying", "legend_figures", "reading_reads", "reading_saying"),
        *("needed", "sheet", "bag", "finishing"),
        *("called", "amounts", "shopping", "shopping_words", "lasting", "reach_words"),
    ],
    "hours": [
        *("split", "week", "wall", "figures", "bars", "words"),
        *("amends", "charts", "months", "nights", "pace", "sheets", "kinds", "growth"),
    ],
    "projects": ["progress", "woven"],
    "stitching": ["place"],
    "reminders": ["base64url", "bedtime", "calendar", "endpoints", "schedule", "wording"],
    "accounts": ["names", "passphrases", "returning", "throttle", "zones", "devices"],
}
OUTSIDE = {"flask", "werkzeug", "sqlalchemy", "flask_sqlalchemy", "alembic", "marshmallow", "gunicorn"}
WORLD = {f"webapp.{name}" for name in ("db", "clock", "config", "house", "ids", "forms", "errors")}


def named(paths):
    return [pytest.param(path, id=str(path.relative_to(ROOT))) for path in paths]


def imported(path):
    """Name every module a file imports, those within functions too."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            whole = {f"{node.module}.{alias.name}" for alias in node.names}
            found |= (whole & OURS) or {node.module}
    return found


def reached(name):
    """Name every module of ours that one comes to, itself included, and all that these import."""
    seen, everything, todo = set(), set(), [name]
    while todo:
        if (one := todo.pop()) not in seen:
            seen.add(one)
            everything |= imported(MODULES[one])
            todo += everything & OURS - seen
    return everything


def is_view(name):
    return name.rsplit(".", 1)[-1].endswith("views")


def code_of(path):
    """Read a script without its comments."""
    return small(path.read_text(), "application/javascript")


# Sizes


@pytest.mark.parametrize("path", named(PYTHON))
def test_a_python_file_can_be_read_at_one_go(path):
    most = 300 if TESTS in path.parents else 250
    assert len(path.read_text().splitlines()) <= most


@pytest.mark.parametrize("path", named(p for p in PYTHON if WEBAPP in p.parents))
def test_a_function_can_be_seen_at_one_glance(path):
    functions = [n for n in ast.walk(ast.parse(path.read_text())) if isinstance(n, ast.FunctionDef)]
    assert [f.name for f in functions if f.end_lineno - f.lineno >= 40] == []


@pytest.mark.parametrize("path", named(SCRIPTS))
def test_a_script_is_short(path):
    assert len(path.read_text().splitlines()) <= 130


@pytest.mark.parametrize("path", named(PAGES))
def test_a_template_is_short(path):
    assert len(path.read_text().splitlines()) <= 80


# Arrows


@pytest.mark.parametrize(
    "name", [f"webapp.{feature}.{one}" for feature in SUBJECTS for one in SUBJECTS[feature]]
)
def test_a_subject_is_pure(name):
    everything = reached(name)
    assert {name.split(".")[0] for name in everything} & OUTSIDE == set()
    assert everything & WORLD == set()


@pytest.mark.parametrize("name", sorted(name for name in OURS if name.endswith(".models")))
def test_models_know_the_database_and_each_other_alone(name):
    ours = imported(MODULES[name]) & OURS
    assert [one for one in ours if one != "webapp.db" and not one.endswith(".models")] == []


@pytest.mark.parametrize("name", sorted(OURS))
def test_nothing_leans_on_a_view_but_the_wiring(name):
    if name != "webapp" and not is_view(name):
        assert [one for one in imported(MODULES[name]) if is_view(one)] == []


@pytest.mark.parametrize("name", sorted(OURS))
def test_schemas_stand_at_the_boundary_alone(name):
    stands_there = is_view(name) or name.endswith(("schemas", ".forms", ".asking"))
    if "marshmallow" in imported(MODULES[name]):
        assert stands_there


@pytest.mark.parametrize("name", sorted(OURS - {"webapp.clock"}))
def test_there_is_one_clock(name):
    told = re.findall(r"datetime\.now\(|utcnow\(|date\.today\(|\btime\.time\(", MODULES[name].read_text())
    assert told == []


# Templates


@pytest.mark.parametrize("path", named(PAGES))
def test_a_template_has_nothing_in_line(path):
    """So it must be under the policy of ``webapp/headers.py``."""
    page = path.read_text()
    tags = re.findall(r"<[a-z][^>]*>", page)
    assert [tag for tag in tags if re.search(r"\s(style|on\w+|hx-on\S*)\s*=", tag) or "js:" in tag] == []
    scripts = [tag for tag in tags if tag.startswith("<script")]
    assert [tag for tag in scripts if " src=" not in tag and "application/json" not in tag] == []
    assert "<style" not in page


@pytest.mark.parametrize("path", named(PAGES))
def test_a_template_escapes_what_it_shows(path):
    assert re.findall(r"\|\s*safe\b|autoescape", path.read_text()) == []


@pytest.mark.parametrize("path", named(PAGES))
def test_what_htmx_does_can_be_done_without_it(path):
    tags = re.findall(r"<(?:a|form|button)\b[^>]*\bhx-(?:get|post)=[^>]*>", path.read_text())
    assert [tag for tag in tags if not re.search(r"\s(href|action|formaction)=", tag)] == []


# Scripts


@pytest.mark.parametrize("path", named(SCRIPTS))
def test_a_script_makes_no_markup_out_of_text(path):
    sinks = r"innerHTML|outerHTML|insertAdjacentHTML|document\.write|setHTML|\beval\(|new Function"
    assert re.findall(sinks, code_of(path)) == []


@pytest.mark.parametrize("path", named(SCRIPTS))
def test_a_script_imports_its_neighbours_by_their_paths(path):
    statement = r"""\b(?:import|export)\b[\w{},*$\s]*?(?:\bfrom\s*)?\(?\s*["']([^"']+)["']"""
    for name in re.findall(statement, code_of(path)):
        assert name.startswith("."), name
        assert (path.parent / name).is_file(), name


@pytest.mark.parametrize("path", named(SCRIPTS))
def test_what_a_script_exports_is_said_in_a_sentence(path):
    lines = path.read_text().splitlines()
    declaration = re.compile(r"export (async )?(function|class|const (?![A-Z_]+\b))")
    declared = [n for n, line in enumerate(lines) if declaration.match(line)]
    assert [lines[n] for n in declared if not n or not lines[n - 1].rstrip().endswith("*/")] == []


@pytest.mark.parametrize("path", named(p for p in SCRIPTS if p.name != "app.js"))
def test_only_the_entry_makes_policies_and_globals(path):
    assert re.findall(r"createPolicy|\bwindow\.\w+\s*=[^=]|globalThis\.\w+\s*=[^=]", code_of(path)) == []


# What comes from elsewhere


def test_what_is_vendored_is_what_was_taken():
    for line in (STATIC / "vendor" / "SHA256SUMS").read_text().splitlines():
        digest, name = line.split()
        assert hashlib.sha256((STATIC / "vendor" / name.lstrip("*")).read_bytes()).hexdigest() == digest


@pytest.mark.parametrize("path", named([*SCRIPTS, *PAGES, *sorted(STATIC.rglob("*.css"))]))
def test_nothing_is_fetched_from_elsewhere(path):
    addresses = re.findall(r"https?://[^\s\"')]+", path.read_text())
    assert [one for one in addresses if not one.startswith("http://www.w3.org/")] == []
