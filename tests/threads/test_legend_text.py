"""A pasted or uploaded legend: what is understood of it, whatever its shape."""

import pytest

from tests.threads.understood import BLEND, MADDER, understood
from webapp.threads.legend_text import rows


@pytest.mark.parametrize(
    "text",
    [
        "X  Madder dark  2 strands  1,240\no  Walnut + Silver filament  1 + 1 strands  310",
        "X Madder dark 2 strands 1,240\no Walnut + Silver filament 1 + 1 strands 310",
        "X Madder dark, 2 strands, 1 240\no Walnut + Silver filament, 1+1 strands, 310",
        "X  Madder dark  Two strands  1,240\no  Walnut + Silver filament  one strand of each  310",
        "X Madder dark 2 1 240\no Walnut + Silver filament 1+1 310",
        "X  Madder dark  2 strands  1,240 sts\no  Walnut + Silver filament  1 strand of each  310 stitches",
        "X;Madder dark;2;1.240\no;Walnut + Silver filament;1 + 1;310",
        "X\tMadder dark\t2\t1,240\no\tWalnut + Silver filament\t1+1\t310\n\n",
        'X,Madder dark,2,"1,240"\no,Walnut + Silver filament,1 + 1,310',
        "X, Madder dark, 2, 1240\r\no, Walnut + Silver filament, 1+1, 310\r\n",
        "Symbol,Thread,Strands,Stitches\nX,Madder dark,2,1,240\no,Walnut + Silver filament,1 + 1,310",
        "Name;Sign;Full;Ply\nMadder dark;X;1'240;2\nWalnut + Silver filament;o;310;1 + 1\nTotal;;1550;",
        "Sym  Colour  Strands  Count\nX  Madder dark  2  1,240\no  Walnut + Silver filament  1+1  310",
        'sign\tcolour name\tstitches\tply\nX\t"Madder\ndark"\t1,240\t2\no\tWalnut + Silver filament\t310\t2',
        "\ufeffX;Madder dark;2;1240 \no;Walnut + Silver filament;1 + 1;310 x",
    ],
)
def test_one_legend_is_understood_in_many_shapes(text):
    assert understood(text) == [MADDER, BLEND]


def test_every_kind_of_stitch_has_its_column():
    head = "symbol;name;strands;full;½;1/4;three quarter;backstitch;french knots;beads"
    line = "%;Weld;2;12;3;4;5;35½;7;9"
    counts = {"full": 12, "half": 3, "quarter": 4, "three_quarter": 5, "back": 36, "knots": 7, "beads": 9}
    assert understood(f"{head}\n{line}") == [("%", "Weld", [2], counts)]


def test_every_kind_of_stitch_is_told_by_its_word_too():
    line = "% Weld 2 strands, 1,012 full, 3 half, 4 quarter, 5 three-quarter, backstitch: 35, 7 French knots"
    counts = {"full": 1012, "half": 3, "quarter": 4, "three_quarter": 5, "back": 35, "knots": 7}
    assert understood(line) == [("%", "Weld", [2], counts)]


@pytest.mark.parametrize(
    ("line", "symbol", "name"),
    [
        ("= Madder 2 120", "=", "Madder"),
        ("+ Madder 2 120", "+", "Madder"),
        ("- Madder 2 120", "-", "Madder"),
        ("@ Madder 2 120", "@", "Madder"),
        ("7 Madder 2 120", "7", "Madder"),
        ("♥ Madder 2 120", "♥", "Madder"),
        ("Madder 2 120", "", "Madder"),
        ("A Rose of the 5th hour 2 120", "A", "Rose of the 5th hour"),
        ("Y 8127 Rust brown 2 120", "Y", "8127 Rust brown"),
    ],
)
def test_the_first_short_sign_is_the_symbol(line, symbol, name):
    assert understood(line) == [(symbol, name, [2], {"full": 120})]


def test_the_number_of_a_thread_stays_with_its_name():
    text = "X;8127;Rust brown;2;120\no;9;Sea;2;60"
    assert understood(text) == [
        ("X", "8127 Rust brown", [2], {"full": 120}),
        ("o", "9 Sea", [2], {"full": 60}),
    ]


@pytest.mark.parametrize(
    "text",
    [
        "X 310 2 1240\no 321 2 860",
        "X  310  2  1240\no  321  2  860",
        "X\t310\t2\t1240\no\t321\t2\t860",
        "X,310,2,1240\no,321,2,860",
        "X 310 2 strands 1240\no 321 2 strands 860",
        "X 310, 2 strands, 1,240\no 321, 2 strands, 860",
        "Symbol Number Strands Stitches\nX 310 2 1240\no 321 2 860",
    ],
)
def test_a_thread_may_be_called_by_a_number_alone(text):
    assert understood(text) == [("X", "310", [2], {"full": 1240}), ("o", "321", [2], {"full": 860})]


