#pragma once
/// Words that hold for one kind of engine and not for another.

#include <string>

#include "core/describe/evaluation.h"
#include "core/sheet/sheet.h"

namespace strokewright::sheet {

/// Says a text of one engine as its cycle and its ignition have it, then in the reader's terms.
///
/// Entries, tables and sentences are worded for a four-stroke with valves and a spark plug; the few
/// words that are wrong for another engine stand in one list.
class EngineTerms {
 public:
  /// Both outlive it.
  /// @param engine of the project
  EngineTerms(const describe::Evaluation& evaluation, int engine, const SheetOptions& options);

  void say(std::string& text) const;

 private:
  const SheetOptions& options_;
  bool twoStroke_;
  bool compression_;
};

}  // namespace strokewright::sheet
