#include "basinwright/sequence/read_weather.hpp"

#include <utility>

namespace basinwright::sequence {

std::shared_ptr<const GateTable> ReadWeather::gates(const std::string& key,
                                                    const std::function<GateTable()>& make) const {
  {
    const std::scoped_lock hold(lock_);
    if (const auto it = tables_.find(key); it != tables_.end()) return it->second;
  }
  auto made = std::make_shared<const GateTable>(make());
  const std::scoped_lock hold(lock_);
  if (tables_.size() >= most) tables_.clear();
  return tables_.emplace(key, std::move(made)).first->second;
}

}  // namespace basinwright::sequence
