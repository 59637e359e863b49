// Each page in a real browser: an HTML validator and axe-core find nothing, nothing is clipped at 320 px, nothing is
// fetched, no row of a table and no card is torn between two sheets, and what is read on site is large enough.
// Run by pages.sh, which brings html-validate, axe-core and puppeteer-core.
import { execFileSync } from "node:child_process";
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

// A mark at the head and the foot of every row and card: both come out on one sheet.
const mark = () => {
  let n = 0;
  const put = (into, at) => {
    const span = document.createElement("span");
    span.textContent = `\u00a7${n}\u00a7`;
    span.style.cssText = `position:absolute;${at}:0;left:0;font:2px/1 sans-serif;white-space:nowrap`;
    into.style.position = "relative";
    into.append(span);
  };
  for (const row of document.querySelectorAll("main tr, main .facts > div")) {
    n += 1;
    for (const cell of row.children) {
      put(cell, "top");
      put(cell, "bottom");
    }
  }
  const rows = n;
  for (const card of document.querySelectorAll(".site .page-start:not(:has(+ .under))")) {
    n += 1;
    put(card.firstElementChild, "top");
    put(card.lastElementChild, "bottom");
  }
  return rows;
};

// The least letter on paper, in points, of what is read on site.
const least = () => {
  let size = 1e9;
  const walker = document.createTreeWalker(document.querySelector("main"), NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const shown = node.textContent.trim() && !node.parentElement.closest(".unseen, svg");
    if (shown) size = Math.min(size, parseFloat(getComputedStyle(node.parentElement).fontSize));
  }
  return size * 0.75;
};

async function paper(page, file) {
  const pdf = file.replace(/\.html$/, ".pdf");
  await page.emulateMediaType("print");
  // ISO 9241-303: letters of at least 16 minutes of arc; capitals of 0.716 em, read from 650 mm.
  const points = 16 / 60 * Math.PI / 180 * 650 / 0.716 / 25.4 * 72;
  if (await page.evaluate(() => document.body.classList.contains("site"))) {
    const found = await page.evaluate(least);
    if (found < points - 0.1) wrong(file, `letters of ${found} pt, wanted ${points.toFixed(1)} pt`);
  }
  await page.pdf({ path: pdf, preferCSSPageSize: true });
  const rows = await page.evaluate(mark);
  const marked = file.replace(/\.html$/, ".marked.pdf");
  await page.pdf({ path: marked, preferCSSPageSize: true });
  const on = new Map();
  const sheets = execFileSync("pdftotext", [marked, "-"], { encoding: "utf8", maxBuffer: 1 << 28 }).split("\f").slice(0, -1);
  sheets.forEach((text, i) => {
    for (const [, n] of text.matchAll(/\u00a7(\d+)\u00a7/g)) on.set(n, (on.get(n) ?? new Set()).add(i + 1));
    if (!text.trim()) wrong(file, `sheet ${i + 1} is empty`);
  });
  // A table's head comes again on each sheet; it is told by being on several whole.
  for (const [n, where] of on) {
    const head = await page.evaluate((k) => !!document.querySelectorAll("main tr, main .facts > div")[k - 1]?.closest("thead"), +n);
    if (where.size > 1 && !head) wrong(file, +n > rows ? "card" : "row", n, `is torn over sheets ${[...where].join(" and ")}`);
  }
  console.log("sheets", sheets.length, file);
}

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
    await page.screenshot({ path: file.replace(/\.html$/, `.${width}.png`) });
    await page.evaluate(axe);
    const found = await page.evaluate((values) => axe.run({ runOnly: { type: "tag", values } }), levels);
    for (const v of found.violations)
      wrong(file, `${width} px`, v.id, v.help, v.nodes.slice(0, 2).map((n) => n.html.slice(0, 120)).join(" | "));
  }
  for (const url of asked) if (url !== `file://${file}`) wrong(file, "asks for", url);
  await paper(page, file);
  await page.close();
}
await browser.close();
process.exit(wrongs ? 1 : 0);
