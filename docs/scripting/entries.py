"""Drives many plans in one process and names the quickest. Needs Python 3 and nothing else.

From the folder of the project:  python3 docs/scripting/entries.py 10000
"""

import json
import subprocess
import sys
import threading
import time

FORELOAD = ["java", "-jar", "dynamics-examples/target/foreload.jar"]


def plans(number):
    """Plans spread evenly over brake point, peak and release."""
    for i in range(number):
        peak = 6 + 3 * ((i * 0.618034) % 1)
        end = 60 * ((i * 0.754878) % 1)
        point = -60 - 650 / peak + 30 * ((i * 0.569840) % 1)
        yield {
            "brake_point_m": round(point, 1),
            "peak_deceleration_mps2": round(peak, 2),
            "release_shape": "linear",
            "release_start_m": -5,
            "release_end_m": round(end, 1),
        }


def answers(questions, *options):
    """The answers of one process, in the order of the questions."""
    batch = subprocess.Popen(
        [*FORELOAD, "batch", *options], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    )

    def ask():
        for question in questions:
            batch.stdin.write(json.dumps(question) + "\n")
        batch.stdin.close()

    threading.Thread(target=ask, daemon=True).start()
    for line in batch.stdout:
        yield json.loads(line)
    batch.wait()


number = int(sys.argv[1])
begun = time.monotonic()
entries = list(answers(plans(number), "--as-told"))
seconds = time.monotonic() - begun
made = [entry for entry in entries if entry["keeps_margin"]]
best = min(made, key=lambda entry: entry["time_s"])
print(f"{len(entries)} entries, {len(made)} of which keep the margin")
print(f"the quickest: brake at {best['brake_point_m']:.0f} m, off at {best['release_end_m']:.0f} m, {best['time_s']:.2f} s")
print(f"{seconds:.1f} s, {number / seconds:.0f} entries a second", file=sys.stderr)
