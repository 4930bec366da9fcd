#include "ui/print/sheet_painter.h"

#include <QPainter>
#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <span>
#include <utility>
#include <vector>

#include "core/sheet/kind.h"
#include "ui/document/taste.h"
#include "ui/drawings/section_painter.h"
#include "ui/drawings/stack_painter.h"
#include "ui/drawings/star_painter.h"
#include "ui/print/page_frame.h"
#include "ui/print/sheet_table.h"
#include "ui/print/small_plots.h"
#include "ui/print/text_flow.h"

namespace strokewright::ui {
namespace {

// All in millimetres.
constexpr double kClosing = 10.0;
constexpr double kBox = 6.0;
constexpr double kBetweenBoxes = 3.2;
constexpr double kAfterLabel = 2.0;  // to the number that belongs to it
constexpr double kBetween = 3.0;     // between them
constexpr double kMostPitch = 4.1;   // from row to row of the table
constexpr double kPitchStep = 0.05;
constexpr double kClosestPitch = 0.94;  // times the height of the type: figures have no descent
constexpr double kPlotWidth = 44.0;
constexpr double kNarrowPlot = 36.0;  // width
constexpr double kMostPlot = 42.0;    // height
constexpr double kEnoughPlot = 30.0;  // before words give way
constexpr double kLeastPlot = 28.0;   // before a curve and its key lie over each other
constexpr double kBetweenPlots = 2.0;
constexpr int kPlots = 2;  // the motion and the map
constexpr double kBesidePlots = 3.0;
constexpr double kLeastStack = 44.0;  // height of the enlarged stack
constexpr double kMostStack = 60.0;
constexpr double kStackGap = 1.5;    // above it
constexpr double kStar = 27.0;       // height of the star of the throws
constexpr double kLongScale = 12.5;  // one that is long to write
constexpr double kLeastStarWidth = 27.0;
constexpr std::size_t kMostBeside = 6;  // throws of stars beside each other
constexpr double kLeastSection = 43.0;  // height; before it is cut shorter there is no star
constexpr double kSmallSection = 40.0;  // height; before it is cut shorter words are left out
constexpr double kBetweenColumns = 4.0;
constexpr int kBoxesInARow = 6;

/// [%] of the font's own width, of what speaks against it where room is short.
constexpr std::array kWords = {100, 85, 75};

/// Under the motion where the map finds no room.
const Paragraph kInsteadOfMap{{}, QStringLiteral("No room for the map: see the window.")};

/// How the grounds and the plots make room for one another and for what speaks against it.
struct Layout {
  int grounds;        ///< [%] of the font's own width
  bool wholeGrounds;  ///< not only those of what decides
  int plots;          ///< how many; the motion stays longest
  double plotWidth;   ///< [mm]
  double leastPlot;   ///< [mm] height
  /// Words run on across the page below the plots, instead of standing in two columns there.
  bool across = false;
};
constexpr std::array<Layout, 9> kLayouts = {{{100, true, kPlots, kPlotWidth, kMostPlot},
                                             {100, false, kPlots, kPlotWidth, kEnoughPlot},
                                             {85, false, kPlots, kPlotWidth, kLeastPlot},
                                             {75, false, kPlots, kNarrowPlot, kLeastPlot, true},
                                             {85, false, 1, kPlotWidth, kLeastPlot, true},
                                             {75, false, 1, kPlotWidth, kLeastPlot, true},
                                             {75, false, 1, kNarrowPlot, kLeastPlot, true},
                                             {85, true, 0, 0.0, 0.0},
                                             {75, false, 0, 0.0, 0.0}}};

/// How the table is made to fit.
struct Choice {
  int stretch;      ///< [%] of the font's own width, of table and drawings
  Brief brief;      ///< say numbers in brief
  double drawings;  ///< [mm] width of the drawings beside the table
};
constexpr std::array<Choice, 13> kChoices = {{{100, Brief::Nothing, 64.0},
                                              {94, Brief::Nothing, 64.0},
                                              {88, Brief::Nothing, 64.0},
                                              {80, Brief::Nothing, 64.0},
                                              {80, Brief::Waits, 64.0},
                                              {75, Brief::Waits, 64.0},
                                              {75, Brief::Waits, 58.0},
                                              {75, Brief::Waits, 50.0},
                                              {80, Brief::Lists, 64.0},
                                              {75, Brief::Lists, 64.0},
                                              {80, Brief::Lists, 58.0},
                                              {80, Brief::Lists, 52.0},
                                              {75, Brief::Lists, 44.0}}};
/// With a variant: neither numbers nor drawings are cut short to make room for it.
constexpr std::size_t kChoicesWithVariant = 4;

class Page {
 public:
  Page(QPainter& painter, const QSizeF& paper, double millimetre, Choice choice,
       const sheet::Sheet& sheet, const assess::Assessment& assessment, const units::Style& style,
       const sheet::SheetOptions& options)
      : draft_(painter, paperMedium(millimetre, 100)),
        narrow_(painter, paperMedium(millimetre, choice.stretch)),
        sheet_(sheet),
        assessment_(assessment),
        style_(style),
        options_(options),
        frame_(draft_, paper),
        inner_(frame_.inner()),
        drawings_(draft_.mm(choice.drawings)),
        table_(narrow_, sheet, inner_.width() - drawings_ - draft_.mm(kBetween), choice.brief) {}

