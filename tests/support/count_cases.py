#!/usr/bin/env python3
"""count_cases.py FEWEST PROGRAM...: exit status 1 if the programs hold fewer than FEWEST test cases in all, or one none."""
import pathlib
import re
import subprocess
import sys


def cases(program):
    said = subprocess.run([program, "--count"], capture_output=True, text=True, check=True).stdout
    return int(re.search(r"unskipped test cases .*: (\d+)", said)[1])


def main():
    fewest, counts = int(sys.argv[1]), {pathlib.Path(program).name: cases(program) for program in sys.argv[2:]}
    for name, count in counts.items():
        print(f"{count:5} {name}")
    total = sum(counts.values())
    print(f"{total:5} in all, at least {fewest} wanted")
    return 1 if total < fewest or 0 in counts.values() else 0


if __name__ == "__main__":
    sys.exit(main())
