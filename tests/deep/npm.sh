# Sourced: brings what reads from outside into the folder it is called in, in the versions of tests/deep/npm.
bring_packages() { # source
  cmp -s "$1/tests/deep/npm/package-lock.json" package-lock.json && [ -d node_modules ] && return
  cp "$1/tests/deep/npm/package.json" "$1/tests/deep/npm/package-lock.json" . &&
    timeout 120 npm ci --ignore-scripts --no-audit --no-fund --loglevel=error >/dev/null
}
