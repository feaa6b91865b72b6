"""The catalogue of errors in docs/errors: each code is raised by its example, and mended by it."""

from __future__ import annotations

import os
import sys

import pytest
from docs_site.error_pages import Example, examples, run, subjects
from docs_site.error_texts import index_page, page_of
from error_codes import codes

EXAMPLES = {one.code: one for one in examples()}
# Told by other means than an exception; their pages say where.
GUARDS = {"cost.no_way", "panel.message", "ramp.end"}


def test_there_is_an_example_for_each_code_and_a_code_for_each_example() -> None:
    assert sorted(EXAMPLES) == sorted(codes())
    assert len(examples()) == len(EXAMPLES)
    assert {one.code for one in EXAMPLES.values() if one.guards} == GUARDS
    assert set(subjects()) == {code.split(".")[0] for code in EXAMPLES}


@pytest.mark.parametrize("one", EXAMPLES.values(), ids=EXAMPLES)
def test_an_example_ends_in_its_error_and_its_mending_does_not(one: Example) -> None:
    if one.subject == "plot" or one.code == "file.plot":
        pytest.importorskip("matplotlib")
    if one.subject == "panel":
        pytest.importorskip("anywidget")
    shown, mended = run(one), run(one, mended=True)
    assert shown.code == ("" if one.guards else one.code)
    assert mended.code == "", mended.text
    assert (one.fails, one.files) != (one.mended, one.mended_files)
    page = page_of(one, shown, mended)
    # Control characters are shown by their numbers, not obeyed.
    told = "".join(c if c == "\n" or c.isprintable() else f"\\x{ord(c):02x}" for c in shown.text)
    assert shown.text
    assert told in page
    assert one.cause in page
    assert one.repair in page


def test_the_list_of_all_codes_leads_to_each() -> None:
    page = index_page(list(EXAMPLES.values()), subjects())
    assert [code for code in EXAMPLES if f"| [`{code}`]({code}.md) | " not in page] == []


def test_an_example_leaves_nothing_behind() -> None:
    before = (dict(os.environ), os.getcwd(), sys.modules.get("anywidget"))
    run(EXAMPLES["file.pdf"])
    run(EXAMPLES["panel.missing"])
    assert (dict(os.environ), os.getcwd(), sys.modules.get("anywidget")) == before
    assert "anywidget" not in sys.modules or sys.modules["anywidget"] is not None