def test_numbers_alone_are_threads_with_strands_and_stitches_or_with_stitches_or_alone():
    assert understood("310 2 1240\n321 1 860") == [
        *(("", "310", [2], {"full": 1240}), ("", "321", [1], {"full": 860})),
    ]
    assert understood("310 1240\n321 860") == [
        *(("", "310", [2], {"full": 1240}), ("", "321", [2], {"full": 860})),
    ]
    assert understood("310\n3865") == [("", "310", [2], {}), ("", "3865", [2], {})]


@pytest.mark.parametrize("line", ["o Red 321 2 860", "o Red 321 860"])
def test_a_number_in_a_name_and_strands_never_make_thousands_with_the_stitches(line):
    assert understood(line) == [("o", "Red 321", [2], {"full": 860})]


@pytest.mark.parametrize(
    "line",
    [
        *("X - Madder dark - 2 strands - 1240", "X Madder dark (2 strands) 1240", "X: Madder dark 2 1240"),
        *("X  Madder dark  [2 strands]  1240", "X: Madder dark, 2 strands, 1,240"),
    ],
)
def test_what_only_parts_the_words_is_part_of_none(line):
    assert understood(line) == [MADDER]


def test_stitches_below_a_heading_are_of_that_kind():
    text = "Cross stitch\nX Madder dark 2 1240\n\nBackstitch\n/ Madder dark 1 40\nFrench knots\n* Weld 1 7"
    assert understood(text) == [
        MADDER,
        ("/", "Madder dark", [1], {"back": 40}),
        ("*", "Weld", [1], {"knots": 7}),
    ]
    assert rows(text).left_out == ["Titles: Cross stitch", "Titles: Backstitch", "Titles: French knots"]


@pytest.mark.parametrize("end", ["\r", "\r\n", "\n"])
@pytest.mark.parametrize("line", ["X  Madder dark  2  1240", "X;Madder dark;2;1240"])
def test_lines_end_as_any_machine_ends_them(line, end):
    assert understood(end.join([line, line, ""])) == [MADDER, MADDER]


def test_a_first_line_may_say_the_separator_and_is_no_thread():
    text = "sep=;\r\nsymbol;thread;strands;full\r\nX;Madder dark;2;1240\r\n"
    assert understood(text) == [MADDER]
    assert rows(text).rows[0].number == 3
    assert understood('"sep=|"\nX|Madder dark|2|1240\n') == [MADDER]


def test_strands_alone_are_strands_where_no_line_has_more():
    assert understood("X Madder 2\no Weld 3") == [("X", "Madder", [2], {}), ("o", "Weld", [3], {})]
    assert understood("X Madder 2\no Weld 30")[0] == ("X", "Madder", [2], {"full": 2})


def test_names_alone_make_a_legend():
    assert [name for _sign, name, _strands, _counts in understood("Thread\nMadder\nWeld, light\nWoad")] == [
        *("Madder", "Weld, light", "Woad"),
    ]


def test_titles_totals_and_unknown_columns_are_left_out_and_said():
    given = rows("Symbol;Thread;Skeins;Full\nX;Madder;3;120\n;Total;;120")
    assert given.left_out == ["Titles: Symbol Thread Skeins Full", "Column: Skeins", "Total: Total 120"]
    assert len(given.rows) == 1
    assert rows("Symbol Thread Strands Stitches\nX Madder 2 120\nTotal stitches: 120").left_out == [
        *("Titles: Symbol Thread Strands Stitches", "Total: Total stitches: 120"),
    ]


def test_skeins_that_are_printed_are_no_stitches():
    assert understood("X Madder 2 strands 3 skeins 1,240") == [("X", "Madder", [2], {"full": 1240})]


@pytest.mark.parametrize(
    "cell", ["=1+1", "=HYPERLINK(1)", "+120", "-5", "@SUM(1)", "1.24", "12,5", "many", "0,240"]
)
def test_a_cell_that_is_no_number_is_text_and_asked_about(cell):
    ((errors,),) = [understood(f'symbol;thread;full\nX;Madder;"{cell}"')]
    assert errors == {"full": ["Write full stitches in whole numbers, like 1,240."]}


def test_a_formula_in_a_name_is_a_name():
    assert understood('symbol,thread,full\n=,"=2+5+cmd|calc",12')[0][:2] == ("=", "=2+5+cmd|calc")


def test_a_slip_of_the_pen_in_a_number_is_asked_about_and_leaves_the_name_alone():
    (row,) = rows("X Madder 2 1,24O").rows
    assert row.typed == {"symbol": "X", "thread": "Madder", "strands": "2", "full": "1,24O"}


def test_what_is_too_many_for_the_columns_comes_back_as_not_understood():
    (row,) = rows("symbol;thread;full\nX;Madder;120;what;this").rows
    assert row.typed["rest"] == "what this"


def test_a_quote_that_is_never_closed_does_not_swallow_the_rest():
    text = 'symbol,thread,full\nX,"Madder,120\no,Weld,60\n/,Woad,5'
    assert [row.typed["thread"] for row in rows(text).rows] == ["Madder", "Weld", "Woad"]
