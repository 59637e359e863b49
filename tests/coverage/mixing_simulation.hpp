// A coat painted event by event: kits are stirred, stand, are rolled out. It knows no formula of
// the library, only who does what when. Minutes and square metres.
#pragma once

#include <algorithm>
#include <cstddef>
#include <deque>
#include <limits>
#include <vector>

namespace simulation {

struct Crew {
  double area = 0.0;
  double cover = 0.0;
  double rate = 0.0;  ///< Square metres an hour and painter.
  int painters = 1;
  bool painter_mixes = false;
  double mixing = 0.0;
  double induction = 0.0;
};

struct Outcome {
  double finish = 0.0;
  double wait = 0.0;       ///< Painters without paint, after the opening.
  double worst_age = 0.0;  ///< Of a kit when it is rolled out.
  int most_mixing = 0;
  int most_in_pipeline = 0;
  std::size_t kits = 0;
};

/// Runs the clock from one event to the next. Without given starts the first kit is ready at the
/// opening and every other is begun when the one before it has run out.
class Session {
 public:
  explicit Session(const Crew& crew) : crew_(crew), left_(crew.area) {}

  Outcome with_starts(std::vector<double> starts) {
    pending_.assign(starts.begin(), starts.end());
    return run();
  }
  Outcome lazily() {
    lazy_ = true;
    pending_.push_back(-crew_.mixing - crew_.induction);
    return run();
  }

 private:
  struct Kit {
    double start, stirred, ready;
  };
  static constexpr double never = std::numeric_limits<double>::infinity();
  static constexpr double together = 1e-9;  ///< Events this near happen at once, ends first.

  Outcome run() {
    now_ = pending_.front();
    settle();
    while (left_ > together) {
      const double next = next_event();
      if (next == never) return {};
      advance(next);
      settle();
    }
    out_.finish = now_;
    return out_;
  }

  [[nodiscard]] double speed() const {
    const auto away = crew_.painter_mixes ? static_cast<double>(mixing_.size()) : 0.0;
    return (crew_.painters - away) * crew_.rate / 60.0;
  }
  [[nodiscard]] bool painting() const { return open_ && now_ >= -together; }

  [[nodiscard]] double next_event() const {
    double next = never;
    if (!pending_.empty()) next = std::min(next, pending_.front());
    for (const Kit& kit : mixing_) next = std::min(next, kit.stirred);
    for (const Kit& kit : standing_) next = std::min(next, kit.ready);
    if (now_ < -together) next = std::min(next, 0.0);
    if (painting() && speed() > 0.0) next = std::min(next, now_ + in_tray_ / speed());
    return next;
  }

  void advance(double to) {
    if (painting()) {
      const double done = std::min(in_tray_, speed() * (to - now_));
      in_tray_ -= done;
      left_ -= done;
    } else if (now_ >= -together) {
      out_.wait += to - now_;
    }
    now_ = to;
  }

  void settle() {
    if (open_ && in_tray_ <= together * crew_.cover) {
      out_.worst_age = std::max(out_.worst_age, now_ - current_.start);
      open_ = false;
      if (lazy_ && left_ > together) pending_.push_back(now_);
    }
    move_due(mixing_, standing_, &Kit::stirred);
    move_due(standing_, ready_, &Kit::ready);
    begin_mixing();
    move_due(mixing_, standing_, &Kit::stirred);
    move_due(standing_, ready_, &Kit::ready);
    if (!open_ && !ready_.empty() && now_ >= -together) {
      current_ = ready_.front();
      ready_.pop_front();
      in_tray_ = std::min(crew_.cover, left_);
      open_ = true;
    }
  }

  void begin_mixing() {
    while (!pending_.empty() && pending_.front() <= now_ + together) {
      const double stirred = pending_.front() + crew_.mixing;
      mixing_.push_back({pending_.front(), stirred, stirred + crew_.induction});
      pending_.pop_front();
      ++out_.kits;
    }
    const auto stirring = static_cast<int>(mixing_.size());
    out_.most_mixing = std::max(out_.most_mixing, stirring);
    out_.most_in_pipeline =
        std::max(out_.most_in_pipeline, stirring + static_cast<int>(standing_.size()));
  }

  void move_due(std::deque<Kit>& from, std::deque<Kit>& to, double Kit::*due) {
    while (!from.empty() && from.front().*due <= now_ + together) {
      to.push_back(from.front());
      from.pop_front();
    }
  }

  Crew crew_;
  double left_;
  double now_ = 0.0;
  bool lazy_ = false;
  bool open_ = false;
  double in_tray_ = 0.0;
  Kit current_{};
  std::deque<double> pending_;
  std::deque<Kit> mixing_, standing_, ready_;
  Outcome out_;
};

}  // namespace simulation
