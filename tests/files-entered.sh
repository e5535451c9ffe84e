#!/usr/bin/env bash
# Counts the files of ours that one call enters: every method that is compiled on the way is looked up by the type it stands in.
# Use: tests/files-entered.sh [DLL of the command, built for Release]; prints one file a line, then the count. Exit code 1: more than $MOST (60).
set -euo pipefail
cd "$(dirname "$0")/.."
dll=${1:-src/Compat.Cli/bin/Release/net10.0/Compat.Cli.dll}
most=${MOST:-60}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

DOTNET_JitStdOutFile=$work/jit DOTNET_JitDisasmSummary=1 DOTNET_TieredCompilation=1 dotnet "$dll" \
    ask --part display-coated --agent isopropanol --strength "70 % v/v" --method damp-wipe > "$work/answer" || [ $? -ne 2 ]

# `  12: JIT compiled Compat.Cli.Page:Line(System.String):this [Tier0, …]`: the outermost type, without what it is generic over.
sed -nE 's/^ *[0-9]+: JIT compiled ([^ ]*) *.*$/\1/p; s/^ *[0-9]+: JIT compiled \(dynamicClass\).*$//p' "$work/jit" \
    | grep -E '^(Compat[.A-Za-z]*\.)?[A-Z]' | sed -E 's/:.*//; s/[`+\[<].*//' | sort -u > "$work/types"

# Where each type of ours is declared; a partial one is declared in several files, of which one is entered at least.
grep -rHoE --include='*.cs' '^(public |internal |file |sealed |static |abstract |readonly |ref |partial )*(class|record struct|record|struct|interface|enum) [A-Za-z0-9]+' src \
    | grep -v '/obj/' | sed -E 's/^([^:]*):.* ([A-Za-z0-9]+)$/\2 \1/' | sort -u > "$work/declared"

awk -v types="$work/types" '
    BEGIN { while ((getline line < types) > 0) { n = split(line, part, "."); if (n == 1 || line ~ /^Compat/) name[part[n]] = line } }
    $1 in name && !($1 in file) { file[$1] = $2 }
    END { for (one in file) print file[one]; if ("Program" in name) print "src/Compat.Cli/Program.cs" }' "$work/declared" | sort -u > "$work/files"

cat "$work/files"
count=$(wc -l < "$work/files")
echo "files entered: $count (at most $most)"
[ "$count" -le "$most" ]
