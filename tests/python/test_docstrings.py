"""Every public name says what it is, with its errors; read from the sources, stub and all."""

from __future__ import annotations

import doctest
import inspect
import re

import pytest
import scalepan
from docs_site.api import Entry, entry, items, public_names, sections
from docs_site.reference import GROUPS, NO_ENTRIES, markdown
from error_codes import codes

CODES = set(codes())
SUBJECTS = {code.split(".")[0] for code in CODES}
LISTED = [name for _, names in GROUPS.values() for name in names.split()]
ENTRIES = [entry(*reversed(name.rpartition(":")[::2])) for name in LISTED]
# Words with a point inside a docstring that look like codes and are none.
CELLS = re.compile(r"``([a-z]+\.[a-z_]+)``")


def docs_of(one: Entry) -> list[tuple[str, str]]:
    return [(one.name, one.doc), *((f"{one.name}.{m.name}", m.doc) for m in one.members)]


def test_every_public_name_is_in_one_group_of_the_reference() -> None:
    public = set(public_names()) - NO_ENTRIES
    assert public == set(scalepan.__all__) - NO_ENTRIES
    assert {name for name in LISTED if ":" not in name} == public
    assert len(LISTED) == len(set(LISTED))


@pytest.mark.parametrize("one", ENTRIES, ids=LISTED)
def test_a_public_name_and_all_its_members_have_a_docstring(one: Entry) -> None:
    assert [name for name, doc in docs_of(one) if not doc.strip()] == []
    for name, doc in docs_of(one):
        assert doc.rstrip()[-1] in ".:)`" or "\n" in doc, name


@pytest.mark.parametrize("one", ENTRIES, ids=LISTED)
def test_every_code_that_a_docstring_names_is_one(one: Entry) -> None:
    for name, doc in docs_of(one):
        raised = doc[doc.index("Raises") :] if "Raises" in doc else ""
        named = {code for code in CELLS.findall(raised) if code.split(".")[0] in SUBJECTS}
        assert named <= CODES, name


@pytest.mark.parametrize("one", ENTRIES, ids=LISTED)
def test_every_argument_that_is_described_is_one(one: Entry) -> None:
    for name, doc, signature in [
        (one.name, one.doc, one.signature),
        *((f"{one.name}.{m.name}", m.doc, m.signature) for m in one.members),
    ]:
        described = items(sections(doc)[1].get("Args", ""))
        arguments = set(re.findall(r"\*{0,2}(\w+)\s*[:=,)]", signature))
        told = {part for names in described for part in names.split(", ")}
        assert told <= arguments, name


EXAMPLES = [(name, doc) for one in ENTRIES for name, doc in docs_of(one) if ">>> " in doc]


@pytest.mark.parametrize(("name", "doc"), EXAMPLES, ids=[name for name, _ in EXAMPLES])
def test_examples_in_docstrings_give_what_they_show(name: str, doc: str) -> None:
    test = doctest.DocTestParser().get_doctest(doc, {"scalepan": scalepan}, name, name, 0)
    assert doctest.DocTestRunner().run(test).failed == 0


def test_the_main_questions_have_examples() -> None:
    shown = {name for name, _ in EXAMPLES}
    assert shown >= {"quantity", "convert", "cover", "loads", "measure_out", "pan_ratio"}


@pytest.mark.parametrize("one", ENTRIES, ids=LISTED)
def test_the_sources_say_what_the_classes_have(one: Entry) -> None:
    found = getattr(scalepan, one.name, None)
    if not inspect.isclass(found):
        return
    public = {name for name in dir(found) if not name.startswith("_")}
    inherited = set(dir(Exception)) | set(dir(tuple)) | set(dir(list))
    assert {m.name for m in one.members} - public <= set(getattr(found, "__annotations__", {}))
    assert public - inherited - {m.name for m in one.members} == set()


def test_a_docstring_becomes_a_page() -> None:
    doc = """What it gives.

with one:
    indented

Args:
    size: of one,
        going on here.
    count: how many.

Raises:
    PriceError: ``cover.count``, ``no.code``.
"""
    assert markdown(doc, {"cover.count"}) == (
        "What it gives.\n\n```python\nwith one:\n    indented\n```\n\n"
        "**Args**\n\n- `size`: of one, going on here.\n- `count`: how many.\n\n"
        "**Raises**\n\n- {py:class}`~scalepan.PriceError`: "
        "[`cover.count`](../errors/cover.count.md), ``no.code``."
    )
