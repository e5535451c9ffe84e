#!/usr/bin/env bash
# Prints the median wall time of one question beside that of an empty program, and of a check of the shipped data, published in the same way
# (compiled ahead for this machine, run by `dotnet`); the check also as built, compiled as it runs. Asserts nothing.
set -euo pipefail
root="$(cd "$(dirname "$0")/.." && pwd)"
work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT
runs=7

# A copy without lock files: publishing for one kind of machine would rewrite them.
mkdir "$work/tree" "$work/empty"
cp -r "$root/src" "$root/schemas" "$root"/Directory.*.props "$root/global.json" "$root/.editorconfig" "$work/tree/"
find "$work/tree" \( -name packages.lock.json -o -name bin -o -name obj \) -prune -exec rm -rf {} +
cat > "$work/empty/empty.csproj" <<'P'
<Project Sdk="Microsoft.NET.Sdk">
  <PropertyGroup>
    <OutputType>Exe</OutputType>
    <TargetFramework>net10.0</TargetFramework>
    <InvariantGlobalization>true</InvariantGlobalization>
  </PropertyGroup>
</Project>
P
echo 'System.Console.WriteLine("nothing");' > "$work/empty/Program.cs"
ahead=(-c Release --use-current-runtime --self-contained false -p:PublishReadyToRun=true -v quiet --nologo)
dotnet publish "$work/empty/empty.csproj" -o "$work/empty-out" "${ahead[@]}"
dotnet publish "$work/tree/src/Compat.Cli/Compat.Cli.csproj" -o "$work/compat-out" "${ahead[@]}"

median() {
  local i start end
  "$@" > /dev/null 2>&1 || true
  for ((i = 0; i < runs; i++)); do
    start=$(date +%s%N)
    "$@" > /dev/null 2>&1 || true
    end=$(date +%s%N)
    echo $(((end - start) / 1000))
  done | sort -n | sed -n "$(((runs + 1) / 2))p"
}

empty=$(median dotnet "$work/empty-out/empty.dll")
compat=$(median dotnet "$work/compat-out/Compat.Cli.dll" ask --part display-coated --agent isopropanol --strength "70 % v/v" --method damp-wipe)
awk -v e="$empty" -v c="$compat" 'BEGIN { printf "cold start, median: empty program %.1f ms, compat ask %.1f ms, ratio %.2f\n", e / 1000, c / 1000, c / e }'
check=$(median dotnet "$work/compat-out/Compat.Cli.dll" check "$root/data")
built="$root/src/Compat.Cli/bin/Release/net10.0/Compat.Cli.dll"
awk -v c="$check" 'BEGIN { printf "check of the shipped data, process start included, median: compiled ahead %.0f ms", c / 1000 }'
if [ -f "$built" ]; then awk -v c="$(median dotnet "$built" check "$root/data")" 'BEGIN { printf ", as built %.0f ms", c / 1000 }'; fi
echo
