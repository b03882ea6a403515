"""Does every notebook run from top to bottom, and is it stored without outputs?

All share one kernel, emptied before each: what it has loaded already (NumPy, matplotlib) is not loaded seven times.
"""
from pathlib import Path

import nbformat
import pytest
from jupyter_client import KernelManager
from nbclient import NotebookClient

NOTEBOOKS = sorted((Path(__file__).resolve().parent.parent.parent / "notebooks").glob("*.ipynb"))


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


def test_notebook_runs(notebook, kernel):
    content = notebook[1]
    # No name of the notebook before is left; multiprocessing asks for __spec__.
    empty = nbformat.v4.new_code_cell("%reset -f\n%matplotlib inline\n__spec__ = None")
    content.cells.insert(0, empty)
    NotebookClient(content, timeout=300, km=kernel).execute()
    images = [output for cell in content.cells for output in cell.get("outputs", ()) if "image/png" in output.get("data", {})]
    assert images, "a notebook shows at least one picture"


def test_notebook_is_stored_without_outputs(notebook):
    for cell in notebook[1].cells:
        assert not cell.get("outputs") and cell.get("execution_count") is None, f"strip the outputs of {notebook[0].name}"