  bool tableFits() const { return table_.fits(); }

  void paint() {
    frame_.paintFrame();
    const double head = frame_.paintHead(fromCore(nameOf(sheet::SheetKind::Spec)),
                                         fromCore(sheet_.title), fromCore(sheet_.subtitle));
    double bottom = frame_.paintTitleBlock(sheet_.titleBlock);
    bottom = frame_.paintCautions(sheet_.cautions, bottom);
    bottom = paintClosing(bottom);
    bottom = paintAsBuilt(bottom);
    divide(head, bottom);
    paintGrounds();
    paintDrawings();
    paintPlots();
    paintObjections();
  }

 private:
  double mm(double millimetres) const { return draft_.mm(millimetres); }

  // ---- From the bottom up; each returns its upper edge

  /// The check bar and the boxes of the whole engine.
  double paintClosing(double bottom) {
    const double top = bottom - mm(kClosing);
    const double from = frame_.paintCheckBar(sheet_.checkBar, bottom - mm(2.5)) + mm(5.0);
    const double width = (inner_.right() + mm(kBetweenBoxes) - from) /
                         std::max<double>(1.0, static_cast<double>(sheet_.closing.size()));
    double x = from;
    for (const sheet::Box& box : sheet_.closing) {
      paintBox(QRectF(x, top, width - mm(kBetweenBoxes), mm(kClosing)), fromCore(box.label),
               fromCore(box.drawn));
      x += width;
    }
    return top - mm(1.0);
  }

  /// A caption with the number drawn close to it, so that it is not read as the next one's, and the
  /// box under it.
  void paintBox(const QRectF& cell, const QString& label, const QString& drawn) {
    const QPointF middle(0.0, (cell.height() - mm(kBox)) / 2.0);
    const double all = draft_.textWidth(label) + mm(kAfterLabel) + draft_.textWidth(drawn);
    Drafting& words = all <= cell.width() ? draft_ : narrow_;
    const QPointF left = cell.topLeft() + middle;
    words.text(left, Qt::AlignLeft, label, false, draft_.ink().faint);
    const double after = label.isEmpty() ? 0.0 : words.textWidth(label) + mm(kAfterLabel);
    const double most = cell.width() - words.textWidth(drawn);
    words.text(left + QPointF(std::min(after, most), 0.0), Qt::AlignLeft, drawn);
    draft_.rectangle(QRectF(cell.left(), cell.bottom() - mm(kBox), cell.width(), mm(kBox)),
                     draft_.narrow());
  }

