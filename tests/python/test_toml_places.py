"""Where values of a TOML document stand: lines and columns counted by hand in each document.

A string stands where its first character does, every other value where it begins.
"""

from __future__ import annotations

import tomllib
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scalepan.toml_places import Path, Places, value_places

CASES: list[tuple[str, str, Any]] = [
    ("an empty document", "", {}),
    ("only comments", "# one\n\n  # two\n", {}),
    ("a key and a number", "a = 1\n", {("a",): (1, 5)}),
    ("no spaces", "a=1", {("a",): (1, 3)}),
    (
        "comments before, behind and between",
        '# top\na = 1 # here\n# between\n  b = "x" # "no"\n',
        {("a",): (2, 5), ("b",): (4, 8)},
    ),
    (
        "the four kinds of strings",
        "a = \"x\"\nb = 'y'\nc = \"\"\"z\"\"\"\nd = '''w'''\ne = 5\n",
        {("a",): (1, 6), ("b",): (2, 6), ("c",): (3, 8), ("d",): (4, 8), ("e",): (5, 5)},
    ),
    (
        "quotes, marks and escapes inside strings",
        'a = "x \\" # ] , y"\nb = \'\\\'\nc = """one "two" \\""" three"""\nd = 1\n',
        {("a",): (1, 6), ("b",): (2, 6), ("c",): (3, 8), ("d",): (4, 5)},
    ),
    (
        "quotes at the end of long strings",
        "a = \"\"\"x\"\"\"\"\"\nb = '''y'''''\nc = 1\n",
        {("a",): (1, 8), ("b",): (2, 8), ("c",): (3, 5)},
    ),
    (
        "long strings over lines",
        'a = """x\n# no comment\n[t]\n"""\nb = 2\n',
        {("a",): (1, 8), ("b",): (5, 5)},
    ),
    (
        "empty strings",
        "a = \"\"\nb = ''\nc = \"\"\"\"\"\"\nd = ''''''\ne = 1\n",
        {("a",): (1, 6), ("b",): (2, 6), ("c",): (3, 8), ("d",): (4, 8), ("e",): (5, 5)},
    ),
    (
        "dotted keys",
        "a.b.c = 1\na . d = 2\n",
        {("a", "b", "c"): (1, 9), ("a", "d"): (2, 9)},
    ),
    (
        "quoted keys",
        '"a b" = 1\n\'c.d\' = 2\n"e".f = 3\n',
        {("a b",): (1, 9), ("c.d",): (2, 9), ("e", "f"): (3, 9)},
    ),
    (
        "tables",
        "a = 1\n[t]\nb = 2\n[t.u]\nc = 3\n",
        {("a",): (1, 5), ("t",): (2, 1), ("t", "b"): (3, 5), ("t", "u"): (4, 1)}
        | {("t", "u", "c"): (5, 5)},
    ),
    (
        "arrays of tables",
        '[[line]]\nx = "a"\n\n[[line]]\nx = "b"\n',
        {
            ("line", 0): (1, 1),
            ("line", 0, "x"): (2, 6),
            ("line", 1): (4, 1),
            ("line", 1, "x"): (5, 6),
        },
    ),
    (
        "arrays of tables within arrays of tables",
        "[[a]]\n[[a.b]]\nx = 1\n[[a]]\n[[a.b]]\nx = 2\n[a.c]\ny = 3\n",
        {
            ("a", 0): (1, 1),
            ("a", 0, "b", 0): (2, 1),
            ("a", 0, "b", 0, "x"): (3, 5),
            ("a", 1): (4, 1),
            ("a", 1, "b", 0): (5, 1),
            ("a", 1, "b", 0, "x"): (6, 5),
            ("a", 1, "c"): (7, 1),
            ("a", 1, "c", "y"): (8, 5),
        },
    ),
    (
        "an array over lines, with comments and a comma at the end",
        'a = [\n  "x", # one\n  # two\n  "y",\n]\nb = 1\n',
        {("a",): (1, 5), ("a", 0): (2, 4), ("a", 1): (4, 4), ("b",): (6, 5)},
    ),
    (
        "arrays within arrays",
        "a = [[1, 22], [], [3]]\n",
        {("a",): (1, 5), ("a", 0): (1, 6), ("a", 0, 0): (1, 7), ("a", 0, 1): (1, 10)}
        | {("a", 1): (1, 15), ("a", 2): (1, 19), ("a", 2, 0): (1, 20)},
    ),
    (
        "inline tables",
        'a = { x = 1, y = "two", z.w = [3] }\nb = {}\n',
        {("a",): (1, 5), ("a", "x"): (1, 11), ("a", "y"): (1, 19), ("b",): (2, 5)}
        | {("a", "z", "w"): (1, 31), ("a", "z", "w", 0): (1, 32)},
    ),
    (
        "inline tables in an array",
        'a = [{ l = "1" }, "2"]\n',
        {("a",): (1, 5), ("a", 0): (1, 6), ("a", 0, "l"): (1, 13), ("a", 1): (1, 20)},
    ),
    (
        "dates, floats and truth values",
        "a = 1979-05-27 07:32:00\nb = [ 6.5e2, true, 07:32:00 ]\nc = inf\n",
        {("a",): (1, 5), ("b",): (2, 5), ("b", 0): (2, 7), ("b", 1): (2, 14)}
        | {("b", 2): (2, 20), ("c",): (3, 5)},
    ),
    (
        "lines that end as in old files",
        'a = 1\r\n# c\r\nb = "x"\r\n[t]\r\nc = 3\r\n',
        {("a",): (1, 5), ("b",): (3, 6), ("t",): (4, 1), ("t", "c"): (5, 5)},
    ),
    (
        "characters of several bytes",
        'a = ["é½", "x"] # ü\nb = "☃"\n',
        {("a",): (1, 5), ("a", 0): (1, 7), ("a", 1): (1, 13), ("b",): (2, 6)},
    ),
    (
        "tabs",
        "\ta\t=\t1\n",
        {("a",): (1, 6)},
    ),
    # The newline right behind the quotes is no character of the string.
    (
        "a long string that begins on its second line",
        "a = \"\"\"\nx\"\"\"\nb = '''\r\ny'''\n",
        {("a",): (2, 1), ("b",): (4, 1)},
    ),
    ("an escape in a key", '"\\u0061" = 1\n', {("a",): (1, 12)}),
    ("a quote in a key", '\'"a"\' = 1\n"b\\"" = 2\n', {('"a"',): (1, 9), ('b"',): (2, 9)}),
]


