#!/usr/bin/env bash
# Mutates the decider, the geometry and the code of kill, and prints a line each for the table in DEVELOPERS.md: date, folder, killed, survivors.
# Run by hand, seldom: `tests/mutate.sh deciding`, `space` or `kill`, or any file or folder below src/Compat. At most an hour each (MINUTES=…).
# With SDK 10.0.401 the tool was seen to install and start, but not to analyse these projects ("Failed to analyze project builds"): then nothing is mutated,
# and the script says so.
# First the near tests with 300 random cases; what survives once more with 10,000. Works on a copy of the tree. Needs jq, and NuGet for the tool.
set -euo pipefail
cd "$(dirname "$0")/.."
version=5.1.0
minutes="${MINUTES:-60}"
[ $# -eq 1 ] || { sed -n '2,7s/^# //p' "$0"; exit 2; }
command -v jq > /dev/null || { echo "needs jq"; exit 2; }

# What is mutated, and the tests that are near it.
random="FullyQualifiedName~Compat.Tests.Evaluation|FullyQualifiedName~Compat.Tests.Laws"
case "$1" in
  deciding) what=("Deciding/**/*.cs" "Reaching/**/*.cs") near="$random|FullyQualifiedName~Compat.Tests.Forms" ;;
  space) what=("Space/**/*.cs") near="$random|FullyQualifiedName~Compat.Tests.Space|FullyQualifiedName~Compat.Tests.Exposures" ;;
  kill) what=("Answers/Kill*.cs" "Answers/Claim*.cs" "Answers/Label*.cs" "Answers/Cloth*.cs" "Answers/Window*.cs" "Answers/Closure*.cs")
    near="FullyQualifiedName~Compat.Tests.Kill|FullyQualifiedName~Compat.Tests.Windows|FullyQualifiedName~Compat.Tests.Laws.Whole" ;;
  *.cs) what=("${1#src/Compat/}") near="$random|FullyQualifiedName~Compat.Tests.Kill|FullyQualifiedName~Compat.Tests.Windows" ;;
  *) what=("${1#src/Compat/}/**/*.cs") near="$random|FullyQualifiedName~Compat.Tests.Kill|FullyQualifiedName~Compat.Tests.Windows" ;;
esac

work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT
if ! dotnet tool install dotnet-stryker --version "$version" --tool-path "$work/tool" > "$work/log" 2>&1; then
  cat "$work/log"
  echo "dotnet-stryker $version cannot be installed here: nothing was mutated"
  exit 2
fi

mkdir "$work/tree"
git ls-files -z --cached --others --exclude-standard | xargs -0 cp --parents -t "$work/tree" 2> /dev/null || true
# A lock file would be written anew by the tool's own build; beside a solution it takes no test projects.
find "$work/tree" \( -name packages.lock.json -o -name Compat.sln \) -delete
# It looks at projects that were built once.
(cd "$work/tree" && dotnet build tests/Compat.Tests -c Release -v quiet -nologo -p:RunAnalyzers=false) > "$work/log" 2>&1 || { tail -n 30 "$work/log"; exit 1; }
# Mutants are built without analyzers: what they find fault with is no mutant killed.
cat > "$work/tree/stryker.json" <<C
{ "stryker-config": {
  "project": "Compat.csproj", "test-projects": ["tests/Compat.Tests/Compat.Tests.csproj"], "target-framework": "net10.0", "configuration": "Release",
  "test-case-filter": "$near", "coverage-analysis": "perTest", "mutation-level": "Standard", "reporters": ["json"], "concurrency": 2,
  "additional-timeout": 20000 } }
C

# mutate CASES PATTERN...: one run; its report is left in $work/report.json.
mutate() {
  local cases="$1" patterns=()
  shift
  for pattern in "$@"; do patterns+=(--mutate "$pattern"); done
  rm -rf "$work/out"
  (
    cd "$work/tree"
    COMPAT_RANDOM_CASES="$cases" RunAnalyzers=false TreatWarningsAsErrors=false \
      timeout "${minutes}m" "$work/tool/dotnet-stryker" -f stryker.json -O "$work/out" --skip-version-check "${patterns[@]}" > "$work/log" 2>&1
  ) || { tail -n 30 "$work/log"; echo "no report after at most $minutes minutes"; exit 1; }
  find "$work/out" -name '*.json' -path '*reports*' -exec cp {} "$work/report.json" \;
}

# Of a report the mutants that lived: file, place in it, place in its text, what was written.
lived='.files | to_entries[] | .key as $file | .value.source as $text | ($text | split("\n") | map(length + 1)) as $lengths
  | def at: ($lengths[0:(.line - 1)] | add // 0) + .column - 1;
  .value.mutants[] | select(.status == "Survived" or .status == "NoCoverage")
  | [$file, "\(.location.start.line):\(.location.start.column)", "\(.location.start | at)..\(.location.end | at)", (.replacement | gsub("\\s+"; " "))] | @tsv'
count() { jq "[.files[].mutants[] | select($1)] | length" "$work/report.json"; }

from=$SECONDS
mutate 300 "${what[@]}"
all="$(count '.status == "Killed" or .status == "Timeout" or .status == "Survived" or .status == "NoCoverage"')"
jq -r "$lived" "$work/report.json" | sort > "$work/first"
cp "$work/first" "$work/last"
if [ -s "$work/first" ]; then
  mapfile -t again < <(awk -F '\t' '{ file = $1; sub(/^.*src\/Compat\//, "", file); print file "{" $3 "}" }' "$work/first" | sort -u)
  mutate 10000 "${again[@]}"
  jq -r "$lived" "$work/report.json" | sort | comm -12 "$work/first" - > "$work/last"
fi

survived="$(wc -l < "$work/last")"
sed 's/^/survived: /' "$work/last" | cut -f 1,2,4 --output-delimiter='  '
awk -v d="$(date +%F)" -v w="$1" -v a="$all" -v f="$(wc -l < "$work/first")" -v s="$survived" -v m="$(((SECONDS - from) / 60))" \
  'BEGIN { printf "| %s | %s | %d of %d (%.0f %%) | %d (%d before the second try) | %d min |\n", d, w, a - s, a, a ? 100 * (a - s) / a : 0, s, f, m }'
