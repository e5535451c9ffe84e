#!/usr/bin/env bash
# Takes the packed files as a stranger would: in a folder of its own, knowing nothing of this repository.
# The last line is "N passed, N failed, N skipped". What needs a linker is skipped by name where there is none;
# `.ci/run` fails with CI=true where one could be installed.
set -uo pipefail
root="$(cd "$(dirname "$0")/../.." && pwd)"
work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_CLI_UI_LANGUAGE=en
passed=0 failed=0 skipped=0

step() {
  local name="$1"
  shift
  if "$@" > "$work/log" 2>&1; then
    passed=$((passed + 1))
    echo "passed: $name"
  else
    failed=$((failed + 1))
    echo "failed: $name"
    cat "$work/log"
  fi
}

# Packages already on this machine serve, but never an older Compat: the packed ones come first, into a folder of their own.
mkdir -p "$work/feed" "$work/feed2"
known="${NUGET_PACKAGES:-$HOME/.nuget/packages}"
export NUGET_PACKAGES="$work/packages"
version="0.1.0-consumer.$$"
cp -r "$root/tests/consumers/console" "$root/tests/consumers/service" "$work/"
cat > "$work/nuget.config" <<C
<configuration>
  <packageSources><add key="packed" value="$work/feed" /></packageSources>
  <fallbackPackageFolders><clear /><add key="known" value="$known" /></fallbackPackageFolders>
</configuration>
C
sed -i "s/Version=\"\*\"/Version=\"$version\"/" "$work"/*/*.csproj

pack() { for project in Compat Compat.Curation Compat.Cli; do NUGET_PACKAGES="$known" dotnet pack "$root/src/$project" -c Release -v quiet -p:Version="$version" -o "$1" || return 1; done; }
packs() {
  pack "$work/feed" && pack "$work/feed2" || return 1
  (cd "$work/feed" && sha256sum ./*) > "$work/first" && (cd "$work/feed2" && sha256sum ./*) > "$work/second"
  [ "$(wc -l < "$work/first")" -eq 6 ] && diff "$work/first" "$work/second"
}
step "three packages and their symbols are packed, twice the same bytes" packs

# The lines of the readme, as the body of a method.
readme() { sed -n '/^```csharp$/,/^```$/p' "$root/README.md" | sed '1d;$d'; }
{
  readme | grep '^using '
  echo 'Console.WriteLine(Sample.Ask());'
  echo 'internal static class Sample { public static string Ask() {'
  readme | grep -v '^using '
  echo '} }'
} > "$work/console/Program.cs"
console() { dotnet run --project "$work/console" -c Release | tee "$work/said" && grep -q '^NotAllowed: RuleForbids ' "$work/said"; }
step "a console program with the lines of the readme" console

tool() {
  (cd "$work" && dotnet tool install Compat.Cli --version "$version" --tool-path "$work/tools" --configfile "$work/nuget.config") || return 1
  "$work/tools/compat" ask --part display-coated --agent isopropanol --strength "70 % v/v" --method damp-wipe
  [ $? -eq 1 ] && "$work/tools/compat" find bleach
}
step "the tool installed and run" tool

step "the first day by the lines of the readme" bash "$root/tests/consumers/first-day.sh" readme "$work/tools/compat"
grep ' s' "$work/log"
step "bad input of each kind, and nothing half-written" bash "$root/tests/consumers/first-day.sh" bad "$work/tools/compat"
grep '^200,000' "$work/log"
step "a site import killed at random moments" bash "$root/tests/consumers/first-day.sh" killed "$work/tools/compat"
cat "$work/log" | tail -1

service() { dotnet run --project "$work/service" -c Release; }
step "a web service under parallel clients" service
cat "$work/log" | tail -1

linker="$(command -v clang || command -v gcc || true)"
if [ -n "$linker" ]; then
  ahead=(-c Release -r "linux-$(uname -m | sed 's/x86_64/x64/;s/aarch64/arm64/')" -p:PublishAot=true -p:CppCompilerAndLinker="$(basename "$linker")" -v quiet)
  native() { dotnet publish "$work/console" "${ahead[@]}" -o "$work/native" && "$work/native/console" | tee "$work/said" && grep -q '^NotAllowed: RuleForbids ' "$work/said"; }
  step "a native program that asks a question" native
  mkdir "$work/empty"
  sed '/PackageReference/d' "$work/console/console.csproj" > "$work/empty/empty.csproj"
  echo 'System.Console.WriteLine("nothing");' > "$work/empty/Program.cs"
  empty() { dotnet publish "$work/empty" "${ahead[@]}" -o "$work/empty-native"; }
  step "an empty native program beside it" empty
  median() { for _ in $(seq 21); do s=$(date +%s%N); "$1" > /dev/null; e=$(date +%s%N); echo $(((e - s) / 1000)); done | sort -n | sed -n 11p; }
  if [ -x "$work/native/console" ] && [ -x "$work/empty-native/empty" ]; then
    awk -v e="$(median "$work/empty-native/empty")" -v c="$(median "$work/native/console")" 'BEGIN { printf "cold native start, median of 21: empty %.1f ms, first answer %.1f ms, ratio %.2f\n", e / 1000, c / 1000, c / e }'
  fi
else
  skipped=$((skipped + 1))
  echo "skipped: a native program that asks a question: no linker (clang or gcc)"
fi

echo "$passed passed, $failed failed, $skipped skipped"
[ "$failed" -eq 0 ]
