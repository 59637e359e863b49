// Reads a calendar with ical.js and prints what tests/render/calendar_back.py prints.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const [modules, file] = process.argv.slice(2);
const loaded = createRequire(`${modules}/`)("ical.js");
const ICAL = loaded.default ?? loaded;
const hexed = (text) => Buffer.from(text, "utf8").toString("hex") || "-";
const tell = (part) => {
  const name = part.name.toUpperCase();
  const say = (field, text) => console.log(name, field, hexed(text));
  const first = (field) => part.getFirstPropertyValue(field.toLowerCase());
  const texts = name === "VCALENDAR" ? ["VERSION"] : ["UID", "SUMMARY", "DESCRIPTION", "LOCATION", "STATUS", "ACTION"];
  for (const field of texts) if (first(field) !== null) say(field, first(field));
  for (const field of ["DTSTART", "DTEND", "DUE"]) if (first(field)) say(field, first(field).toString());
  if (first("TRIGGER")) say("TRIGGER", String(first("TRIGGER").toSeconds()));
  for (const inner of part.getAllSubcomponents()) tell(inner);
};
tell(new ICAL.Component(ICAL.parse(readFileSync(file, "utf8"))));
