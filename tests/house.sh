#!/usr/bin/env bash
# Prints the figures of the house, each beside what it should be, and fails on those that must hold. Then the field experiment: a copy of the tree
# gains a field that decides nothing and one that decides, at the places listed here, and is built and tested. `tests/house.sh figures` leaves it out.
set -uo pipefail
cd "$(dirname "$0")/.."
export LC_ALL=C.UTF-8 DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1
bad=0

# figure NAME VALUE [MOST [must]]: a figure that is at most MOST; fails where it must hold and does not.
figure() {
  local name="$1" value="$2" most="${3:-}" must="${4:-}"
  if [ -z "$most" ]; then
    printf '%8s  %s\n' "$value" "$name"
  elif [ "$value" -le "$most" ]; then
    printf '%8s  %s (at most %s)\n' "$value" "$name" "$most"
  elif [ -n "$must" ]; then
    printf '%8s  %s: FAILS, at most %s\n' "$value" "$name" "$most"
    bad=1
  else
    printf '%8s  %s (aim: at most %s)\n' "$value" "$name" "$most"
  fi
}

sources() { find "$@" -name '*.cs' -not -path '*/obj/*' -not -path '*/bin/*' -print0; }
lines() { sources "$@" | xargs -0 cat | wc -l; }
# matches PATTERN PLACE...: how many lines match.
matches() {
  local pattern="$1"
  shift
  sources "$@" | xargs -0 grep -hE "$pattern" | wc -l
}

echo "lines of C#:"
for project in src/Compat src/Compat.Curation src/Compat.Cli; do figure "$project" "$(lines "$project")"; done
figure "all three" "$(lines src/Compat src/Compat.Curation src/Compat.Cli)" 30000
echo "lines over 160 columns:"
figure "src" "$(matches '^.{161,}' src)" 0
figure "tests" "$(matches '^.{161,}' tests)" 0

echo "one geometry:"
figure "places that take an axis by its number" "$(matches '\[\(int\)(Axis\.|axis\b|other\b)|\[(Piece|WindowAxes|ClaimOnAxes)\.[A-Z]' src)" 0
figure "arrays of spans or stretches" "$(matches '\b(Span|Stretch)\[\]|new (Span|Stretch)\[' src)" 0
figure "arrays of ends by axis" "$(matches '\bint\[\] (Low|High|low|high)\b|new int\[CompiledRule\.AxisCount\]' src)" 0

# Words that only a clause of the decision has: who writes one elsewhere decides a second time.
echo "the words of a clause, outside the engine:"
for word in 'IsSetAside|SetsAside' 'OverridersOf' 'IsLive' 'AllowedPasses|PermissionPasses' 'EndsNowhere' 'MaterialsBearOut|CompositionSuffices'; do
  elsewhere="$(sources src | xargs -0 grep -lE "\b($word)\b" | grep -vE '^src/Compat/(Deciding|Reaching)/' | sort)"
  figure "$word" "$(printf '%s' "$elsewhere" | grep -c .)" 0
  if [ -n "$elsewhere" ]; then printf '%s\n' "$elsewhere" | sed 's/^/            /'; fi
done

echo "schemas:"
dotnet run --project tests/Compat.Benchmarks -c Release --no-build -- schemas || bad=1

if [ -f tests/files-entered.sh ]; then
  echo "one question:"
  entered="$(bash tests/files-entered.sh | grep -oE '[0-9]+' | head -n 1)"
  figure "files that a traced ask enters" "${entered:-0}" 60
fi

if [ "${1:-}" != figures ] && [ -f tests/field-experiment.sh ]; then bash tests/field-experiment.sh || bad=1; fi
exit "$bad"
