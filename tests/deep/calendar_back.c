// Reads a calendar with libical and prints what tests/render/calendar_back.py prints.
#include <libical/ical.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void hexed(const char* part, const char* field, const char* text) {
  printf("%s %s ", part, field);
  for (const unsigned char* c = (const unsigned char*)text; *c; ++c) printf("%02x", *c);
  printf("%s\n", *text ? "" : "-");
}

static void text_of(icalcomponent* of, const char* part, const char* field, icalproperty_kind kind) {
  icalproperty* found = icalcomponent_get_first_property(of, kind);
  if (!found) return;
  icalvalue* value = icalproperty_get_value(found);
  hexed(part, field, icalvalue_isa(value) == ICAL_TEXT_VALUE ? icalvalue_get_text(value) : icalproperty_get_value_as_string(found));
}

static void time_of(icalcomponent* of, const char* part, const char* field, icalproperty_kind kind) {
  icalproperty* found = icalcomponent_get_first_property(of, kind);
  if (!found) return;
  struct icaltimetype t = icalvalue_get_datetime(icalproperty_get_value(found));
  char out[32];
  if (t.is_date)
    snprintf(out, sizeof out, "%04d-%02d-%02d", t.year, t.month, t.day);
  else
    snprintf(out, sizeof out, "%04d-%02d-%02dT%02d:%02d:%02d", t.year, t.month, t.day, t.hour, t.minute, t.second);
  hexed(part, field, out);
}

static void tell(icalcomponent* of) {
  const char* part = icalcomponent_kind_to_string(icalcomponent_isa(of));
  if (icalcomponent_isa(of) != ICAL_VCALENDAR_COMPONENT) {
    text_of(of, part, "UID", ICAL_UID_PROPERTY);
    text_of(of, part, "SUMMARY", ICAL_SUMMARY_PROPERTY);
    text_of(of, part, "DESCRIPTION", ICAL_DESCRIPTION_PROPERTY);
    text_of(of, part, "LOCATION", ICAL_LOCATION_PROPERTY);
    text_of(of, part, "STATUS", ICAL_STATUS_PROPERTY);
    text_of(of, part, "ACTION", ICAL_ACTION_PROPERTY);
  } else {
    text_of(of, part, "VERSION", ICAL_VERSION_PROPERTY);
  }
  time_of(of, part, "DTSTART", ICAL_DTSTART_PROPERTY);
  time_of(of, part, "DTEND", ICAL_DTEND_PROPERTY);
  time_of(of, part, "DUE", ICAL_DUE_PROPERTY);
  icalproperty* trigger = icalcomponent_get_first_property(of, ICAL_TRIGGER_PROPERTY);
  if (trigger) {
    char out[32];
    snprintf(out, sizeof out, "%d", icaldurationtype_as_int(icalproperty_get_trigger(trigger).duration));
    hexed(part, "TRIGGER", out);
  }
  if (icalcomponent_get_first_property(of, ICAL_XLICERROR_PROPERTY)) printf("%s has an error\n", part);
  for (icalcomponent* c = icalcomponent_get_first_component(of, ICAL_ANY_COMPONENT); c;
       c = icalcomponent_get_next_component(of, ICAL_ANY_COMPONENT))
    tell(c);
}

int main(int argc, char** argv) {
  FILE* file = argc == 2 ? fopen(argv[1], "rb") : NULL;
  if (!file) return 2;
  static char bytes[1 << 22];
  bytes[fread(bytes, 1, sizeof bytes - 1, file)] = 0;
  fclose(file);
  icalcomponent* calendar = icalparser_parse_string(bytes);
  if (!calendar) return 1;
  if (icalrestriction_check(calendar) != 1) puts("breaks a rule of RFC 5546");
  tell(calendar);
  icalcomponent_free(calendar);
  return 0;
}
