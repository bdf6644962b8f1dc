#!/usr/bin/env python3
"""Reads what can be read here of a program that cannot be run here: its kind and, of one for macOS, whether its ad hoc signature holds.

usage: packaging/headers.py FILE ...   (exit code 1 where a file in a folder named after a system is no program for that system, or where one for macOS
has no signature, or one that does not fit its bytes)

A program for Apple silicon does not start without a signature. The layouts are those of <mach-o/loader.h>, cs_blobs.h and the PE format, from memory.
"""
import hashlib
import os
import struct
import sys

SYSTEMS = {"linux-x64": "ELF, machine 0x3e", "win-x64": "PE, machine 0x8664", "osx-arm64": "Mach-O, cpu 0x100000c"}


def signature(data, at):
    """What the signature says, and whether it covers the file page by page."""
    magic, _, count = struct.unpack_from(">III", data, at)
    if magic != 0xFADE0CC0:
        return "no signature is where one should be", False
    for i in range(count):
        directory = at + struct.unpack_from(">II", data, at + 12 + 8 * i)[1]
        if struct.unpack_from(">I", data, directory)[0] != 0xFADE0C02:
            continue
        flags, hashes, _, _, slots, end, size, kind, _, page = struct.unpack_from(">IIIIIIBBBB", data, directory + 12)
        pages = range(0, end, 1 << page)
        right = kind == 2 and slots == len(pages) and all(
            hashlib.sha256(data[p:min(end, p + (1 << page))]).digest() == data[directory + hashes + k * size:directory + hashes + (k + 1) * size]
            for k, p in enumerate(pages))
        return f"{'ad hoc' if flags & 2 else 'other'} signature over {slots} pages, {'right' if right else 'WRONG'}", right and end == at
    return "no code directory", False


def kind(data):
    """One line about a file, and whether it is as it should be."""
    if data[:2] == b"MZ":
        at = struct.unpack_from("<I", data, 0x3C)[0]
        return f"PE, machine 0x{struct.unpack_from('<H', data, at + 4)[0]:x}", data[at:at + 4] == b"PE\0\0"
    if data[:4] == b"\x7fELF":
        return f"ELF, machine 0x{struct.unpack_from('<H', data, 18)[0]:x}", True
    if data[:4] != b"\xcf\xfa\xed\xfe":
        return "of no known kind", False
    at, said = 32, ("no signature", False)
    for _ in range(struct.unpack_from("<I", data, 16)[0]):
        command, length = struct.unpack_from("<II", data, at)
        if command == 0x1D:
            said = signature(data, struct.unpack_from("<I", data, at + 8)[0])
        at += length
    return f"Mach-O, cpu 0x{struct.unpack_from('<I', data, 4)[0]:x}, {said[0]}", said[1]


good = True
for name in sys.argv[1:]:
    with open(name, "rb") as file:
        words, fits = kind(file.read())
    system = os.path.basename(os.path.dirname(os.path.abspath(name)))
    fits &= words.startswith(SYSTEMS.get(system, ""))
    print(f"{name}: {words}{'' if fits else ': NOT AS IT SHOULD BE'}")
    good &= fits
sys.exit(0 if good and len(sys.argv) > 1 else 1)