  double paintAsBuilt(double bottom) {
    std::size_t all = 0;
    for (const sheet::Measured& measured : sheet_.asBuilt) all += measured.boxes.size();
    if (all == 0) return bottom;
    double top = bottom;
    if (all <= kBoxesInARow) {
      top -= cellHeight();
      paintInOneRow(top, static_cast<double>(all));
    } else {
      for (auto row = sheet_.asBuilt.rbegin(); row != sheet_.asBuilt.rend(); ++row) {
        top -= cellHeight();
        paintRow(top, *row);
      }
    }
    top -= draft_.textHeight() + mm(0.6);
    draft_.text(QPointF(inner_.left(), top), Qt::AlignLeft | Qt::AlignTop,
                QStringLiteral("As built, to be written at the bench; as drawn above each box, ") +
                    fromCore(style_.unit(units::Kind::FineLength)),
                false, draft_.ink().faint);
    top -= mm(1.0);
    frame_.rule(top);
    return top;
  }

  double cellHeight() const { return draft_.textHeight() + mm(kBox + 1.0); }

  void paintInOneRow(double top, double count) {
    const double width = std::min((inner_.width() + mm(kBetweenBoxes)) / count, mm(40.0));
    double x = inner_.left();
    for (const sheet::Measured& measured : sheet_.asBuilt) {
      for (const sheet::Box& box : measured.boxes) {
        QString label = fromCore(box.what.empty() ? measured.what : box.what);
        if (!box.label.empty()) label += QLatin1Char(' ') + fromCore(box.label);
        paintBox(QRectF(x, top, width - mm(kBetweenBoxes), cellHeight() - mm(0.6)), label,
                 fromCore(box.drawn));
        x += width;
      }
    }
  }

  void paintRow(double top, const sheet::Measured& measured) {
    double labels = 0.0;
    for (const sheet::Measured& row : sheet_.asBuilt) {
      labels = std::max(labels, draft_.textWidth(fromCore(row.what)) + mm(2.0));
    }
    draft_.text(QPointF(inner_.left(), top + cellHeight() - mm(0.6 + kBox / 2.0)), Qt::AlignLeft,
                fromCore(measured.what), false, draft_.ink().faint);
    const double gap = mm(1.2);
    const double width = std::min(
        (inner_.width() - labels + gap) / static_cast<double>(measured.boxes.size()), mm(28.0));
    double x = inner_.left() + labels;
    for (const sheet::Box& box : measured.boxes) {
      QString label = fromCore(box.what);
      if (!label.isEmpty() && !box.label.empty()) label += QLatin1Char(' ');
      paintBox(QRectF(x, top, width - gap, cellHeight() - mm(0.6)), label + fromCore(box.label),
               fromCore(box.drawn));
      x += width;
    }
  }

  // ---- What the numbers rest on and wait for

  std::vector<Paragraph> grounds() const {
    std::vector<Paragraph> paragraphs;
    const auto say = [&](const char* lead, const std::string& text) {
      if (!text.empty()) paragraphs.push_back({QLatin1String(lead), fromCore(text)});
    };
    if (wholeGrounds_ || sheet_.restsFurtherOn.empty()) {
      say("Rests on", sheet_.restsOn);
      say(sheet_.restsOn.empty() ? "Rests on" : "Rests also on", sheet_.restsFurtherOn);
    } else {
      say("Rests on", sheet_.restsOn + (sheet_.restsOn.empty() ? "" : " ") +
                          "What else stands by default, from books or computed: see the window.");
    }
    say("Waits", sheet_.waitsFor);
    return paragraphs;
  }

  double groundsHeight(int stretch) {
    const std::vector<Paragraph> paragraphs = grounds();
    if (paragraphs.empty()) return 0.0;
    const TextFlow flow = column(stretch, inner_.left(), inner_.width());
    double height = mm(1.6);
    for (const Paragraph& paragraph : paragraphs) height += flow.height(paragraph, 0.0);
    return height;
  }

