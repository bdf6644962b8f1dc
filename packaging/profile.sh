#!/usr/bin/env bash
# Makes src/SheetGen.Cli/RunProfile.mibc anew: what of the framework's generic code a build of the bridge demo compiles just in time, so that it can be compiled ahead.
# Run it when ReleaseBuildTests says that too much is compiled; a profile that is behind the code costs time and nothing else.
set -eu
cd "$(dirname "${BASH_SOURCE[0]}")/.."
made="$PWD/out/profile"
rm -rf "$made"
dotnet build packaging/RunProfile -c Release -p:RestoreLockedMode=true -o "$made/hook"
dotnet publish src/SheetGen.Cli -c Release -p:RestoreLockedMode=true --artifacts-path "$made" -p:IsPublishing=true -p:RunProfile= -o "$made/program"
sed 's/\(EventSource.IsSupported": \)false/\1true/' "$made/program/SheetGen.Cli.runtimeconfig.json" >"$made/seen.runtimeconfig.json"
RUN_PROFILE="$PWD/src/SheetGen.Cli/RunProfile.mibc" DOTNET_STARTUP_HOOKS="$made/hook/RunProfile.dll" \
    dotnet exec --runtimeconfig "$made/seen.runtimeconfig.json" --depsfile "$made/program/SheetGen.Cli.deps.json" "$made/program/SheetGen.Cli.dll" \
    build demo/heron-street-bridge/wall.yaml --out "$made/out" >/dev/null
