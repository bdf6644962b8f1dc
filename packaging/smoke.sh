#!/usr/bin/env bash
# Installs what can run on this machine, each into an empty folder with no SDK and no fonts in reach, and builds a demo with it:
# every way of installing gives the same bytes; and looks at the files for the systems that cannot be run here. usage: packaging/smoke.sh [FOLDER made by publish.sh]
set -eu
root="$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)"
work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT
packages="${1:-$work/packages}"
demo="$root/demo/quarry-lane/wall.yaml"

# Publishing leaves the ordinary release build as it was (it once took its framework away): the same files where both can be seen, and it runs.
ordinary() { find "$root"/src/*/bin "$root"/src/*/obj -type f -exec sha256sum {} + 2>/dev/null | LC_ALL=C sort; }
release="$root/src/SheetGen.Cli/bin/Release/net10.0/SheetGen.Cli"
if [ ! -d "$packages" ]; then
    ordinary >"$work/before"
    PLAIN=1 "$root/packaging/publish.sh" "$packages" >"$work/publish.log" 2>&1 || { tail -20 "$work/publish.log"; exit 1; }
    ordinary | diff "$work/before" -
fi
[ ! -x "$release" ] || "$release" build "$demo" --out "$work/release" >/dev/null
python3 "$root/packaging/headers.py" "$packages"/*/SheetGen.Cli*

# The tool package: needs the runtime.
mkdir "$work/tool"
(cd "$work/tool" && cp "$demo" . && dotnet tool install SheetGen --tool-path bin --add-source "$packages" >/dev/null && bin/sheetgen build wall.yaml --out out >/dev/null)

[ ! -d "$work/release" ] || diff -r "$work/tool/out" "$work/release"

# The single file: alone in the folder, without any of the user's environment, in another zone and under another locale.
if [ "$(uname -s)-$(uname -m)" = Linux-x86_64 ]; then
    mkdir "$work/alone" "$work/alone/home"
    cp "$packages/linux-x64/SheetGen.Cli" "$demo" "$work/alone"
    (cd "$work/alone" && env -i HOME="$work/alone/home" PATH=/nowhere TZ=Asia/Tokyo LANG=de_DE.UTF-8 ./SheetGen.Cli build wall.yaml --out out >/dev/null)
    diff -r "$work/tool/out" "$work/alone/out"
    (cd "$work/alone" && taskset -c 0 env -i HOME="$work/alone/home" PATH=/nowhere ./SheetGen.Cli build wall.yaml --out one >/dev/null)
    diff -r "$work/tool/out" "$work/alone/one"
    # What the run's profile names is compiled ahead: without it some 2,000 methods are compiled during a check, with it some 400.
    DOTNET_JitStdOutFile="$work/compiled" DOTNET_JitDisasmSummary=1 "$work/alone/SheetGen.Cli" check "$work/alone/wall.yaml" >/dev/null
    compiled=$(grep -c '\[Tier0' "$work/compiled")
    [ "$compiled" -lt 1000 ] || { echo "$compiled methods are compiled during a check: the profile of runs was not used"; exit 1; }
fi
echo "installed and built: the same bytes from every package"