  void paintGrounds() {
    const TextFlow flow = column(groundsStretch_, inner_.left(), inner_.width());
    double y = bottom_ + mm(0.8);
    for (const Paragraph& paragraph : grounds()) {
      y = flow.draw(draft_.painter(), draft_.ink().line, paragraph, y);
    }
  }

  // ---- What is left is shared by drawings and table above, plots and objections below

  void divide(double top, double bottom) {
    top_ = top;
    foot_ = bottom;
    leastDrawings_ = mm(kSmallSection + kLeastStack + 3.0) + underStars().height;
    arrange();
    // What nobody needs goes to the drawings.
    split_ = std::max(upperBottom(), bottom_ - needed());
    frame_.rule(top_);
    frame_.rule(split_);
  }

  /// Of the table, and of drawings that can be read.
  double upperBottom() const {
    return top_ + std::max(mm(2.0) + table_.height(pitch_), leastDrawings_);
  }

  static Paragraph paragraphOf(const sheet::Objection& objection) {
    return {fromCore(objection.word), fromCore(objection.sentence)};
  }

  /// The first ones, how many of what are left out, what is said of engines without a column, and
  /// that plots find no room.
  std::vector<Paragraph> objections(std::size_t count) const {
    std::vector<Paragraph> paragraphs;
    for (std::size_t i = 0; i < count; ++i) {
      paragraphs.push_back(paragraphOf(sheet_.objections[i]));
    }
    const std::string rest = countOf(std::span(sheet_.objections).subspan(count));
    if (!rest.empty()) {
      paragraphs.push_back(
          {QStringLiteral("Not listed"),
           fromCore(rest) + QStringLiteral(": see the window, or strokewright check.")});
    } else if (paragraphs.empty()) {
      paragraphs.push_back({QStringLiteral("Nothing"), QStringLiteral("speaks against it.")});
    }
    for (const sheet::Aside& aside : sheet_.asides) {
      paragraphs.push_back({QStringLiteral("On the sheet of %1:").arg(fromCore(aside.engine)),
                            fromCore(aside.count) + QLatin1Char('.')});
    }
    if (plots_ == 0) {
      paragraphs.push_back(
          {QStringLiteral("No room"), QStringLiteral("for the plots: see the window.")});
    }
    return paragraphs;
  }

  TextFlow column(int stretch, double left, double width) {
    QFont font = draft_.font();
    font.setStretch(stretch);
    return TextFlow(font, *draft_.painter().device(), LineRoom{left, width});
  }

  double plotsLeft() const {
    return inner_.right() - mm(plots_ * plotWidth_ + (plots_ - 1) * kBetweenPlots);
  }
  double besideWidth() const { return plotsLeft() - mm(kBesidePlots) - inner_.left(); }
  double halfWidth() const { return (inner_.width() - mm(kBetweenColumns)) / 2.0; }

  /// What speaks against it, paragraph by paragraph.
  struct Measured {
    std::vector<Paragraph> paragraphs;
    int stretch = 100;           ///< [%]
    std::vector<double> beside;  ///< [device units] height of each beside the plots
    std::vector<double> half;    ///< in one of two columns
  };

  Measured measured(int stretch, std::size_t count) {
    Measured it{objections(count), stretch, {}, {}};
    const TextFlow beside = column(stretch, 0.0, besideWidth());
    const TextFlow half = column(stretch, 0.0, halfWidth());
    for (const Paragraph& paragraph : it.paragraphs) {
      it.beside.push_back(beside.height(paragraph, 0.0));
      it.half.push_back(half.height(paragraph, 0.0));
    }
    return it;
  }

  /// Where the paragraphs stand: as many beside the plots as find room there whole, the others in
  /// two columns below.
  struct Block {
    std::size_t beside = 0;  ///< how many
    std::size_t left = 0;    ///< how many of the others stand in the left column
    double below = 0.0;      ///< [device units] where the columns begin, from the rule above
    double height = 0.0;     ///< [device units] of all
  };

