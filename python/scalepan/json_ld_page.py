"""The recipes in JSON-LD text: a bare object, a list, an ``@graph``, or the scripts of a page."""

from __future__ import annotations

import html
import re
from typing import TYPE_CHECKING, Any, NamedTuple

from scalepan.errors import Error, make_error
from scalepan.json_document import JsonText, Path

if TYPE_CHECKING:
    from collections.abc import Iterator

# Read by hand: the standard library's parser takes time by the square of some pages.
_COMMENT_OR_SCRIPT = re.compile(r"<!--|<script\b([^<>]{0,2000})>", re.IGNORECASE)
_SCRIPT_END = re.compile(r"</script", re.IGNORECASE)
_TYPE = re.compile(r"""\btype\s?=\s?["']?application/ld\+json\b""", re.IGNORECASE)
# What a page may put around a script's text; it is blanked out, so that places stay right.
_BEFORE = re.compile(r"\s*(?:<!--|(?://|/\*)? ?<!\[CDATA\[(?: ?\*/)?)")
_BEHIND = re.compile(r"(?:-->|(?://|/\*)? ?\]\]>(?: ?\*/)?)$")
_LONGEST_BEHIND = 12
_TAGS = re.compile(r"(?:</?[A-Za-z][A-Za-z0-9]*\b[^<>]*>)+")
_BREAK = re.compile(r"</?(?:br|p|li|div|ul|ol|tr|h[1-6])\b", re.IGNORECASE)
_CELL = re.compile(r"</?t[dh]\b", re.IGNORECASE)
# Common practice where a keyboard has no degree sign.
_RAISED_DEGREE = re.compile(r"<sup>\s*[o0]\s*</sup>(?=\s?[CF]\b)", re.IGNORECASE)
# Places where a word may break or not, which nobody sees.
_UNSEEN = re.compile("[\u00ad\u200b-\u200f\u2060\ufeff]")
_ENTITY = re.compile(r"&(?:#\d+|#[xX][0-9a-fA-F]+|[A-Za-z][A-Za-z0-9]*);")


class Node(NamedTuple):
    """A recipe, and where it stands.

    Attributes:
        data: its properties by their short names.
        source: the JSON it stands in.
        path: to it.
        ids: the objects of that JSON by ``@id``.
    """

    data: dict[str, Any]
    source: JsonText
    path: Path
    ids: dict[str, Any]

    def error(self, code: str, message: str, path: Path, hint: str = "") -> Error:
        """At one of its values, where that stands under its short name."""
        return self.source.error(code, message, (*self.path, *path), hint)


def recipes_of(text: str, file: str) -> list[Node]:
    """All recipes, in their order.

    Raises:
        RecipeError: ``recipe.json_ld`` where there is none.
        FileError: ``json.syntax``, ``json.duplicate`` where the JSON that is there cannot be read
            and no other has a recipe.
    """
    found: list[Node] = []
    problems: list[Error] = []
    sources = _sources(text.removeprefix("\ufeff"), file)
    for source in sources:
        try:
            found += _recipes_in(source)
        except Error as problem:
            problems.append(problem)
    if found:
        return found
    if problems:
        raise problems[0]
    what = "no recipe is in its JSON-LD" if sources else "no JSON-LD is in the file"
    hint = 'a recipe is an object with "@type": "Recipe", which many pages have in a script'
    raise make_error("recipe.json_ld", what, hint, file)


def plain_lines(text: str) -> list[str]:
    """Lines of text without tags and entities; blank ones are left out."""
    broken = _TAGS.sub(_instead_of, _RAISED_DEGREE.sub("°", text))
    # Pages often write entities twice over: &amp;frac12;
    for _ in range(2):
        broken = html.unescape(broken) if _ENTITY.search(broken) else broken
    broken = _UNSEEN.sub("", broken)
    # A text that was cut may end in half a character, a surrogate.
    broken = broken.encode("utf-16", "surrogatepass").decode("utf-16", "replace")
    # Runs of blanks stay, since they set apart what a line has in columns.
    lines = (re.sub(r"\s", " ", each).strip() for each in broken.splitlines())
    return [line for line in lines if line]


def _instead_of(tags: re.Match[str]) -> str:
    """What parts a text as its tags did: digits that stand in different tags are no one number."""
    if _BREAK.search(tags[0]):
        return "\n"
    ends = tags.string[tags.start() - 1 : tags.start()] + tags.string[tags.end() : tags.end() + 1]
    return " " if _CELL.search(tags[0]) or (len(ends) == 2 and ends.isdigit()) else ""


def plain(text: str) -> str:
    """The same on one line."""
    return " ".join(plain_lines(text))


def short(name: str) -> str:
    """``name`` of ``schema:name`` and ``https://schema.org/name``."""
    return re.split(r"[/:#]", name)[-1] if not name.startswith("@") else name


def listed(value: Any) -> list[Any]:
    """What may stand alone or in a list, without ``@value`` around it."""
    each = value if isinstance(value, list) else [] if value is None else [value]
    return [one["@value"] if isinstance(one, dict) and "@value" in one else one for one in each]


def types_of(node: dict[str, Any]) -> list[str]:
    """Its types by their short names."""
    types = (value for key, value in node.items() if key in ("@type", "type"))
    return [short(one) for value in types for one in listed(value) if isinstance(one, str)]


def _sources(text: str, file: str) -> list[JsonText]:
    if text.lstrip()[:1] in ("{", "["):
        return [JsonText(text, file, strict=False)]
    return list(_scripts(text, file))


def _scripts(page: str, file: str) -> Iterator[JsonText]:
    """The JSON-LD of a page; what stands in comments is none of it."""
    at, line, line_start, counted = 0, 1, 0, 0
    while found := _COMMENT_OR_SCRIPT.search(page, at):
        if found[1] is None:
            end = page.find("-->", found.end())
            at = end + 3
        else:
            closing = _SCRIPT_END.search(page, found.end())
            end = at = closing.start() if closing else -1
        if end < 0:
            return
        if found[1] and _TYPE.search(html.unescape(found[1])):
            start = found.end()
            line += page.count("\n", counted, start)
            line_start, counted = page.rfind("\n", 0, start) + 1, start
            text = _unwrapped(page[start:end])
            if text.strip():
                yield JsonText(text, file, line, start - line_start + 1, strict=False)


def _unwrapped(text: str) -> str:
    before = _BEFORE.match(text)
    if before:
        text = " " * before.end() + text[before.end() :]
    whole = text.rstrip()
    behind = _BEHIND.search(whole[-_LONGEST_BEHIND:])
    return whole[: len(whole) - len(behind[0])] if behind else text


def _recipes_in(source: JsonText) -> list[Node]:
    found: list[Node] = []
    ids: dict[str, Any] = {}
    waiting: list[tuple[Path, Any]] = [((), source.load())]
    while waiting:
        path, value = waiting.pop()
        if isinstance(value, list):
            waiting += reversed([((*path, place), one) for place, one in enumerate(value)])
            continue
        if not isinstance(value, dict):
            continue
        if isinstance(value.get("@id"), str) and len(value) > 1:
            ids[value["@id"]] = value
        if "@id" in value and value.keys() <= {"@id", "@type"}:
            continue  # it names an object that stands elsewhere
        if "Recipe" in types_of(value):
            found.append(Node(value, source, path, ids))
        else:
            waiting += reversed([((*path, key), one) for key, one in value.items()])
    return found
