// Hourly forecast in columns: JSON with `hourly`, `hourly_units` and one list for each variable.
#include <array>

#include "basinwright/units/unit.hpp"
#include "weather_forms.hpp"

namespace basinwright::readers {
namespace {

using weather::HourNumber;

struct ListRow {
  std::string_view key;
  Variable variable;
};

/// Present and former spellings; of two, the first that is there counts.
constexpr std::array<ListRow, 10> lists{{{"temperature_2m", Variable::air},
                                         {"relative_humidity_2m", Variable::humidity},
                                         {"relativehumidity_2m", Variable::humidity},
                                         {"dew_point_2m", Variable::dew_point},
                                         {"dewpoint_2m", Variable::dew_point},
                                         {"precipitation", Variable::rain},
                                         {"wind_speed_10m", Variable::wind},
                                         {"windspeed_10m", Variable::wind},
                                         {"cloud_cover", Variable::cloud},
                                         {"cloudcover", Variable::cloud}}};

struct List {
  WeatherColumn column;
  const Node* values;
};

/// An hour as its row of the lists gives it.
struct Row {
  HourNumber at;
  weather::Hour known;
  std::size_t index;
};

class ForecastReader {
 public:
  ForecastReader(const Node& root, WeatherReading& reading)
      : root_(root), problems_(reading.problems), file_(reading.file) {}

  void read() {
    if (root_.kind != Node::Kind::object) return refuse_kind(root_, "", Node::Kind::object);
    const Node* hourly = member(root_, "", "hourly", Node::Kind::object);
    const Node* units = member(root_, "", "hourly_units", Node::Kind::object);
    read_facts();
    if (hourly == nullptr || units == nullptr) return;
    times_ = member(*hourly, "/hourly", "time", Node::Kind::list);
    find_lists(*hourly, *units);
    if (times_ == nullptr) return;
    if (times_->items.empty()) {
      tell(codes::empty_list, *times_, "/hourly/time", "There is not one hour in the file");
    }
    for (List& list : lists_) hold_length(list);
    read_rows(*units);
    std::vector<WeatherColumn> columns;
    for (List& list : lists_) columns.push_back(std::move(list.column));
    tell_unknown(columns, hourly->span(), problems_);
  }

 private:
  void tell(
      Code code, const Node& at, std::string pointer, std::string message, std::string hint = {}) {
    problems_.tell({.code = code,
                    .at = at.span(),
                    .pointer = std::move(pointer),
                    .message = std::move(message),
                    .hint = std::move(hint)});
  }

  void refuse_kind(const Node& at, std::string pointer, Node::Kind wanted) {
    tell(codes::wrong_type,
         at,
         std::move(pointer),
         "This is " + std::string(words(at.kind)) + ", but " + std::string(words(wanted)) +
             " belongs here");
  }

  const Node* member(const Node& of,
                     const std::string& pointer,
                     std::string_view key,
                     Node::Kind kind) {
    const Node* at = of.find(key);
    const std::string where = pointer + "/" + std::string(key);
    if (at == nullptr) {
      tell(codes::missing_key,
           of,
           where,
           "The key \"" + std::string(key) + "\" is missing",
           "A forecast holds \"hourly_units\" and \"hourly\" with \"time\" and the values.");
      return nullptr;
    }
    if (at->kind == kind) return at;
    refuse_kind(*at, where, kind);
    return nullptr;
  }

  std::optional<double> fact(const Fact& fact, std::string_view pointer) {
    const Node* at = root_.find(pointer.substr(1));
    if (at == nullptr || at->kind == Node::Kind::null) return {};
    return read_fact(fact, {at->text, at->span(), pointer}, problems_);
  }

  void read_facts() {
    constexpr double seconds_in_hour = 3600.0;
    constexpr Fact seconds_ahead{"The seconds ahead of UTC",
                                 hours_ahead_fact.low * seconds_in_hour,
                                 hours_ahead_fact.high * seconds_in_hour};
    file_.latitude = fact(latitude_fact, "/latitude");
    file_.longitude = fact(longitude_fact, "/longitude");
    if (const auto metres = fact(elevation_fact, "/elevation")) {
      file_.elevation = units::metres(*metres);
    }
    const Node* offset = root_.find("utc_offset_seconds");
    if (offset == nullptr) return;
    if (const auto seconds = fact(seconds_ahead, "/utc_offset_seconds")) {
      file_.ahead_of_utc = units::seconds(*seconds);
      check_clock(file_, {offset->text, offset->span(), "/utc_offset_seconds"}, problems_);
    }
  }