  Block placed(const Measured& it, double plots) {
    const double top = mm(1.2);
    if (across_) {
      const TextFlow flow = besidePlots(it.stretch, plots, 0.0);
      double y = top;
      for (const Paragraph& paragraph : it.paragraphs) y += flow.height(paragraph, y);
      return {it.paragraphs.size(), 0, y, y};
    }
    const double all = std::accumulate(it.beside.begin(), it.beside.end(), top);
    Block block{.below = top, .height = top};
    if (plots > 0.0) {
      double y = top;
      while (block.beside < it.beside.size() && y + it.beside[block.beside] <= plots + top) {
        y += it.beside[block.beside++];
      }
      block.below = plots + mm(2.0);
      block.height = block.beside > 0 ? y : top;
      if (block.beside == it.beside.size()) return block;
    }
    const auto first = it.half.begin() + static_cast<std::ptrdiff_t>(block.beside);
    const double rest = std::accumulate(first, it.half.end(), 0.0);
    double least = rest;
    double left = 0.0;
    block.left = it.half.size() - block.beside;
    for (std::size_t count = 1; count < it.half.size() - block.beside; ++count) {
      left += first[static_cast<std::ptrdiff_t>(count) - 1];
      const double higher = std::max(left, rest - left);
      if (higher >= least) continue;
      least = higher;
      block.left = count;
    }
    block.height = block.below + least;
    if (plots > 0.0 && all <= block.height) return {it.beside.size(), 0, all, all};
    return block;
  }

  /// Down beside plots of this height and, where words run on, across the page below them.
  TextFlow besidePlots(int stretch, double plots, double top) {
    if (!across_) return column(stretch, inner_.left(), besideWidth());
    QFont font = draft_.font();
    font.setStretch(stretch);
    const double below = top + mm(2.0) + plots;
    return TextFlow(font, *draft_.painter().device(), [=, this](double y) {
      return LineRoom{inner_.left(), y < below ? besideWidth() : inner_.width()};
    });
  }

  /// Everything finds room under the table, with plots of this height.
  bool take(const Measured& it, double plots) {
    const Block block = placed(it, plots);
    plotHeight_ = plots;
    objections_ = it;
    block_ = block;
    return upperBottom() + needed() <= bottom_;
  }

  double needed() const {
    const double plots = plotHeight_ > 0.0 ? plotHeight_ + mm(2.0) : 0.0;
    return std::max(plots, block_.height + mm(0.5));
  }

  void setGrounds(int stretch, bool whole) {
    groundsStretch_ = stretch;
    wholeGrounds_ = whole;
    bottom_ = foot_ - groundsHeight(stretch);
  }

  /// Rows close up first, then the grounds are shortened and the plots become small while words
  /// narrow, then the map is left out and after it the motion; what speaks against it comes before
  /// the plots, and only what finds no room even so is counted, the least weighty first.
  void arrange() {
    pitch_ = kClosestPitch * narrow_.textHeight() / mm(1.0);
    const std::size_t all = sheet_.objections.size();
    const bool found = std::ranges::any_of(kLayouts, [&](const Layout& layout) {
      setGrounds(layout.grounds, layout.wholeGrounds);
      plots_ = layout.plots;
      plotWidth_ = layout.plotWidth;
      across_ = layout.across;
      return std::ranges::any_of(kWords,
                                 [&](int stretch) { return take(measured(stretch, all), layout); });
    });
    for (std::size_t count = all + 1; !found && count > 0; --count) {
      if (take(measured(kWords.back(), count - 1), 0.0)) break;
    }
    openRows();
  }

  bool take(const Measured& it, const Layout& layout) {
    if (layout.plots == 0) return take(it, 0.0);
    for (double plots = kMostPlot; plots >= layout.leastPlot; plots -= 1.0) {
      if (take(it, mm(plots) + insteadOfMapHeight())) return true;
    }
    return false;
  }

