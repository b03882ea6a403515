"""Does a file that follows an option's value stay a file, whatever comes after it?"""
import json
import subprocess

import pytest


@pytest.mark.parametrize("asked", [["solve", "--throttle", "50%"], ["recharge", "--charge", "50%"]])
def test_a_file_after_an_option_is_no_second_value(command, root, asked):
    done = subprocess.run([command, *asked, "data/examples/ferry-48v-lithium.toml", "--format", "json"], cwd=root, capture_output=True, timeout=60)
    assert done.returncode == 0, done.stderr
    assert json.loads(done.stdout)["file"] == "data/examples/ferry-48v-lithium.toml"