@pytest.mark.parametrize(
    ("document", "expected"), [case[1:] for case in CASES], ids=[case[0] for case in CASES]
)
def test_values_stand_where_they_were_counted(document: str, expected: Places) -> None:
    tomllib.loads(document)
    assert value_places(document) == expected


def paths(value: object, path: Path = ()) -> set[Path]:
    """Of every value but tables and arrays of them, which may have no one place."""
    if isinstance(value, dict):
        return {p for key, part in value.items() for p in paths(part, (*path, key))}
    if not isinstance(value, list):
        return {path}
    found = {p for i, part in enumerate(value) for p in paths(part, (*path, i))}
    return found if any(isinstance(part, dict) for part in value) else {*found, path}


SCALARS = (
    *("1", "-2.5", "1e5", "0x1F", "nan", "true", "1979-05-27", "1979-05-27T07:32:00Z"),
    *('""', '"x"', "'y'", '"\\" #"', '"é"', '"""m\nn"""', "'''o\n\n'p'''"),
    *('""""q"""', "'''r''''"),
)


@st.composite
def documents(draw: st.DrawFn) -> str:
    """Documents from pieces that TOML is made of, mostly well-formed."""
    key = st.sampled_from(["a", "b", "c-d", "1", '"e f"', "'g'", "a.b", "x . y"])
    scalar = st.sampled_from(SCALARS)
    gap = st.sampled_from(["", " ", "\n", " # c ]\n", "\t"])
    value = st.recursive(
        scalar,
        lambda part: st.one_of(
            st.builds(
                lambda parts, g, end: "[" + g + f",{g}".join(parts) + end + g + "]",
                st.lists(part, max_size=4),
                gap,
                st.sampled_from([""]),
            ),
            st.builds(
                lambda pairs: "{ " + ", ".join(f"{k} = {v}" for k, v in pairs) + " }",
                st.lists(st.tuples(key, part), max_size=3),
            ),
        ),
        max_leaves=8,
    )
    pair = st.builds("{} = {}".format, key, value)
    header = st.builds(lambda k, twice: f"[[{k}]]" if twice else f"[{k}]", key, st.booleans())
    comment = st.sampled_from(["# comment", "", "   ", "\t# [x]"])
    lines = draw(st.lists(st.one_of(pair, pair, header, comment), max_size=8))
    return draw(st.sampled_from(["\n", "\r\n"])).join(lines)


def accepted(text: str) -> dict[str, Any] | None:
    try:
        return tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError, ValueError):
        return None


@settings(max_examples=400, deadline=None)
@given(documents())
def test_every_value_of_an_accepted_document_has_a_place(text: str) -> None:
    data = accepted(text)
    if data is None:
        return
    places = value_places(text)
    assert paths(data) <= set(places)
    lines = text.split("\n")
    for line, column in places.values():
        assert 1 <= line <= len(lines)
        assert 1 <= column <= len(lines[line - 1]) + 1


@settings(max_examples=1000, deadline=None)
@given(st.text(alphabet="ab.=[]{},#\"'\\\n\r\t 1-", max_size=40))
def test_nothing_that_is_accepted_raises_or_hangs(text: str) -> None:
    if accepted(text) is not None:
        value_places(text)


@pytest.mark.parametrize("depth", [10, 100, *range(440, 520, 3), 2000])
@pytest.mark.parametrize(("opening", "closing"), [("[", "]"), ("{ a = ", "}")])
def test_depth_that_is_accepted_is_walked(depth: int, opening: str, closing: str) -> None:
    text = "a = " + opening * depth + "1" + closing * depth
    data = accepted(text)
    if data is not None:
        assert (1, 5) in value_places(text).values()


def test_long_documents_take_no_long_time() -> None:
    text = "\n" * 200_000 + "a = [" + "'x', " * 100_000 + "]" + " " * 100_000 + "# end"
    places = value_places(text)
    assert places["a", 99_999] == (200_001, 6 + 5 * 99_999 + 1)
