#!/usr/bin/env python3
"""A survey of 10,000 drives in 100 machines of 20 parts each, made up from a fixed seed, timed as a user runs it.

    survey_bench.py PROGRAM [DRIVES] [MACHINES]
"""
import pathlib
import random
import resource
import subprocess
import sys
import tempfile
import time

PARTS = 20


def machine(draw):
    """A board, what stands on it and hangs over it, two M.2 slots and a bay."""
    text = 'title = "machine"\nclearance = 0.3\n[[part]]\nname = "board"\nuse = "board/mini-itx"\n'
    text += (f'[[part]]\nname = "tray"\nsolid = {{ plate = [170, 170, 1.0] }}\nremovable = true\n'
             f'above = {{ part = "board", by = "{draw.uniform(15, 60):.1f} ±0.2" }}\n')
    for i in range(PARTS - 3):
        x, y = draw.uniform(5, 150), draw.uniform(-160, -15)
        text += (f'[[part]]\nname = "part {i}"\nsolid = {{ box = [{draw.uniform(2, 12):.1f}, {draw.uniform(2, 12):.1f}, '
                 f'"{draw.uniform(0.5, 9):.1f} ±0.1"] }}\non = {{ part = "board", at = [{x:.1f}, {y:.1f}] }}\n')
    text += '[[part]]\nname = "floor"\nsolid = { plate = [300, 300, 1.0] }\nat = [-60, -230, -40]\n'
    for i, y in enumerate((-40, -120)):
        text += (f'[[slot]]\nname = "slot {i}"\non = {{ part = "board", at = [40, {y}], toward = "+x" }}\n'
                 f'socket = "m2/M/{draw.choice(["H2.5", "H4.2"])}"\nlengths = [2242, 2280]\nbus = "pcie 4.0 x4"\n')
    text += ('[[bay]]\nname = "bay"\non = { part = "floor", at = [80, 100], toward = "+x" }\ntakes = "2.5in"\n'
             f'inside = {{ width = "{draw.uniform(70.5, 72):.1f} ±0.2", height = {draw.uniform(8, 18):.1f} }}\n'
             'cable = 30\nbus = "sata 6"\n')
    return text


def drives(draw, count):
    """As on a price list: many names, fewer bodies."""
    yield "name,use,bus,top,pad,compress,heatsink"
    cards = [f"m2/{size}-{code}-M" for size in (2242, 2260, 2280) for code in ("S2", "S3", "D2", "D3")]
    for i in range(count):
        kind = draw.random()
        if kind < 0.7:
            top = draw.choice(["", "", "1.2 ±0.1", "1.4 ±0.1"])
            worn = draw.choice([",,", ",,", "1.0 ±0.1,30 %,flat-spreader-2", "1.0 ±0.1,30 %,fin-heatsink-3"])
            yield f"card {i},{draw.choice(cards)},pcie 4.0 x4,{top},{worn}"
        else:
            yield f"drive {i},2.5in/{draw.choice(['5', '7', '9.5', '12.7', '15'])},sata 6,,,,"


def main():
    program = sys.argv[1]
    count = int(sys.argv[2]) if len(sys.argv) > 2 else 10000
    hosts = int(sys.argv[3]) if len(sys.argv) > 3 else 100
    draw = random.Random(5)
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        (folder / "machines").mkdir()
        for i in range(hosts):
            (folder / "machines" / f"machine-{i:03}.build.toml").write_text(machine(draw))
        rows = list(drives(draw, count))
        (folder / "drives.csv").write_text("\n".join(rows) + "\n")
        kinds = len({row.split(",", 1)[1] for row in rows[1:]})
        began = time.monotonic()
        run = subprocess.run([program, "survey", folder / "machines", folder / "drives.csv", "-o", folder / "out.jsonl"],
                             stdout=subprocess.PIPE, text=True, check=False)
        took = time.monotonic() - began
        if run.returncode > 1:
            sys.exit(f"the survey ended with {run.returncode}")
        lines = sum(1 for _ in (folder / "out.jsonl").open("rb"))
        size = (folder / "out.jsonl").stat().st_size
        peak = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss
        print(f"{count} drives ({kinds} that differ) x {hosts} machines of {PARTS} parts: {took:.1f} s, {lines} lines, "
              f"{size / 1e6:.0f} MB written, {peak / 1024:.0f} MB of memory at most")
        print(run.stdout.splitlines()[0])


main()
