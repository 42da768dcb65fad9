#!/usr/bin/env python3
# SPDX-License-Identifier: BSL-1.0
"""Corrects many readings of an alcoholometer on a cluster, chunk by chunk, and compares with one process.

usage: dask_readings.py [--readings N] [--chunk N] [--workers N] [--lose-a-worker]

The readings are invented. The cluster is local here; a Client of any other cluster takes its place in main().
"""
import argparse
import os
import signal
import sys
import tempfile
import time
import zlib

import dask.array as da
import numpy as np
from distributed import Client, LocalCluster, as_completed

import aqueth

ABV = aqueth.StrengthScale.volume_fraction_at_20_celsius
SODA_LIME_GLASS = 2.5e-5  # cubic expansion, 1/K


def strengths(readings, chunk):
    """the true strengths, as an array of Dask: nothing is computed yet, and nothing but a chunk is in memory"""
    random = da.random.RandomState(2026, RandomState=np.random.RandomState)
    reading = random.uniform(0.02, 0.96, size=readings, chunks=chunk)
    celsius = random.uniform(4.0, 36.0, size=readings, chunks=chunk)
    return aqueth.strength_from_reading(reading, celsius, ABV, SODA_LIME_GLASS)


def summary(chunk):
    """count, refused elements, sum of the others, and a checksum of every bit"""
    return np.array([[chunk.size, np.isnan(chunk).sum(), np.nansum(chunk), zlib.crc32(chunk.tobytes())]])


def on_cluster(client, cluster, summaries, lose_a_worker):
    futures = client.compute(list(summaries.to_delayed().ravel()))
    for done, _ in enumerate(as_completed(futures), 1):
        print(f"\r{done} of {len(futures)} chunks", end="", file=sys.stderr, flush=True)
        if lose_a_worker and done == max(1, len(futures) // 4):
            lost = next(iter(cluster.workers.values()))
            held = len(client.has_what()[lost.worker_address])
            os.kill(lost.pid, signal.SIGKILL)
            print(f"\rkilled a worker after {done} chunks; it held {held} results", file=sys.stderr)
    print(file=sys.stderr)
    results = np.concatenate(client.gather(futures))
    client.wait_for_workers(len(cluster.workers))  # a killed one is replaced
    return results


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--readings", type=int, default=1_000_000)
    parser.add_argument("--chunk", type=int, default=50_000)
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--lose-a-worker", action="store_true", help="kill one after a quarter of the chunks")
    options = parser.parse_args()
    if min(options.readings, options.chunk, options.workers) < 1:
        parser.error("--readings, --chunk and --workers must be at least 1")

    summaries = strengths(options.readings, options.chunk).map_blocks(summary, dtype=float, new_axis=1, chunks=(1, 4))
    start = time.monotonic()
    with tempfile.TemporaryDirectory() as folder:
        with LocalCluster(n_workers=options.workers, threads_per_worker=1, dashboard_address=None,
                          local_directory=folder) as cluster, Client(cluster) as client:
            by_cluster = on_cluster(client, cluster, summaries, options.lose_a_worker)
    middle = time.monotonic()
    by_one = summaries.compute(scheduler="single-threaded")
    end = time.monotonic()

    readings, refused = (int(n) for n in by_cluster[:, :2].sum(axis=0))
    mean = by_cluster[:, 2].sum() / (readings - refused)
    print(f"{readings} readings, {refused} refused, mean strength {100 * mean:.6f} % vol at 20 °C")
    print(f"{options.workers} workers {middle - start:.1f} s with their start, one process {end - middle:.1f} s", file=sys.stderr)
    if not np.array_equal(by_cluster, by_one):
        sys.exit("the cluster and one process differ")
    print("every chunk is equal, bit by bit, to that of one process")


if __name__ == "__main__":
    main()
