// One job of a batch, from its bytes to its result line and its document.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <string_view>

#include "basinwright/job/many_plans.hpp"
#include "basinwright/report/batch_line.hpp"
#include "inputs.hpp"
#include "job_stream.hpp"

namespace basinwright::cli {

/// Sixteen hexadecimal digits that tell inputs apart (FNV-1a, 64 bits); not a guard against
/// forgery.
[[nodiscard]] std::string digest_of(std::string_view bytes, std::uint64_t from);

/// A file name from a job's number or file: letters, digits, point, dash and underscore, never a
/// path.
[[nodiscard]] std::string safe_name(std::string_view text);

/// What becomes of one job.
struct Done {
  Status status = Status::ours;
  std::string line;  ///< With its end.
};

/// Knows what the jobs share. Its members may be called from several threads at once.
class BatchWork {
 public:
  BatchWork(const Request& request, const Inputs& shared);

  /// Reads the item's file if it is one.
  static void load(BatchItem& item);
  /// The digest of all that the item's line follows from.
  [[nodiscard]] std::string digest(const BatchItem& item) const;
  /// Plans the job, writes its document, words its line; never throws.
  /// @param index of the job in the batch, from 1
  [[nodiscard]] Done carry_out(BatchItem& item, std::size_t index);
  /// Whether the document of a job done before is still there.
  [[nodiscard]] bool document_there(const BatchItem& item, std::size_t index) const;
  /// The keys of a result line, for formats that name them once; else empty.
  [[nodiscard]] std::string head() const;

 private:
  [[nodiscard]] std::string worded(const document::Object& line) const;
  /// A record and its number within the memory.
  struct Near {
    weather::Record record;
    std::uint64_t number = 0;
  };
  [[nodiscard]] std::shared_ptr<const Near> weather_near(const job::Job& job, dates::Date day);
  void plan(const BatchItem& item, std::size_t index, report::Outcome& outcome, std::string& line);
  [[nodiscard]] std::string write_document(const BatchItem& item,
                                           std::size_t index,
                                           const report::Subject& subject,
                                           const job::Circumstances& now) const;
  [[nodiscard]] std::string path_of(const BatchItem& item, std::size_t index) const;

  const Request& r_;
  const Inputs& shared_;
  Request for_documents_;
  dates::Date today_;
  std::uint64_t shared_digest_ = 0;
  std::mutex lock_;
  std::map<std::string, std::shared_ptr<const Near>> near_;
  std::uint64_t records_made_ = 0;
  job::Memory memory_;
};

}  // namespace basinwright::cli
