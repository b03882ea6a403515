"""Can the Python package be installed from the project's folder, offline, and used from anywhere?"""
import shutil
import subprocess
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent


def test_pip_installs_it_without_a_network(tmp_path):
    copy = tmp_path / "project"  # pip builds where the sources lie: not in the project itself
    for folder in ("bindings", "lib"):
        shutil.copytree(ROOT / folder, copy / folder, ignore=shutil.ignore_patterns("build", "*.egg-info", "__pycache__"))
    python = tmp_path / "venv/bin/python"
    subprocess.run(["/usr/bin/python3", "-m", "venv", "--system-site-packages", tmp_path / "venv"], check=True)
    built = subprocess.run([python, "-m", "pip", "install", "--no-build-isolation", "--no-index", copy / "bindings"],
                           stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
    assert built.returncode == 0, built.stdout[-6000:]
    program = f"import bankwright; print(bankwright.solve({str(ROOT / 'data/examples/bow-36v.toml')!r})['status'])"
    used = subprocess.run([python, "-I", "-c", program], cwd=tmp_path, capture_output=True, text=True)
    assert used.stdout == "solved\n", used.stderr