  /// Rows take what is left over.
  void openRows() {
    while (pitch_ + kPitchStep <= kMostPitch) {
      pitch_ += kPitchStep;
      if (upperBottom() + needed() <= bottom_) continue;
      pitch_ -= kPitchStep;
      return;
    }
  }

  void paintObjections() {
    std::size_t next = 0;
    const auto paint = [&](std::size_t count, const TextFlow& flow, double top) {
      double y = split_ + top;
      for (std::size_t i = 0; i < count; ++i) {
        y = flow.draw(draft_.painter(), draft_.ink().line, objections_.paragraphs[next++], y);
      }
    };
    const auto half = [&](double left) { return column(objections_.stretch, left, halfWidth()); };
    paint(block_.beside, besidePlots(objections_.stretch, plotHeight_, split_), mm(1.2));
    paint(block_.left, half(inner_.left()), block_.below);
    paint(objections_.paragraphs.size() - next, half(inner_.right() - halfWidth()), block_.below);
  }

  // ---- Drawings

  void paintDrawings() {
    table_.paint(QPointF(inner_.left() + drawings_ + mm(kBetween), top_ + mm(1.0)), pitch_);
    QRectF area(inner_.left(), top_ + mm(1.0), drawings_, split_ - top_ - mm(2.0));
    area.setBottom(paintStars(area));
    const CylinderOrWhyNot it = cylinderToDraw(assessment_, style_, sheet_.engine, 0);
    if (!it.cylinder) {
      const Paragraph paragraph{QStringLiteral("No drawing."), inTerms(it.whyNot)};
      inColumn().draw(draft_.painter(), draft_.ink().line, paragraph, area.top());
      return;
    }
    noteHeight_ = inColumn().height(sectionNote(*it.cylinder, kLongScale), 0.0);
    const QRectF section = sectionArea(area, *it.cylinder);
    paintSectionIn(section, *it.cylinder);
    area.setTop(section.bottom() + mm(kStackGap));
    paintStackIn(area, *it.cylinder);
  }

  void paintStackIn(const QRectF& area, const Cylinder& cylinder) {
    QString crown;
    const auto note = [&](double enlargement) {
      return Paragraph{{}, inTerms(stackCaption(enlargement, cylinder, style_, crown))};
    };
    const auto above = [&] {
      const double words = inColumn().height(note(kLongScale), 0.0) + mm(0.5);
      return area.adjusted(0.0, 0.0, 0.0, -words);
    };
    if (!hasRoomForCrown(narrow_, above(), cylinder, style_))
      crown = crownInWords(cylinder, style_);
    const QRectF stack = above();
    const StackDrawn drawn = paintStack(narrow_, stack, cylinder, style_, {});
    inColumn().draw(draft_.painter(), draft_.ink().faint, note(drawn.enlargement),
                    stack.bottom() + mm(0.5));
  }

  /// At the foot of the drawings: that of the engine, and the donor's beside it where it is another
  /// and there is room; below when they fire, also where there is no room for stars. @returns the
  /// upper edge.
  double paintStars(const QRectF& area) {
    if (sheet_.stars.empty()) return area.bottom();
    const auto [both, width, words, below] = underStars();
    const bool drawn = area.height() - mm(kStar) - below >= mm(kLeastSection + kLeastStack);
    const double top = area.bottom() - below - (drawn ? mm(kStar) : 0.0);
    inColumn().draw(draft_.painter(), draft_.ink().faint, captionOfStars(), area.bottom() - below);
    double y = area.bottom() - words;
    for (const sheet::Star& star : sheet_.stars) {
      const bool own = &star == &sheet_.stars.front();
      // From left to right as in the table: the donor first.
      const double left = area.left() + (both && own ? width : 0.0);
      if (drawn && (own || both)) {
        paintStarIn(QRectF(left, top, width - mm(2.0), mm(kStar)), star);
      }
      const double foot =
          starWords(left, width).draw(draft_.painter(), draft_.ink().line, firingOf(star), y);
      if (!both) y = foot;
    }
    return top - mm(1.0);
  }

