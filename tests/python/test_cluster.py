# SPDX-License-Identifier: BSL-1.0
"""Readings on a local cluster of two workers, one of which is killed on the way. AQUETH_READINGS sets how many."""
import os
import pathlib
import re
import subprocess
import sys
import unittest

EXAMPLE = pathlib.Path(__file__).resolve().parent.parent.parent / "src/python/examples/dask_readings.py"


class Cluster(unittest.TestCase):
    def test_a_worker_is_lost(self):
        try:
            import distributed  # noqa: F401
        except ImportError:
            self.skipTest("needs python3-distributed")
        readings = int(os.environ.get("AQUETH_READINGS", 400_000))
        run = subprocess.run([sys.executable, EXAMPLE, "--readings", str(readings), "--chunk", str(readings // 20), "--lose-a-worker"],
                             capture_output=True, text=True, timeout=500)
        self.assertEqual(run.returncode, 0, run.stderr)
        self.assertIn("every chunk is equal, bit by bit", run.stdout)
        self.assertIn(f"{readings} readings", run.stdout)
        self.assertRegex(run.stderr, "killed a worker after 5 chunks")
        self.assertIn("20 of 20 chunks", run.stderr)
        print(run.stdout, re.search("it held .*", run.stderr)[0], sep="")


if __name__ == "__main__":
    unittest.main()
