#!/usr/bin/env bash
# The whole test suite, as the README's test command runs it. Installs what is missing when it can,
# otherwise says exactly what to install and fails. The last line is always "N passed, N failed".
set -uo pipefail
cd "$(dirname "$0")/.."

stop() { echo "$1" >&2; echo "0 passed, 1 failed"; exit 1; }

[ -d node_modules/vitest ] || npm ci --no-audit --no-fund || stop "npm ci did not finish: see its messages above."

if ! command -v chromium >/dev/null; then
  echo "chromium is missing: installing it from Debian's packages" >&2
  if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; then
    apt-get update -qq >&2 && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends chromium >&2 \
      || stop "Could not install chromium. Install it yourself: apt-get install chromium"
  else
    stop "The page tests need Chromium. Install it and run again: sudo apt-get install chromium"
  fi
fi

for package in influxdb mosquitto openssl; do
  case "$package" in influxdb) program=influxd ;; *) program=$package ;; esac
  PATH="$PATH:/usr/sbin" command -v "$program" >/dev/null && continue
  echo "$package is missing: installing it from Debian's packages" >&2
  if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; then
    apt-get update -qq >&2 && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$package" >&2 \
      || stop "Could not install $package. Install it yourself: apt-get install $package"
  else
    stop "The tests of external servers need $package. Install it and run again: sudo apt-get install $package"
  fi
done

# Journeys and page tests run what `npm start` runs; the page tests need not build it again.
npm run -s build >&2 || stop "npm run build did not finish: see its messages above."
export GLASSTIDE_BUILT_DASHBOARD="$PWD/dist/dashboard"

report=tmp/test-report.json
mkdir -p tmp && rm -f "$report"
npx vitest run --reporter=default --reporter=json --outputFile.json="$report" "$@"
node tests/summary.mjs "$report"