  /// What is said under the stars.
  struct UnderStars {
    bool both = false;    ///< beside each other
    double width = 0.0;   ///< [device units] of each
    double words = 0.0;   ///< [device units] height of when they fire
    double height = 0.0;  ///< [device units] with the caption
  };

  UnderStars underStars() {
    if (sheet_.stars.empty()) return {};
    UnderStars under;
    under.both = sheet_.stars.size() > 1 && drawings_ >= mm(2.0 * kLeastStarWidth) &&
                 sheet_.stars.front().throws.size() <= kMostBeside;
    under.width = under.both ? drawings_ / 2.0 : drawings_;
    for (const sheet::Star& star : sheet_.stars) {
      const double high = starWords(0.0, under.width).height(firingOf(star), 0.0);
      under.words = under.both ? std::max(under.words, high) : under.words + high;
    }
    under.height = under.words + inColumn().height(captionOfStars(), 0.0) + mm(0.5);
    return under;
  }

  Paragraph captionOfStars() const { return {{}, fromCore(sheet_.stars.front().caption)}; }

  TextFlow starWords(double left, double width) {
    return column(narrow_.font().stretch(), left, width - mm(2.0));
  }

  static Paragraph firingOf(const sheet::Star& star) {
    return {fromCore(star.heading), fromCore(star.firing)};
  }

  void paintStarIn(const QRectF& room, const sheet::Star& star) {
    Star drawn{
        .throws = {}, .clockwise = star.clockwise, .senseSaid = star.senseSaid, .angles = false};
    for (const sheet::Star::Throw& one : star.throws) {
      drawn.throws.push_back({one.ahead, one.axis, fromCore(one.name)});
    }
    paintStar(narrow_, room, drawn);
  }

  /// The section is as large as it can be; then the stack takes what does not make it smaller.
  QRectF sectionArea(const QRectF& area, const Cylinder& cylinder) {
    const auto with = [&](double stack) { return area.adjusted(0.0, 0.0, 0.0, -mm(stack)); };
    const double best = reductionIn(with(kLeastStack), cylinder);
    double stack = kLeastStack;
    while (stack < kMostStack && reductionIn(with(stack + 1.0), cylinder) <= best) stack += 1.0;
    return with(stack);
  }

  double reductionIn(const QRectF& area, const Cylinder& cylinder) {
    return standardReduction(narrow_, drawingIn(area), cylinder, style_);
  }

  /// What the words under it leave.
  QRectF drawingIn(const QRectF& area) const { return area.adjusted(0.0, 0.0, 0.0, -noteHeight_); }

  QString inTerms(const QString& text) const {
    return options_.words ? fromCore(options_.words(text.toStdString())) : text;
  }

  TextFlow inColumn() { return column(narrow_.font().stretch(), inner_.left(), drawings_); }

  void paintSectionIn(const QRectF& area, const Cylinder& cylinder) {
    const QRectF drawing = drawingIn(area);
    const double top = motion::topDeadCentreAngle(cylinder.mechanism);
    const SectionDrawn drawn = paintSection(narrow_, drawing, cylinder, style_,
                                            {.crankAngle = top, .standardScale = true});
    inColumn().draw(draft_.painter(), draft_.ink().faint, sectionNote(cylinder, drawn.reduction),
                    drawing.bottom());
  }

  Paragraph sectionNote(const Cylinder& cylinder, double reduction) const {
    return {{},
            inTerms(QStringLiteral("Section at top dead centre, cylinder %1, %2. %3.")
                        .arg(cylinder.number)
                        .arg(scaleText(reduction), notFromNumbers(cylinder)))};
  }

