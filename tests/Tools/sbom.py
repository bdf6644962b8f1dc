#!/usr/bin/env python3
"""Writes a software bill of materials (CycloneDX 1.5, JSON) of the program from src/SheetGen.Cli/packages.lock.json, to standard output: that of the single
file for one system where one is named, else of all. The runtime in the single files is the one that the restore took. Licences are read from the restored
packages. usage: tests/Tools/sbom.py [RID] > docs/sbom.cdx.json; tests/Tools/sbom.py --runtime RID gives the folder of that runtime's package.
SBOM_ASSETS in the environment names the restore's project.assets.json; left out, it is that of the ordinary build."""
import base64, glob, json, os, re, sys

root = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
cache = os.environ.get("NUGET_PACKAGES", os.path.expanduser("~/.nuget/packages"))
lock = json.load(open(os.path.join(root, "src/SheetGen.Cli/packages.lock.json")))["dependencies"]["net10.0"]
runtimes = {d["name"]: d["version"].strip("[]").split(",")[0]
            for f in json.load(open(os.environ.get("SBOM_ASSETS", os.path.join(root, "src/SheetGen.Cli/obj/project.assets.json"))))["project"]["frameworks"].values()
            for d in f.get("downloadDependencies", []) if d["name"].startswith("Microsoft.NETCore.App.Runtime.")}
version = re.search(r"<Version>([^<]+)", open(os.path.join(root, "src/Directory.Build.props")).read()).group(1)


def folder(name, of):
    return os.path.join(cache, name.lower(), of)


def licence(name, of):
    for nuspec in glob.glob(os.path.join(folder(name, of), "*.nuspec")):
        found = re.search(r'<license type="expression">([^<]+)', open(nuspec, encoding="utf-8-sig").read())
        if found:
            return found.group(1)
    sys.exit(f"no licence of {name} {of}: restore first")


if sys.argv[1:2] == ["--runtime"]:
    name = "Microsoft.NETCore.App.Runtime." + sys.argv[2]
    print(folder(name, runtimes[name]))
    sys.exit(0)

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
for name, at in sorted(runtimes.items()):
    if sys.argv[1:] and not name.endswith("." + sys.argv[1]):
        continue
    parts.append({
        "type": "framework", "bom-ref": f"pkg:nuget/{name}@{at}", "name": name, "version": at, "purl": f"pkg:nuget/{name}@{at}",
        "description": "The .NET runtime that the single file of this system carries; the tool package carries none.",
        "hashes": [{"alg": "SHA-512", "content": base64.b64decode(open(os.path.join(folder(name, at), f"{name.lower()}.{at}.nupkg.sha512")).read()).hex()}],
        "licenses": [{"license": {"id": licence(name, at)}}],
    })
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
