#!/usr/bin/env bash
# The long run, for a night: every random test ten times as long as usual (`tests/long.sh 30` for thirty times), from another seed each day,
# and the benchmarks whole. Prints the seed: COMPAT_RANDOM_SEED=… gives the same run again.
set -uo pipefail
cd "$(dirname "$0")/.."
export COMPAT_RANDOM_TIMES="${1:-10}" COMPAT_RANDOM_SEED="${COMPAT_RANDOM_SEED:-$(date +%Y%m%d)}"
echo "COMPAT_RANDOM_TIMES=$COMPAT_RANDOM_TIMES COMPAT_RANDOM_SEED=$COMPAT_RANDOM_SEED"
dotnet test Compat.sln -c Release --logger "console;verbosity=minimal"
code=$?
dotnet run --project tests/Compat.Benchmarks -c Release || code=1
exit "$code"