  QString scaleText(double reduction) const {
    const double larger = std::max(reduction, 1.0 / reduction);
    const int decimals = larger == std::floor(larger) ? 0 : 1;
    const QString number = fromCore(style_.number(units::Kind::Ratio, larger, decimals));
    return reduction >= 1.0 ? QStringLiteral("1\u00A0:\u00A0") + number
                            : number + QStringLiteral("\u00A0:\u00A01");
  }

  TextFlow insteadOfMap() { return column(narrow_.font().stretch(), plotsLeft(), mm(plotWidth_)); }
  double insteadOfMapHeight() {
    return plots_ == 1 ? insteadOfMap().height(kInsteadOfMap, 0.0) : 0.0;
  }

  void paintPlots() {
    if (plotHeight_ <= 0.0) return;
    const double top = split_ + mm(1.2);
    const QRectF left(plotsLeft(), top, mm(plotWidth_), plotHeight_ - insteadOfMapHeight());
    paintAccelerationPlot(narrow_, left, assessment_, style_, sheet_);
    if (plots_ < kPlots) {
      insteadOfMap().draw(draft_.painter(), draft_.ink().faint, kInsteadOfMap, left.bottom());
      return;
    }
    paintBoreStrokePlot(narrow_, left.translated(mm(plotWidth_ + kBetweenPlots), 0.0), assessment_,
                        style_, sheet_);
  }

  Drafting draft_;
  Drafting narrow_;  ///< of table, drawings and plots, as narrow as the table needs it
  const sheet::Sheet& sheet_;
  const assess::Assessment& assessment_;
  const units::Style& style_;
  const sheet::SheetOptions& options_;
  PageFrame frame_;
  const QRectF inner_;
  const double drawings_;  ///< [device units] width
  SheetTable table_;
  double top_ = 0.0;            ///< of drawings and table
  double split_ = 0.0;          ///< between them and plots with objections
  double leastDrawings_ = 0.0;  ///< [device units] height, with what is said under them
  double bottom_ = 0.0;         ///< of plots and objections
  double foot_ = 0.0;           ///< of what the numbers rest on
  int groundsStretch_ = 100;    ///< [%]
  bool wholeGrounds_ = true;    ///< with those from books
  double pitch_ = kMostPitch;
  bool across_ = false;
  int plots_ = kPlots;
  double plotWidth_ = kPlotWidth;  ///< [mm]
  double plotHeight_ = 0.0;        ///< [device units]
  double noteHeight_ = 0.0;        ///< [device units] of the words under the section
  Measured objections_;
  Block block_;
};

/// The sheet that fits, and how: a narrow font is tried before the variant loses its column, and
/// that before numbers are said in brief.
struct Fitted {
  sheet::Sheet sheet;
  Choice choice;
};

Fitted fitted(QPainter& painter, const QSizeF& paper, double millimetre,
              const assess::Assessment& assessment, const units::Style& style,
              sheet::SheetOptions options) {
  Fitted fitted{{}, kChoices.back()};
  for (const bool variantColumn : {true, false}) {
    options.variantColumn = variantColumn;
    fitted.sheet = sheetOf(assessment, style, options);
    for (std::size_t i = 0; i < (variantColumn ? kChoicesWithVariant : kChoices.size()); ++i) {
      const Choice& choice = kChoices[i];
      fitted.choice = choice;
      const Page page(painter, paper, millimetre, choice, fitted.sheet, assessment, style, options);
      if (page.tableFits()) return fitted;
    }
  }
  return fitted;
}

}  // namespace

void paintSheet(QPainter& painter, const QSizeF& paper, double millimetre,
                const assess::Assessment& assessment, const units::Style& style,
                const sheet::SheetOptions& options) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setRenderHint(QPainter::TextAntialiasing);
  const Fitted it = fitted(painter, paper, millimetre, assessment, style, options);
  Page(painter, paper, millimetre, it.choice, it.sheet, assessment, style, options).paint();
  painter.restore();
}

}  // namespace strokewright::ui
