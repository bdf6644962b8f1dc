#!/usr/bin/env bash
# Makes what is handed out, into a folder (default: out/packages): the .NET tool package, and for each system a folder with one file that needs no
# SDK, runtime, font or network. usage: packaging/publish.sh [FOLDER] [RID ...]
# With PLAIN=1 in the environment files for systems other than Linux are not compiled ahead: the same kind of file in a fraction of the time, for tests.
set -eu
cd "$(dirname "${BASH_SOURCE[0]}")/.."
folder="${1:-out/packages}"
shift || true
systems=("$@")
[ ${#systems[@]} -gt 0 ] || systems=(linux-x64 win-x64 osx-arm64)
mkdir -p "$folder"

# All that is built on the way stands here, anew each time: apart from the ordinary build (src/*/bin, src/*/obj), which stays as it is, and apart for each system.
made="$PWD/out/publish"
rm -rf "$made"
export SBOM_ASSETS="$made/obj/SheetGen.Cli/project.assets.json"
apart=(--artifacts-path "$made" -p:AppendRuntimeIdentifierToOutputPath=true)

# What is handed out is made of the packages that packages.lock.json names, and of no other. The runtime comes with the SDK (global.json); the bill of
# materials beside each file says which one it was.
dotnet restore src/SheetGen.Cli --locked-mode --artifacts-path "$made"

# The tool package runs on any system that has the runtime, so it is packed without a system of its own.
dotnet pack src/SheetGen.Cli -c Release --no-restore "${apart[@]}" -o "$folder" -p:PackTool=true -p:UseCurrentRuntimeIdentifier=false -p:RuntimeIdentifiers= -p:PublishReadyToRun=false \
    -p:IsPublishing=true

# The framework goes with the program, so both can be compiled ahead as one (Composite), and with it the framework's generic code over the program's types, as far
# as a run of the demo tells (profile.sh): a cold check takes a third less. It is done for the one system where what comes out is run before it is handed out
# (smoke.sh); the others keep the plain form.
for rid in "${systems[@]}"; do
    composite=false ahead=true
    if [ "$rid" = linux-x64 ]; then
        composite=true
    elif [ "${PLAIN:-}" = 1 ]; then
        ahead=false
    fi
    dotnet publish src/SheetGen.Cli -c Release -r "$rid" --self-contained true --no-restore "${apart[@]}" -o "$folder/$rid" \
        -p:PublishSingleFile=true -p:IncludeNativeLibrariesForSelfExtract=true -p:DebugType=none -p:GenerateDocumentationFile=false \
        -p:PublishReadyToRun=$ahead -p:PublishReadyToRunComposite=$composite -p:IsPublishing=true
    cp LICENSE docs/third-party.md src/SheetGen.Drawing/Fonts/OFL.txt "$folder/$rid/"
    # The runtime that goes with the file is made of the work of others too, who ask to be named.
    runtime="$(python3 tests/Tools/sbom.py --runtime "$rid")"
    cp "$runtime/LICENSE.TXT" "$folder/$rid/dotnet-LICENSE.txt"
    cp "$runtime/THIRD-PARTY-NOTICES.TXT" "$folder/$rid/dotnet-THIRD-PARTY-NOTICES.txt"
    python3 tests/Tools/sbom.py "$rid" >"$folder/$rid/sbom.cdx.json"
done
