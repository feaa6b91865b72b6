"""Runs the notebooks of docs/notebooks and writes each as one page of HTML.

    python tools/render_notebooks.py [NAME ...]

The pages in docs/notebooks/rendered are what the present build shows: no script, nothing fetched,
readable in light and dark. The notebooks themselves are kept without outputs.
"""

from __future__ import annotations

import html
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import Any

import nbformat
from nbconvert import HTMLExporter

FOLDER = Path(__file__).resolve().parents[1] / "docs" / "notebooks"
RENDERED = FOLDER / "rendered"

# In a process of its own, since the kernel's libraries warn of their own affairs.
_RUN = """\
import sys
import nbclient, nbformat
notebook = nbformat.read(sys.argv[1], as_version=4)
nbclient.NotebookClient(notebook, timeout=300, coalesce_streams=True).execute(cwd=sys.argv[3])
nbformat.write(notebook, sys.argv[2])
"""

_STYLE = """\
:root { color-scheme: light dark; --soft: light-dark(#f3f3f0, #262624); }
body { max-width: 62rem; margin: 2rem auto; padding: 0 1rem; line-height: 1.5;
  font-family: system-ui, sans-serif; background: light-dark(#fff, #191918);
  color: light-dark(#1c1c1a, #e6e6e2); }
pre { white-space: pre-wrap; overflow-wrap: anywhere; font-size: .88rem; line-height: 1.4; }
.input_area pre { background: var(--soft); padding: .6rem .9rem; margin: .8rem 0 0; }
.prompt, .anchor-link { display: none; }
.output_area { margin: .4rem 0 .8rem; overflow-x: auto; }
img { max-width: 100%; height: auto; }
h1, h2 { line-height: 1.25; }
"""


def executed(notebook: Path, folder: Path) -> Any:
    """The notebook with its outputs, run with ``folder`` as the place it works in."""
    done = folder / notebook.name
    subprocess.run([sys.executable, "-c", _RUN, notebook, done, folder], check=True)
    return nbformat.read(done, as_version=4)  # type: ignore[no-untyped-call]


def page_of(name: str, notebook: Any) -> str:
    """One page of HTML."""
    exporter = HTMLExporter(template_name="basic")  # type: ignore[no-untyped-call]
    body, _ = exporter.from_notebook_node(notebook)
    title = next((cell.source.lstrip("# ").split("\n")[0] for cell in notebook.cells), name)
    lines = [line.rstrip() for line in body.splitlines()]
    return (
        '<!doctype html>\n<html lang="en">\n<meta charset="utf-8">\n'
        f"<title>{html.escape(title)}</title>\n<style>\n{_STYLE}</style>\n"
        + "\n".join(lines).strip()
        + "\n</html>\n"
    )


def main(names: list[str]) -> int:
    """Writes the pages of the notebooks named, or of all."""
    RENDERED.mkdir(exist_ok=True)
    for notebook in sorted(FOLDER.glob("*.ipynb")):
        if names and notebook.stem not in names:
            continue
        with tempfile.TemporaryDirectory() as folder:
            page = page_of(notebook.stem, executed(notebook, Path(folder)))
        (RENDERED / f"{notebook.stem}.html").write_text(page, encoding="utf-8")
        print(f"{notebook.stem}: {len(page)} characters")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
