#!/usr/bin/python3
"""Builds random walls with the program and lets the independent check judge each.

    random_walls.py --cli SheetGen.Cli.dll --walls SheetGen.Benchmarks.dll --out DIR [--seed 1] [--count 60] [--satisfiable] [--inside]
                    [--nails N] [--named] [--keep]

A line for each wall that has something to tell, then a summary by kind of disagreement; exit 1 if there is any.
"""
import argparse
import collections
import json
import os
import re
import shutil
import subprocess
import sys
import time

import independent_check


def kind_of(line):
    """What a disagreement is about: its text without marks, names and figures."""
    text = re.sub(r"^.*?(?=nail-|cover|layout|finding|gap|status|length|splay|head|margin|least_clear|nearest|unresolved|row|sheets|quant|no-nail)", "", line)
    return re.sub(r"[-+]?\d[\d.e+-]*", "#", text)[:70]


def build(cli, wall, out, limit):
    started = time.monotonic()
    try:
        run = subprocess.run(["dotnet", cli, "build", wall, "--out", out], capture_output=True, text=True, timeout=limit)
        return run.returncode, run.stdout + run.stderr, time.monotonic() - started
    except subprocess.TimeoutExpired:
        return -1, f"not done in {limit} s", time.monotonic() - started


def judge(cli, wall, out, satisfiable, limit):
    """(lines, notes, seconds, figures) of one wall."""
    code, text, seconds = build(cli, wall, out, limit)
    if code not in (0, 1):
        return [f"exit {code}: {' / '.join(text.strip().splitlines()[:4])[:400]}"], [], seconds, None
    try:
        check = independent_check.Check(wall, out)
        check.run()
    except Exception as error:  # a result that cannot be read is the result's fault until shown otherwise
        return [f"check failed: {type(error).__name__} {error}"], [], seconds, None
    lines = check.lines
    errors = [f for f in check.findings if f["severity"] == "error"]
    if code != (1 if errors else 0):
        lines.append(f"exit {code} with {len(errors)} error findings")
    if satisfiable:
        lines += [f"satisfiable wall: cover error from {f['station']} to {f['to_station']}" for f in errors if f["code"] == "cover"]
    layout = check.report["layout"]
    return lines, check.notes, seconds, (len(check.nails), layout["unresolved"], layout["noted"], layout["effort"], len(errors))


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--cli", required=True)
    parser.add_argument("--walls", required=True)
    parser.add_argument("--out", required=True)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--count", type=int, default=60)
    parser.add_argument("--nails", type=int, default=120)
    parser.add_argument("--limit", type=float, default=300)
    parser.add_argument("--satisfiable", action="store_true")
    parser.add_argument("--inside", action="store_true")
    parser.add_argument("--named", action="store_true")
    parser.add_argument("--keep", action="store_true")
    arguments = parser.parse_args()
    walls = os.path.join(arguments.out, "walls")
    shutil.rmtree(walls, ignore_errors=True)
    if arguments.named:
        command = ["walls", "named", walls]
    else:
        words = [w for w in ("satisfiable", "inside") if getattr(arguments, w)]
        command = ["walls", str(arguments.seed), str(arguments.count), walls, f"nails={arguments.nails}", *words]
    subprocess.run(["dotnet", arguments.walls, *command], check=True)
    kinds, examples, bad, total = collections.Counter(), {}, 0, 0.0
    names = sorted(os.listdir(walls), key=lambda n: (len(n), n))
    for name in names:
        wall, out = os.path.join(walls, name), os.path.join(arguments.out, name[:-5])
        shutil.rmtree(out, ignore_errors=True)
        lines, notes, seconds, figures = judge(arguments.cli, wall, out, arguments.satisfiable, arguments.limit)
        total += seconds
        print(f"{name}: {len(lines)} disagreements, {len(notes)} notes, {seconds:.1f} s, {json.dumps(figures)}", flush=True)
        for line in lines[:12]:
            print("    " + line)
        if arguments.keep:
            for line in notes[:6]:
                print("    note " + line)
        for kind in {kind_of(line) for line in lines}:
            kinds[kind] += 1
            examples.setdefault(kind, name)
        bad += bool(lines)
        if not lines and not arguments.keep:
            shutil.rmtree(out, ignore_errors=True)
    print(f"{len(names)} walls, {bad} with disagreements, {total:.0f} s of building")
    for kind, count in kinds.most_common():
        print(f"  {count:4}  {kind}  (first {examples[kind]})")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
