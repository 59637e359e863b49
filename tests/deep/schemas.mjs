// By hand: the schemas under ajv, on the files that python3-jsonschema sees in tests/cli/schema.py.
// Usage, where the packages of tests/deep/npm are: node tests/deep/schemas.mjs PROGRAM SOURCE
import { execFileSync } from "node:child_process";
import { readFileSync, readdirSync } from "node:fs";
import { createRequire } from "node:module";

const require = createRequire(process.cwd() + "/");
let Draft07, Draft2020;
try {
  Draft07 = require("ajv").default;
  Draft2020 = require("ajv/dist/2020").default;
} catch {
  console.log("SKIPPED: ajv is not installed (tests/deep/npm)");
  process.exit(77);
}
const [program, source] = process.argv.slice(2);
const read = (path) => JSON.parse(readFileSync(`${source}/${path}`, "utf8"));
const options = { strict: true, strictTypes: false, allErrors: true, allowUnionTypes: true, strictTuples: false };
const both = Object.fromEntries(["job", "rates", "log", "crews"].map((subject) => [subject, [["07", Draft07], ["2020-12", Draft2020]].map(
  ([draft, Ajv]) => new Ajv(options).compile(JSON.parse(execFileSync(program, ["schema", subject, "--draft", draft], { encoding: "utf8" }))))]));
const said = new Set(["missing-key", "negative", "not-a-choice", "not-a-measure", "not-finite", "not-positive",
  "unknown-key", "wrong-type"]);
let failed = 0, sound = 0, unsound = 0;
const fail = (words) => { console.log(words); ++failed; };
const taken = (subject, value) => both[subject].map((validate) => validate(value));
const good = (subject, value, name) => {
  ++sound;
  if (taken(subject, value).includes(false)) fail(`${name}: refused: ${JSON.stringify(both[subject][1].errors?.slice(0, 2))}`);
};
for (const folder of ["examples", "tests/readers"]) {
  for (const name of readdirSync(`${source}/${folder}`)) {
    if (!name.endsWith(".json") || name.includes(".weather.")) continue;
    good(name.includes("rates") ? "rates" : name.includes("crews") ? "crews" : "job", read(`${folder}/${name}`), name);
  }
}
good("rates", read("src/readers/demonstration_rates.json"), "demonstration");
for (const row of read("tests/reference/shells.json").rows) good("job", { pool: row.pool }, row.name);
for (const name of readdirSync(`${source}/tests/errors`)) {
  if (!name.endsWith(".json") || name.includes(".weather.")) continue;
  let value;
  try { value = read(`tests/errors/${name}`); } catch { continue; }
  ++unsound;
  const verdicts = taken(name.includes(".rates.") ? "rates" : "job", value);
  if (verdicts[0] !== verdicts[1]) fail(`${name}: the drafts differ`);
  if (said.has(name.split(".")[0]) && verdicts[1]) fail(`${name}: taken`);
}
console.log(`${sound} sound files, ${unsound} with mistakes, both drafts: ${failed} failed`);
process.exit(failed ? 1 : 0);
