#!/usr/bin/env python3
"""Writes a software bill of materials (CycloneDX 1.5, JSON) of the program from src/SheetGen.Cli/packages.lock.json, to standard output.
Licences are read from the restored packages. usage: tests/Tools/sbom.py > docs/sbom.cdx.json"""
import base64, glob, json, os, re, sys

root = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
cache = os.environ.get("NUGET_PACKAGES", os.path.expanduser("~/.nuget/packages"))
lock = json.load(open(os.path.join(root, "src/SheetGen.Cli/packages.lock.json")))["dependencies"]["net10.0"]
version = re.search(r"<Version>([^<]+)", open(os.path.join(root, "src/Directory.Build.props")).read()).group(1)


def licence(name, of):
    for nuspec in glob.glob(os.path.join(cache, name.lower(), of, "*.nuspec")):
        found = re.search(r'<license type="expression">([^<]+)', open(nuspec, encoding="utf-8-sig").read())
        if found:
            return found.group(1)
    sys.exit(f"no licence of {name} {of}: restore first")


parts, links = [], []
for name, entry in sorted(lock.items(), key=lambda e: e[0].lower()):
    if entry["type"] == "Project":
        continue
    at = entry["resolved"]
    parts.append({
        "type": "library", "bom-ref": f"pkg:nuget/{name}@{at}", "name": name, "version": at, "purl": f"pkg:nuget/{name}@{at}",
        "hashes": [{"alg": "SHA-512", "content": base64.b64decode(entry["contentHash"]).hex()}],
        "licenses": [{"license": {"id": licence(name, at)}}],
    })
    links.append({"ref": f"pkg:nuget/{name}@{at}", "dependsOn": sorted(
        f"pkg:nuget/{d}@{lock[d]['resolved']}" for d in entry.get("dependencies", {}) if d in lock and "resolved" in lock[d])})
parts.append({
    "type": "data", "bom-ref": "pkg:npm/%40expo-google-fonts/arimo@0.4.3", "name": "Arimo Regular and Bold", "version": "0.4.3",
    "purl": "pkg:npm/%40expo-google-fonts/arimo@0.4.3", "licenses": [{"license": {"id": "OFL-1.1"}}],
})
json.dump({
    "bomFormat": "CycloneDX", "specVersion": "1.5", "version": 1,
    "metadata": {"component": {"type": "application", "bom-ref": "sheetgen", "name": "SheetGen", "version": version}},
    "components": parts, "dependencies": [{"ref": "sheetgen", "dependsOn": [p["bom-ref"] for p in parts]}, *links],
}, sys.stdout, indent=2)
print()
