"""Runs commands and measures each: a line of JSON in, the words; a line out: exit status, seconds of processor, bytes of memory.

A process of its own, because a child's peak counts from its parent's size on: a test that holds a corpus is large.
"""
import json
import os
import subprocess
import sys
import threading

HANGS = 60  # s: then it is ended

if __name__ == "__main__":
    for line in sys.stdin:
        process = subprocess.Popen(json.loads(line), stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        end = threading.Timer(HANGS, process.kill)
        end.start()
        _, status, used = os.wait4(process.pid, 0)
        end.cancel()
        print(json.dumps([os.waitstatus_to_exitcode(status), used.ru_utime + used.ru_stime, used.ru_maxrss * 1024]), flush=True)
