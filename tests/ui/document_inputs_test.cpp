/// Whatever can be entered: typed, undone, redone, saved and loaded.

#include <vector>

#include "tests/ui/fixture.h"

namespace strokewright::ui {
namespace {

using describe::Entry;
using describe::Input;
using units::Kind;

struct Row {
  const Input* input;
  friend void PrintTo(const Row& row, std::ostream* out) { *out << row.input->key; }
};

std::vector<Row> everyInput() {
  std::vector<Row> rows;
  for (const Input* input : model::inputs()) rows.push_back({input});
  return rows;
}

/// A text that is not what stands by default: the typical value, a little more where it is nought
/// or the default itself.
QString typedFor(const Input& input, const units::Style& style) {
  if (input.kind == Kind::Choice) return fromCore(input.choices.back().key);
  const double step = units::toSi(style.group[input.kind], 1.0);
  const bool stands = input.typical == 0.0 || input.standing.value == input.typical;
  return fromCore(style.editable(input.kind, stands ? input.typical + step : input.typical));
}

class EveryInput : public WithDocument, public testing::WithParamInterface<Row> {
 protected:
  const Input& input() const { return *GetParam().input; }

  /// Everything an entry may carry.
  void fill() {
    document_.type(kTarget, input(), typedFor(input(), taste_.style()));
    Entry from;
    from.origin = describe::Origin::Measured;
    from.instrument = "feeler";
    from.date = "2024-05-01";
    from.note = "cold, dry";
    if (input().kind != Kind::Choice)
      from.plusMinus = units::toSi(taste_.style().group[input().kind], 0.5);
    document_.say(kTarget, input(), from);
  }
};

TEST_P(EveryInput, IsTypedUndoneRedoneSavedAndLoaded) {
  const model::Project before = document_.project();
  fill();
  const model::Project after = document_.project();
  const Entry& entry = document_.entry(kTarget, input());
  ASSERT_TRUE(entry.known());
  EXPECT_EQ(entry.plusMinus.has_value(), input().kind != Kind::Choice);

  document_.undoStack().undo();
  document_.undoStack().undo();
  EXPECT_EQ(document_.project(), before);
  EXPECT_FALSE(document_.undoStack().canUndo());
  document_.undoStack().redo();
  document_.undoStack().redo();
  EXPECT_EQ(document_.project(), after);

  const QString path = inFolder(QStringLiteral("all.strokewright"));
  ASSERT_TRUE(document_.saveAs(path)) << document_.error().toStdString();
  Document loaded(taste_);
  ASSERT_TRUE(loaded.open(path)) << loaded.error().toStdString();
  EXPECT_EQ(loaded.project(), after);
  EXPECT_TRUE(loaded.remarks().isEmpty()) << loaded.remarks().join(u' ').toStdString();
}

TEST_P(EveryInput, KeepsATextThatMakesNoSenseInTheFile) {
  document_.type(kTarget, input(), QStringLiteral("1.000,5 of something"));
  EXPECT_FALSE(document_.entry(kTarget, input()).known());
  const QString path = inFolder(QStringLiteral("odd.strokewright"));
  ASSERT_TRUE(document_.saveAs(path)) << document_.error().toStdString();
  Document loaded(taste_);
  ASSERT_TRUE(loaded.open(path)) << loaded.error().toStdString();
  EXPECT_EQ(loaded.project(), document_.project());
}

INSTANTIATE_TEST_SUITE_P(OfTheTable, EveryInput, testing::ValuesIn(everyInput()),
                         [](const auto& row) { return std::string(row.param.input->key); });

}  // namespace
}  // namespace strokewright::ui
