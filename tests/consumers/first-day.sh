#!/usr/bin/env bash
# The first day of a new user with the installed tool, in an empty folder: readme (the lines of the readme, timed), bad (bad input of each kind), killed (runs
# killed at random moments). Usage: first-day.sh readme|bad|killed COMPAT-PROGRAM. All devices, products and makers in first-day/ are invented.
set -uo pipefail
root="$(cd "$(dirname "$0")/../.." && pwd)"
compat="$2"
folder="$(mktemp -d)"
trap 'rm -rf "$folder"' EXIT
cd "$folder"
fail() { echo "wrong: $*"; exit 1; }
compat() { "$compat" "$@"; }
no_litter() { ! compgen -G '.*.???' > /dev/null; }

new_site() {
  cp "$root"/tests/consumers/first-day/* .
  compat site new --out my-site.yaml > new.txt || fail "site new"
}

# Runs a command that must be refused: exit code 2, the words in its notes, the site file as it was, nothing left beside it.
refused() {
  local words="$1" before after
  shift
  before="$(sha256sum my-site.yaml)"
  "$compat" "$@" > out.txt 2> err.txt
  [ $? -eq 2 ] || fail "$* should be refused: $(cat err.txt)"
  tr -s ' \n' '  ' < err.txt | grep -qF "$words" || fail "$* should say '$words': $(cat err.txt)"
  after="$(sha256sum my-site.yaml)"
  [ "$before" = "$after" ] && no_litter || fail "$* left something behind"
  echo "refused: $(head -1 err.txt)"
}

readme() {
  local start line said code from
  cp "$root"/tests/consumers/first-day/* .
  start=$(date +%s%N)
  sed -n '/^### The first day$/,/^### /p' "$root/README.md" | sed -n '/^```sh$/,/^```$/p' | sed '1d;$d' > lines.txt
  [ "$(wc -l < lines.txt)" -ge 6 ] || fail "the readme has no first day"
  grep -q -- '--card' lines.txt || fail "the readme makes no ward card"
  while IFS= read -r line; do
    # The line for one product serves for each of the five.
    for from in $(case "$line" in *add-product*) ls ./*-wipe.yaml mild-detergent.yaml chlorine-stock.yaml | sed 's|^\./||' ;; *) echo - ;; esac); do
      said="${line/spirit-wipe.yaml/$from}"
      local at=$(date +%s%N)
      eval "$said" > out.txt 2> err.txt < /dev/null
      code=$?
      [ "$code" -ne 2 ] || fail "$said: $(cat err.txt)"
      awk -v t=$((($(date +%s%N) - at) / 1000000)) -v c="$code" -v l="$said" 'BEGIN { printf "%6.2f s, exit %s: %s\n", t / 1000, c, l }'
      case "$line" in *' shelf '*) cp out.txt shelf.txt ;; esac
      case "$line" in *' import '*) cp out.txt import.txt ;; esac
    done
  done < lines.txt
  grep -q '^40 rows: 39 placed on .* 1 not placed$' import.txt || fail "not every row was placed or reported: $(tail -1 import.txt)"
  grep -q '^row 40 not placed: no pattern has its words: .*Fax machine' import.txt || fail "the row that has no place is not named"
  grep -q ', 5 products; ' shelf.txt || fail "the shelf has not five products: $(tail -12 shelf.txt)"
  grep -q '<h2>Never</h2>' infusion-pump.html || fail "no ward card"
  awk -v t=$((($(date +%s%N) - start) / 1000000)) 'BEGIN { printf "first day: 40 devices and 5 products to a shelf table and a ward card in %.1f s\n", t / 1000 }'
}

bad() {
  new_site
  printf 'No;Description\n1;slit lamp\n2;"couch\n' > quote.csv
  refused 'row 3, column 2 (`Description`): a quote is opened and never closed' site import my-site.yaml quote.csv --columns device=Description
  printf 'No,Description\n1,"slit" lamp\n' > behind.csv
  refused 'row 2, column 2 (`Description`): there is text behind the closing quote' site import my-site.yaml behind.csv --columns device=Description
  refused 'there is no column `Kind`' site import my-site.yaml devices.csv --columns device=Kind
  sed 's/cas: "67-63-0"/cas: "67-63-1"/' spirit-wipe.yaml > cas.yaml
  refused '`67-63-1` is no CAS number: its check digit does not hold' site add-product my-site.yaml --from cas.yaml
  grep -q 'cas.yaml:7:14: ' err.txt || fail "the CAS number's row and column are not shown: $(cat err.txt)"
  sed 's/- { cas: "67-63-0", strength: "70 % v\/v" }/- { cas: "67-63-0", strength: "70..80 % v\/v" }\n    - { agent: ethanol, strength: "40..50 % v\/v" }/' spirit-wipe.yaml > over.yaml
  refused 'add up to 110 %, over 100 %' site add-product my-site.yaml --from over.yaml
  grep -q 'over.yaml:[0-9]*:[0-9]*: ' err.txt || fail "the place of what exceeds 100 % is not shown"
  compat site add-product my-site.yaml --from spirit-wipe.yaml > out.txt || fail "a product that is right"
  refused 'there is a product `spirit-wipe` already' site add-product my-site.yaml --from spirit-wipe.yaml
  # A cell that a spreadsheet would run is text, and comes out as text.
  printf 'No;Description;Type\n1;couch;=1+1\n' > formula.csv
  compat site import my-site.yaml formula.csv --columns device=Description --columns model=Type > out.txt || fail "a formula cell is text: $(cat out.txt)"
  grep -q 'name: .*examination couch =1+1' my-site.yaml || fail "the formula cell was not kept as text"
  compat shelf --site my-site.yaml --format csv > shelf.csv
  [ $? -le 1 ] && ! grep -Eq '(^|,)"?[=+@]' shelf.csv || fail "a cell of the table would be run by a spreadsheet"
  awk 'BEGIN { print "No;Description;Type"; for (i = 1; i <= 200000; i++) print i ";" (i % 10000 ? "infusion pump" : "kettle") ";" }' > long.csv
  local at=$(date +%s%N)
  compat site import my-site.yaml long.csv > out.txt 2> err.txt
  [ $? -eq 1 ] && grep -q '^200000 rows: 199980 placed on 1 devices, 20 not placed$' out.txt || fail "200,000 rows: $(tail -3 out.txt) $(cat err.txt)"
  awk -v t=$((($(date +%s%N) - at) / 1000000)) 'BEGIN { printf "200,000 rows read and placed in %.1f s\n", t / 1000 }'
}

killed() {
  new_site
  cp my-site.yaml old.yaml
  local at=$(date +%s%N) whole before=0 after=0 i
  compat site import my-site.yaml devices.csv --columns device=Description > out.txt
  whole=$(($(date +%s%N) - at))
  cp my-site.yaml whole.yaml
  for i in $(seq 24); do
    cp old.yaml my-site.yaml
    # A file of somebody else's beside it is never touched.
    [ $((i % 3)) -ne 0 ] || echo 'half of a' > my-site.yaml.new
    "$compat" site import my-site.yaml devices.csv --columns device=Description > /dev/null 2>&1 &
    # At any moment of a run, and a little after its end.
    sleep "$(awk -v w="$whole" -v s="$RANDOM" -v i="$i" 'BEGIN { printf "%.3f", w / 1e9 * 1.3 * (i % 6 + s / 32768) / 6 }')"
    kill -9 $! 2> /dev/null
    wait $! 2> /dev/null
    if cmp -s my-site.yaml old.yaml; then before=$((before + 1)); elif cmp -s my-site.yaml whole.yaml; then after=$((after + 1)); else fail "a killed run left half a file"; fi
  done
  compat site import my-site.yaml devices.csv --columns device=Description > out.txt
  cmp -s my-site.yaml whole.yaml && [ "$(cat my-site.yaml.new)" = 'half of a' ] || fail "the next run does not put it right"
  echo "24 runs killed: $before left the old file, $after were done"
}

"$1"
