// Each page in a real browser: an HTML validator and axe-core find nothing, nothing is clipped at 320 px, and the
// paper has the size asked for. Run by pages.sh, which brings html-validate, axe-core and puppeteer-core.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const [modules, ...files] = process.argv.slice(2);
const require = createRequire(`${modules}/`);
const puppeteer = require("puppeteer-core");
const { HtmlValidate } = require("html-validate");
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");

// Rules of taste about a source nobody edits by hand are off; those about the document are on.
const validator = new HtmlValidate({
  extends: ["html-validate:standard"],
  rules: {
    "no-inline-style": "off",
    "no-trailing-whitespace": "off",
    "long-title": "off",
    "require-sri": "off",
    "svg-focusable": "off",
  },
});
const levels = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
let wrongs = 0;
const wrong = (...words) => {
  wrongs += 1;
  console.log("wrong", ...words);
};

const browser = await puppeteer.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });
for (const file of files) {
  const report = await validator.validateFile(file);
  for (const result of report.results)
    for (const m of result.messages) wrong(file, `${m.line}:${m.column}`, m.ruleId, m.message);
  const page = await browser.newPage();
  await page.setBypassCSP(true);
  const asked = [];
  page.on("request", (request) => asked.push(request.url()));
  for (const width of [320, 1280]) {
    await page.setViewport({ width, height: 900 });
    await page.goto(`file://${file}`);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    if (wide > width) wrong(file, `is ${wide} px wide at ${width} px`);
    await page.evaluate(axe);
    const found = await page.evaluate((values) => axe.run({ runOnly: { type: "tag", values } }), levels);
    for (const v of found.violations)
      wrong(file, `${width} px`, v.id, v.help, v.nodes.slice(0, 2).map((n) => n.html.slice(0, 120)).join(" | "));
  }
  for (const url of asked) if (url !== `file://${file}`) wrong(file, "asks for", url);
  await page.pdf({ path: file.replace(/\.html$/, ".pdf"), preferCSSPageSize: true });
  await page.close();
}
await browser.close();
process.exit(wrongs ? 1 : 0);