  bool has(Variable variable) const {
    for (const List& list : lists_) {
      if (list.column.variable == variable) return true;
    }
    return false;
  }

  void find_lists(const Node& hourly, const Node& units) {
    for (const ListRow& row : lists) {
      if (has(row.variable) || hourly.find(row.key) == nullptr) continue;
      const Node* values = member(hourly, "/hourly", row.key, Node::Kind::list);
      if (values == nullptr) continue;
      WeatherColumn column{row.variable, std::string(row.key)};
      column.pointer = "/hourly/" + column.name;
      column.unit = unit_of(units, column);
      lists_.push_back({std::move(column), values});
    }
  }

  const WeatherUnit* unit_of(const Node& units, const WeatherColumn& column) {
    const Node* at = member(units, "/hourly_units", column.name, Node::Kind::text);
    if (at == nullptr) return nullptr;
    const WeatherUnit* unit = unit_named(column.variable, at->text);
    if (unit == nullptr) {
      tell(codes::wrong_unit,
           *at,
           "/hourly_units/" + column.name,
           "\"" + at->text + "\" is no unit of " + std::string(row_of(column.variable).words) +
               " that is known",
           "Known: " + unit_names(column.variable) + ".");
    }
    return unit;
  }

  void hold_length(const List& list) {
    const std::size_t found = list.values->items.size();
    const std::size_t wanted = times_->items.size();
    if (found == wanted) return;
    tell(
        codes::wrong_number_of_values,
        *list.values,
        list.column.pointer,
        "This list has " + grouped(found) + " values, but there are " + grouped(wanted) + " times");
  }

  bool counts_seconds(const Node& units) const {
    const Node* unit = units.find("time");
    return unit != nullptr && unit->text == "unixtime";
  }

  Stamp stamp_of(std::size_t index) const {
    const Node& at = times_->items[index];
    return {at.text, at.span(), "/hourly/time", index};
  }

  std::optional<HourNumber> time_at(std::size_t index, bool seconds) {
    const Node& at = times_->items[index];
    const Node::Kind wanted = seconds ? Node::Kind::number : Node::Kind::text;
    if (at.kind != wanted) {
      refuse_kind(at, "/hourly/time/" + std::to_string(index), wanted);
      return {};
    }
    if (!seconds) return hour_of(stamp_of(index), problems_);
    return hour_of_seconds(
        stamp_of(index), file_.ahead_of_utc.value_or(units::Duration{}), problems_);
  }

  std::optional<double> value_at(List& list, std::size_t index) {
    if (index >= list.values->items.size()) return {};
    const Node& at = list.values->items[index];
    if (at.kind != Node::Kind::number && at.kind != Node::Kind::null) {
      refuse_kind(at, list.column.pointer + "/" + std::to_string(index), Node::Kind::number);
      return {};
    }
    return read_value(list.column, {at.text, at.span(), index}, problems_);
  }

  void read_rows(const Node& units) {
    const bool seconds = counts_seconds(units);
    std::vector<std::optional<Row>> rows;
    for (std::size_t i = 0; i < times_->items.size() && !problems_.is_hopeless(); ++i) {
      const auto at = time_at(i, seconds);
      weather::Hour known;
      std::optional<double> rain;
      for (List& list : lists_) {
        const auto si = value_at(list, i);
        if (list.column.variable == Variable::rain)
          rain = si;
        else if (si)
          set(known, list.column.variable, *si, weather::Quality::forecast);
      }
      check_dew_point(known, times_->items[i].span(), problems_);
      // The rain at a stamp is the sum of the hour before it.
      const bool follows = at && !rows.empty() && rows.back() && *at - rows.back()->at <= 1;
      if (rain && follows)
        set(rows.back()->known, Variable::rain, *rain, weather::Quality::forecast);
      rows.push_back(at ? std::optional(Row{*at, known, i}) : std::nullopt);
    }
    put_in_order(rows);
  }

  void put_in_order(const std::vector<std::optional<Row>>& rows) {
    HourRun run(false, problems_);
    for (const auto& row : rows) {
      if (row)
        run.add(row->at, row->known, stamp_of(row->index));
      else
        run.skip();
    }
    file_.hours = run.finish();
  }

  const Node& root_;
  WeatherProblems& problems_;
  WeatherFile& file_;
  const Node* times_ = nullptr;
  std::vector<List> lists_;
};

}  // namespace

void read_forecast(const Node& root, WeatherReading& reading) {
  reading.file.form = WeatherForm::columns;
  ForecastReader(root, reading).read();
}

}  // namespace basinwright::readers
