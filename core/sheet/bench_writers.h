#pragma once
/// What each kind of sheet for the bench writes of its own.

#include <span>
#include <string>

#include "core/model/inputs.h"
#include "core/sheet/bench.h"
#include "core/sheet/numbers.h"

namespace strokewright::sheet {

/// What the writers work with; its engine is one of the project.
class BenchWork {
 public:
  BenchWork(const assess::Assessment& assessment, const units::Style& reading, BenchSheet& written)
      : sheet(written),
        style(reading),
        numbers(assessment, reading),
        engine(written.engine),
        assessment_(assessment),
        evaluation_(assessment.evaluation()) {}

  BenchSheet& sheet;
  const units::Style& style;
  const Numbers numbers;
  const int engine;

  int cylinders() const { return evaluation_.cylinders(engine); }
  int numberOf(int cylinder) const {
    return model::numberOfCylinder(evaluation_, engine, cylinder);
  }
  bool stands(const describe::Input& input, int cylinder = 0) const {
    return evaluation_.inputStands(engine, input, cylinder);
  }
  /// It was entered; it does not stand by default.
  bool given(const describe::Input& input, int cylinder = 0) const {
    return evaluation_.inputGiven(engine, input, cylinder);
  }
  /// What the builder keeps in a list of the engine or the project.
  std::span<const describe::Entries> items(const describe::List& list) const {
    return evaluation_.items(engine, list);
  }
  /// [SI]
  double value(const describe::Input& input, int cylinder = 0) const {
    return evaluation_.inputValue(engine, input, cylinder);
  }
  const describe::Cell& cell(const describe::Result& result, int cylinder = 0) const {
    return assessment_(engine, result, cylinder);
  }
  /// [SI] the ± of an entry of this cylinder, 0 where it has none.
  double limit(const describe::Input& input, int cylinder) const;
  /// The deck was measured from the crank axis, not by way of the barrel seat.
  bool measuredDirect(int cylinder = 0) const {
    return stands(model::in::deckHeight, cylinder) && !stands(model::in::seatHeight, cylinder);
  }
  const describe::Evaluation& evaluation() const { return evaluation_; }
  const describe::Entry& entry(const describe::Input& input) const {
    return assessment_.project().engines[static_cast<std::size_t>(engine)][input];
  }

  /// Boxes for an entry as it is described; one place for each cylinder where the entry takes one.
  Asked ask(const describe::Input& input, int readings) const;
  /// The number alone, or a dash.
  std::string number(const describe::Input& input, int cylinder) const;
  std::string number(const describe::Result& result, int cylinder) const;
  std::string number(units::Kind kind, double si, int decimals = -1) const;
  /// "98.12 ± 0.03"
  std::string withLimit(units::Kind kind, double si, double limit) const;
  /// The same of an entry, as it was typed.
  std::string entered(const describe::Input& input, int cylinder) const;
  /// The spacer counted with, as it was typed where it was entered, and its ±; or a dash.
  std::string spacer(int cylinder) const;
  /// With the unit where lengths and thicknesses are not read in the same.
  std::string inItsUnit(units::Kind kind, std::string number) const;
  /// A table as it is printed: a number that is not there is a dash, and one that is not nought
  /// does not read as nought.
  Grid grid(std::string_view heading, const describe::Rows& rows) const;
  /// "Squish gap, mm"
  std::string headed(const describe::Column& column) const;
  std::string headed(std::string_view name, units::Kind kind) const;

  /// The table, or why it is not there: what it waits for, or is refused by.
  struct Told {
    std::optional<describe::Rows> rows;
    std::string whyNot;
  };
  Told tabulated(const describe::Table& table);

 private:
  std::string inGrid(const describe::Column& column, double si) const;

  const assess::Assessment& assessment_;
  describe::Evaluation evaluation_;  ///< a copy, in which tables are filled
};

void writeSurvey(BenchWork& work);
void writeBurette(BenchWork& work);
void writeStack(BenchWork& work);
void writePlate(BenchWork& work);
void writeThrows(BenchWork& work);
/// What can be laid from the shelf; nothing while it is empty.
void writeChoice(BenchWork& work);

}  // namespace strokewright::sheet
