"""Does every notebook run from top to bottom, show all its pictures as a page too, and is it stored without outputs?

All share one kernel, emptied before each: what it has loaded already (NumPy, matplotlib) is not loaded seven times.
"""
import base64
import io
import re
from pathlib import Path
from xml.etree import ElementTree

import matplotlib.image
import nbformat
import pytest
from jupyter_client import KernelManager
from nbclient import NotebookClient
from nbconvert import HTMLExporter

NOTEBOOKS = sorted((Path(__file__).resolve().parent.parent.parent / "notebooks").glob("*.ipynb"))
GALLERY = (NOTEBOOKS[0].parent / "README.md").read_text(encoding="utf-8")


@pytest.fixture(params=NOTEBOOKS, ids=lambda path: path.stem)
def notebook(request):
    return request.param, nbformat.read(request.param, as_version=4)


@pytest.fixture(scope="module")
def kernel():
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("MPLBACKEND", "module://matplotlib_inline.backend_inline")  # as in a notebook, whatever runs the tests
        manager = KernelManager(kernel_name="python3")
        manager.start_kernel(cwd=NOTEBOOKS[0].parent)
    yield manager
    manager.shutdown_kernel(now=True)


def picture_of(encoded, kind):
    """Something is to be seen in it."""
    data = base64.b64decode(encoded)
    if kind == "png":
        return matplotlib.image.imread(io.BytesIO(data)).std() > 0.01
    return len(list(ElementTree.fromstring(data).iter("{http://www.w3.org/2000/svg}text"))) > 20


def test_notebook_runs(notebook, kernel):
    path, content = notebook
    # No name of the notebook before is left; multiprocessing asks for __spec__.
    empty = nbformat.v4.new_code_cell("%reset -f\n%matplotlib inline\n__spec__ = None")
    content.cells.insert(0, empty)
    NotebookClient(content, timeout=300, km=kernel).execute()
    shown = [output["data"] for cell in content.cells for output in cell.get("outputs", ()) if "data" in output]
    plots = sum("image/png" in data for data in shown)
    drawings = sum("data:image/svg+xml" in data.get("text/html", "") for data in shown)
    assert plots, "a notebook shows at least one picture"
    page, _ = HTMLExporter().from_notebook_node(content)
    pictures = re.findall(r'<img[^>]*src="data:image/(png|svg\+xml);base64,([\w+/=\s]+)"', page)
    assert len(pictures) == plots + drawings
    assert all(picture_of(encoded, kind) for kind, encoded in pictures)
    assert (path.parent / f"pictures/{path.stem}.png").exists() and f"pictures/{path.stem}.png" in GALLERY


def test_notebook_is_stored_without_outputs(notebook):
    for cell in notebook[1].cells:
        assert not cell.get("outputs") and cell.get("execution_count") is None, f"strip the outputs of {notebook[0].name}"
