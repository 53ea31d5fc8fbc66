"""The fleet review as map and reduce on Dask: the figures of each site on any worker, the review over all of them.

    /usr/bin/python3 review_sites.py SCHEDULER COMMAND TIMELINES FIGURES

SCHEDULER is its address, COMMAND the path of steadypair.mjs, TIMELINES the folder with a timeline for each site and month
(site-0001-2025-03.parquet), FIGURES the folder for the figures. Writes the JSON document of the review to standard output. A
worker that dies is no fault: its sites are read again by another, and a file of figures is whole or not there.
"""

import glob
import os
import re
import subprocess
import sys

from distributed import Client


def figures_of(command, timelines, out):
    """Makes the figures of one site; gives their path."""
    subprocess.run(
        ["node", command, "fleet", *timelines, "--format", "parquet", "--out", out],
        check=True,
        capture_output=True,
    )
    return out


def main(scheduler, command, timelines, figures):
    sites = {}
    for path in sorted(glob.glob(os.path.join(timelines, "*.parquet"))):
        name = re.sub(r"-\d{4}-\d{2}\.parquet$", "", os.path.basename(path))
        sites.setdefault(name, []).append(path)
    os.makedirs(figures, exist_ok=True)
    with Client(scheduler) as client:
        tasks = [
            client.submit(figures_of, command, paths, os.path.join(figures, name + ".figures.parquet"), retries=2)
            for name, paths in sites.items()
        ]
        paths = client.gather(tasks)
    # A pair that stands out, or is not ready for a swap, gives the status 1, one of which it is not known 3.
    review = subprocess.run(["node", command, "fleet", *paths, "--json"], stdout=subprocess.PIPE)
    if review.returncode not in (0, 1, 3):
        sys.exit(review.returncode)
    sys.stdout.buffer.write(review.stdout)


if __name__ == "__main__":
    main(*sys.argv[1:])
