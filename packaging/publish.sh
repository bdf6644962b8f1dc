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

# What is compiled just in time while the demos run, so that it can be compiled ahead below.
profile() {
    local built=src/SheetGen.Cli/bin/Release/net10.0 profiles=src/SheetGen.Cli/obj/profiles demo
    rm -rf "$profiles"
    mkdir -p "$profiles"
    dotnet build packaging/RunProfile -c Release -o "$profiles/hook"
    sed 's/\(EventSource.IsSupported": \)false/\1true/' "$built/SheetGen.Cli.runtimeconfig.json" >"$profiles/seen.runtimeconfig.json"
    for demo in demo/*/; do
        for command in check "build --out $profiles/out"; do
            RUN_PROFILE="$profiles/$(basename "$demo")-${command%% *}.mibc" DOTNET_STARTUP_HOOKS="$PWD/$profiles/hook/RunProfile.dll" \
                dotnet exec --runtimeconfig "$profiles/seen.runtimeconfig.json" --depsfile "$built/SheetGen.Cli.deps.json" "$built/SheetGen.Cli.dll" \
                $command "$demo/wall.yaml" >/dev/null
        done
    done
}

# The framework goes with the program, so both can be compiled ahead as one (Composite), and with it the framework's generic code over the program's types, as far
# as runs of the demos tell (profile): a cold check takes a third less. It is done for the one system where what comes out is run before it is handed out
# (smoke.sh); the others keep the plain form.
for rid in "${systems[@]}"; do
    # The host and the code compiled ahead are kept under one name for all systems; what another system left must not be taken for up to date.
    rm -rf src/SheetGen.Cli/obj/Release/net10.0/singlefilehost* src/SheetGen.Cli/obj/Release/net10.0/R2R
    composite=false
    [ "$rid" = linux-x64 ] && composite=true && profile
    dotnet publish src/SheetGen.Cli -c Release -r "$rid" --self-contained true -o "$folder/$rid" \
        -p:PublishSingleFile=true -p:IncludeNativeLibrariesForSelfExtract=true -p:DebugType=none -p:GenerateDocumentationFile=false \
        -p:PublishReadyToRunComposite=$composite -p:IsPublishing=true -p:NuGetLockFilePath=obj/packaging.lock.json
    cp LICENSE docs/third-party.md src/SheetGen.Writers/Fonts/OFL.txt "$folder/$rid/"
done
