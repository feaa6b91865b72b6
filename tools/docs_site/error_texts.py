"""What the pages of the errors say."""

from __future__ import annotations

import re

from docs_site.error_pages import COMMAND, Example, Shown

CONTROL = re.compile(r"[\x00-\x09\x0b-\x1f\x7f]")


def page_of(one: Example, shown: Shown, mended: Shown) -> str:
    """The page of one code, with what its examples print now."""
    told = f"It is a {{py:class}}`~scalepan.{shown.kind}`." if shown.kind else one.guards
    parts = [
        f"---\norphan: true\n---\n\n# `{one.code}`\n",
        f"{one.cause} {told}\n",
        *(_file(name, text) for name, text in one.files.items()),
        *_example(one),
        f"{'It tells' if shown.kind else 'It shows'}:\n",
        _printed(shown.text),
        f"## What to do\n\n{one.repair}\n",
        *(
            _file(name, text)
            for name, text in one.mended_files.items()
            if one.files.get(name) != text
        ),
        _code(one.mended) if one.mended != one.fails else "",
        f"It gives:\n\n{_printed(mended.text)}" if mended.text else "",
        f"All errors about the same: [{one.subject}](index.md#{one.subject}).\n",
    ]
    return "\n".join(part for part in parts if part)


def index_page(of: list[Example], about: dict[str, str]) -> str:
    """All codes by subject, each with its cause."""
    parts = [
        "# Errors\n",
        "Each error has a code that stays. Its message says what is wrong, names both sides of a "
        "clash, the place where there is one, and in brackets the nearest fix. A code's page has "
        "the cause, an example that ends in it, and the example mended; what is shown is what "
        "they print. `error.code`, `.message`, `.hint`, `.file`, `.line`, `.column` and `.cell` "
        "hold the parts.\n",
    ]
    for subject, what in about.items():
        rows = [f"| [`{one.code}`]({one.code}.md) | {one.cause} |" for one in of]
        rows = [row for row in rows if row.startswith(f"| [`{subject}.")]
        parts.append(f"## {subject}\n\n{what}\n\n| code | cause |\n|---|---|\n" + "\n".join(rows))
    return "\n\n".join(parts) + "\n"


def _example(one: Example) -> list[str]:
    """What runs first and the example: of Python one block."""
    if one.fails.startswith(COMMAND):
        return [_code(one.before), _code(one.fails)] if one.before else [_code(one.fails)]
    parts = ["import scalepan\n", one.before, one.fails]
    return [_code("\n".join(part for part in parts if part))]


def _file(name: str, text: str) -> str:
    kind = "toml" if name.endswith(".toml") else "text"
    return f"`{name}`:\n\n{_fence(kind, text.strip(chr(10)))}"


def _code(code: str) -> str:
    return _fence("text" if code.startswith(COMMAND) else "python", code)


def _printed(text: str) -> str:
    return _fence("text", text)


def _fence(kind: str, text: str) -> str:
    shown = CONTROL.sub(lambda found: f"\\x{ord(found[0]):02x}", text)
    return f"````{kind}\n{shown}\n````\n"
