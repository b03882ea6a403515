"""Does every notebook run from top to bottom, and is it stored without outputs?"""
from pathlib import Path

import nbformat
import pytest
from nbclient import NotebookClient

NOTEBOOKS = sorted((Path(__file__).resolve().parent.parent.parent / "notebooks").glob("*.ipynb"))


@pytest.fixture(params=NOTEBOOKS, ids=lambda path: path.stem)
def notebook(request):
    return request.param, nbformat.read(request.param, as_version=4)


def test_notebook_runs(notebook, monkeypatch):
    monkeypatch.setenv("MPLBACKEND", "module://matplotlib_inline.backend_inline")  # as in a notebook, whatever runs the tests
    path, content = notebook
    NotebookClient(content, timeout=300, kernel_name="python3", resources={"metadata": {"path": str(path.parent)}}).execute()
    images = [output for cell in content.cells for output in cell.get("outputs", ()) if "image/png" in output.get("data", {})]
    assert images, "a notebook shows at least one picture"


def test_notebook_is_stored_without_outputs(notebook):
    for cell in notebook[1].cells:
        assert not cell.get("outputs") and cell.get("execution_count") is None, f"strip the outputs of {notebook[0].name}"
