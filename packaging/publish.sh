#!/usr/bin/env bash
# Makes what is handed out, into a folder (default: out/packages): the .NET tool package, and for each system a folder with one file that needs no
# SDK, runtime, font or network. usage: packaging/publish.sh [FOLDER] [RID ...]
set -eu
cd "$(dirname "${BASH_SOURCE[0]}")/.."
folder="${1:-out/packages}"
shift || true
systems=("$@")
[ ${#systems[@]} -gt 0 ] || systems=(linux-x64 win-x64 osx-arm64)
mkdir -p "$folder"

# The tool package runs on any system that has the runtime, so it is packed without a system of its own.
dotnet pack src/SheetGen.Cli -c Release -o "$folder" -p:PackTool=true -p:UseCurrentRuntimeIdentifier=false -p:RuntimeIdentifiers= -p:PublishReadyToRun=false \
    -p:IsPublishing=true -p:NuGetLockFilePath=obj/packaging.lock.json

# The framework is compiled ahead already, so it is not compiled once more (Composite).
for rid in "${systems[@]}"; do
    # The host and the code compiled ahead are kept under one name for all systems; what another system left must not be taken for up to date.
    rm -rf src/SheetGen.Cli/obj/Release/net10.0/singlefilehost* src/SheetGen.Cli/obj/Release/net10.0/R2R
    dotnet publish src/SheetGen.Cli -c Release -r "$rid" --self-contained true -o "$folder/$rid" \
        -p:PublishSingleFile=true -p:IncludeNativeLibrariesForSelfExtract=true -p:DebugType=none -p:GenerateDocumentationFile=false \
        -p:PublishReadyToRunComposite=false -p:IsPublishing=true -p:NuGetLockFilePath=obj/packaging.lock.json
    cp LICENSE docs/third-party.md src/SheetGen.Writers/Fonts/OFL.txt "$folder/$rid/"
done
