#include <gtest/gtest.h>

#include <ostream>

#include "ui/widgets/stepped_text.h"

namespace strokewright::ui {
namespace {

struct Row {
  const char* text;
  int cursor;
  int by;
  const char* stepped;
  friend void PrintTo(const Row& row, std::ostream* out) { *out << row.text; }
};

class SteppedText : public testing::TestWithParam<Row> {};

TEST_P(SteppedText, MovesTheLastDigit) {
  const Row& row = GetParam();
  EXPECT_EQ(steppedText(QString::fromUtf8(row.text), row.cursor, row.by).toStdString(),
            row.stepped);
}

INSTANTIATE_TEST_SUITE_P(
    Texts, SteppedText,
    testing::Values(Row{"98.20", 5, 1, "98.21"}, Row{"98,20", 0, -1, "98,19"},
                    Row{"99", 2, 1, "100"}, Row{"0.00", 4, -1, "-0.01"}, Row{"-0.01", 5, 1, "0.00"},
                    Row{"−1.5", 4, -1, "−1.6"}, Row{".5", 2, 1, "0.6"}, Row{"9.", 2, 1, "10."},
                    Row{"2.625 in", 8, 1, "2.626 in"}, Row{"98.20 ± 0.03", 0, 1, "98.21 ± 0.03"},
                    Row{"98.20 ± 0.03", 12, 1, "98.20 ± 0.04"},
                    Row{"98.12; 98.20", 12, 1, "98.12; 98.21"}, Row{"2 5/8 in", 1, 1, "2 5/8 in"},
                    Row{"2-5/8", 1, 1, "2-5/8"}, Row{"13/16", 2, 1, "13/16"},
                    Row{"12.7e0", 3, 1, "12.7e0"}, Row{"", 0, 1, ""}, Row{"tbc", 1, 1, "tbc"},
                    Row{"123456789012345678", 1, 1, "123456789012345678"}));

}  // namespace
}  // namespace strokewright::ui
