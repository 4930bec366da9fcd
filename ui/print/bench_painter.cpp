#include "ui/print/bench_painter.h"

#include <QImage>
#include <QPainter>
#include <algorithm>
#include <array>
#include <optional>
#include <utility>
#include <vector>

#include "ui/document/taste.h"
#include "ui/drawings/chain_painter.h"
#include "ui/drawings/crank.h"
#include "ui/drawings/plate_painter.h"
#include "ui/drawings/star_painter.h"
#include "ui/drawings/survey_sketch.h"
#include "ui/print/page_frame.h"
#include "ui/print/printed_grid.h"
#include "ui/print/text_flow.h"

namespace strokewright::ui {
namespace {

using sheet::SheetKind;

// All in millimetres.
constexpr double kGap = 1.6;        // between parts of the page
constexpr double kClosing = 9.0;    // check bar and signature
constexpr double kWords = 66.0;     // width of what says how to measure
constexpr double kOneBox = 15.0;    // least width of a place of one box
constexpr double kOfSeveral = 8.4;  // least width of each of several
constexpr double kMostBox = 26.0;   // width
constexpr double kBetween = 1.4;    // places
constexpr double kLeastBox = 4.6;   // height
constexpr double kMostBoxHeight = 6.4;
constexpr double kBoxStep = 0.2;
constexpr double kBlockGap = 1.8;
constexpr double kMostObjections = 18.0;
constexpr double kLeastSketch = 52.0;
constexpr double kMostSketch = 84.0;
constexpr double kMostChain = 130.0;
constexpr double kLeastCrank = 52.0;
constexpr double kEnoughCrank = 84.0;  // what a crank takes before more is said against it
constexpr double kMostCrank = 125.0;
constexpr double kMostStar = 66.0;       // width
constexpr double kRoomForAngles = 48.0;  // width of a star before they lie over each other
constexpr double kBetweenGrids = 8.0;    // that stand beside each other
constexpr double kBesidePlate = 4.0;     // from the plate to the words beside it
constexpr int kMostReadings = 4;
constexpr std::size_t kMostRowsFirst = 6;  // of a table that gives way to boxes

constexpr std::array kStretches = {100, 92, 85, 80, 75};  // [%] of the font's own width

/// How boxes are made to fit.
struct BoxSize {
  int readings = 1;
  double height = kLeastBox;  ///< [mm]
};

class BenchPage {
  struct Laid {
    PrintedGrid grid;
    double left = 0.0;    ///< [device units] from the left end of the page
    bool beside = false;  ///< the one before it
  };

 public:
  BenchPage(QPainter& painter, const QSizeF& paper, double millimetre, int stretch,
            const sheet::BenchSheet& sheet, const units::Style& style, CrankFigure crank = {})
      : draft_(painter, paperMedium(millimetre, stretch)),
        page_(draft_, paper),
        sheet_(sheet),
        style_(style),
        crank_(std::move(crank)),
        words_{inner().left(), inner().width()} {
    for (const sheet::Grid& grid : sheet.grids) addGrid(grid);
  }

  bool gridsFit() const {
    return std::ranges::all_of(grids_, [](const Laid& it) { return it.grid.fits(); });
  }

  /// The plate lies between head and foot of the page, with its words.
  bool plateFits() {
    layOut();
    return gridsFit() && platePlace().has_value();
  }

  void paint() {
    page_.paintFrame();
    layOut();
    page_.rule(top_);
    page_.rule(foot_);
    chooseBoxes();
    chooseRows();
    double y = top_ + mm(kGap);
    y = paintDrawing(y);
    y = paintNotes(y);
    for (std::size_t i = 0; i < sheet_.asked.size(); ++i) y = paintAsked(sheet_.asked[i], i + 1, y);
    paintGrids(y + mm(kGap));
  }

 private:
  double mm(double millimetres) const { return draft_.mm(millimetres); }
  const QRectF& inner() const { return page_.inner(); }

  /// What stands at the top and the foot of the page; leaves the room between them.
  void layOut() {
    top_ = page_.paintHead(fromCore(nameOf(sheet_.kind)), fromCore(sheet_.title),
                           fromCore(sheet_.subtitle));
    double bottom = page_.paintTitleBlock(sheet_.titleBlock);
    bottom = page_.paintCautions(sheet_.cautions, bottom);
    bottom = paintClosing(bottom);
    foot_ = paintObjections(bottom);
  }

  double paintClosing(double bottom) {
    const double right = page_.paintCheckBar(sheet_.checkBar, bottom - mm(2.5));
    const double left = right + mm(6.0);
    draft_.text(QPointF(left, bottom - mm(2.5)), Qt::AlignLeft | Qt::AlignBottom,
                QStringLiteral("by, date"), false, draft_.ink().faint);
    const double line = left + draft_.textWidth(QStringLiteral("by, date")) + mm(1.5);
    draft_.line(QPointF(line, bottom - mm(2.5)), QPointF(inner().right(), bottom - mm(2.5)),
                draft_.narrow());
    return bottom - mm(kClosing);
  }

  // ---- What speaks against it

  Paragraph countOf(std::size_t rest) const {
    QStringList parts;
    rest += static_cast<std::size_t>(sheet_.others);
    if (rest > 0) parts.append(QStringLiteral("%1 more against it").arg(rest));
    if (sheet_.remarks > 0) {
      parts.append(sheet_.remarks == 1 ? QStringLiteral("1 remark")
                                       : QStringLiteral("%1 remarks").arg(sheet_.remarks));
    }
    if (parts.isEmpty()) return {};
    return {QStringLiteral("and"), parts.join(QStringLiteral(", ")) +
                                       QStringLiteral(": see the spec sheet or the window.")};
  }

  double heightOf(const std::vector<Paragraph>& paragraphs) {
    return heightOf(paragraphs, page_.fullWidth());
  }

  static double heightOf(const std::vector<Paragraph>& paragraphs, const TextFlow& flow) {
    double height = 0.0;
    for (const Paragraph& paragraph : paragraphs) height += flow.height(paragraph, 0.0);
    return height;
  }

  /// A figure of the throws that has room to spare leaves it to them.
  double mostObjections(double bottom) {
    double spare = 0.0;
    if (!crank_.cylinders.empty()) {
      spare = bottom - top_ - mm(3.0 * kGap) - gridsHeight() - notesHeight() - mm(kEnoughCrank);
    }
    return std::max(mm(kMostObjections), spare);
  }

  /// As many as find room, the rest counted.
  std::vector<Paragraph> objections(double most) {
    const auto listed = [&](std::size_t count) {
      std::vector<Paragraph> paragraphs;
      for (std::size_t i = 0; i < count; ++i) {
        const sheet::Objection& it = sheet_.objections[i];
        paragraphs.push_back({fromCore(it.word), fromCore(it.sentence)});
      }
      if (sheet_.objections.empty() && !crank_.cylinders.empty()) {
        paragraphs.push_back(
            {QStringLiteral("Nothing"), QStringLiteral("speaks against the throws.")});
      }
      const Paragraph rest = countOf(sheet_.objections.size() - count);
      if (!rest.lead.isEmpty()) paragraphs.push_back(rest);
      if (paragraphs.empty()) {
        paragraphs.push_back({QStringLiteral("Nothing"), QStringLiteral("speaks against it.")});
      }
      return paragraphs;
    };
    std::size_t count = sheet_.objections.size();
    while (count > 0 && heightOf(listed(count)) > most) --count;
    return listed(count);
  }

  double paintObjections(double bottom) {
    const std::vector<Paragraph> paragraphs = objections(mostObjections(bottom));
    const double top = bottom - heightOf(paragraphs) - mm(1.0);
    const TextFlow flow = page_.fullWidth();
    double y = top;
    for (const Paragraph& paragraph : paragraphs) {
      y = flow.draw(draft_.painter(), draft_.ink().line, paragraph, y);
    }
    return top - mm(1.0);
  }

  // ---- Boxes

  std::size_t columnsOf(const sheet::Asked& asked) const {
    return std::max<std::size_t>(1, asked.columns.size());
  }
  double boxesLeft() const { return inner().left() + mm(kWords); }

  std::size_t placesInLine(const sheet::Asked& asked) const {
    const auto columns = columnsOf(asked);
    const double least =
        mm(columns == 1 ? kOneBox : kOfSeveral * static_cast<double>(columns)) + mm(kBetween);
    const auto room = static_cast<std::size_t>((inner().right() - boxesLeft()) / least);
    return std::clamp<std::size_t>(room, 1, std::max<std::size_t>(1, asked.places.size()));
  }

  /// Over the first line of places, what their columns hold.
  double headingHeight(const sheet::Asked& asked) const {
    return asked.columns.empty() ? 0.0 : draft_.textHeight();
  }

  double captionHeight() const { return draft_.textHeight() + mm(0.4); }

  int readingsOf(const sheet::Asked& asked, const BoxSize& size) const {
    return std::min(asked.readings, size.readings);
  }

  double lineHeight(const sheet::Asked& asked, const BoxSize& size) const {
    return captionHeight() + readingsOf(asked, size) * mm(size.height) + mm(1.0);
  }

  double boxesHeight(const sheet::Asked& asked, const BoxSize& size) const {
    const std::size_t inLine = placesInLine(asked);
    const std::size_t lines = (asked.places.size() + inLine - 1) / inLine;
    return headingHeight(asked) + static_cast<double>(lines) * lineHeight(asked, size);
  }

  std::vector<Paragraph> wordsOf(const sheet::Asked& asked, std::size_t number) const {
    QString label = QStringLiteral("%1  ").arg(number) + fromCore(asked.label);
    if (!asked.unit.empty()) label += QStringLiteral(", ") + fromCore(asked.unit);
    std::vector<Paragraph> paragraphs{{label, {}}};
    if (!asked.instrument.empty()) paragraphs.push_back({{}, fromCore(asked.instrument)});
    paragraphs.push_back({{}, fromCore(asked.how)});
    return paragraphs;
  }

  TextFlow column(const LineRoom& room) {
    return TextFlow(draft_.font(), *draft_.painter().device(), [room](double) { return room; });
  }

  TextFlow wordsColumn() { return column({inner().left(), mm(kWords - 4.0)}); }

  double wordsHeight(const sheet::Asked& asked) {
    const TextFlow flow = wordsColumn();
    double height = 0.0;
    for (const Paragraph& paragraph : wordsOf(asked, 1)) height += flow.height(paragraph, 0.0);
    return height;
  }

  double askedHeight(const BoxSize& size) {
    double height = 0.0;
    for (const sheet::Asked& asked : sheet_.asked) {
      height += std::max(wordsHeight(asked), boxesHeight(asked, size)) + mm(kBlockGap);
    }
    return height;
  }

  // ---- Tables

  void addGrid(const sheet::Grid& grid) {
    const double all = inner().width();
    rows_.push_back(grid.rows.size());
    grids_.push_back({PrintedGrid(draft_, grid, all), 0.0, false});
    const std::size_t i = grids_.size() - 1;
    if (!grid.beside || i == 0 || grids_[i - 1].beside) return;
    Laid& left = grids_[i - 1];
    Laid& right = grids_[i];
    const double spare = all - mm(kBetweenGrids) - left.grid.needs() - right.grid.needs();
    if (spare < 0.0) return;
    const double end = left.grid.needs() + 0.5 * spare;
    left.grid.narrowTo(end);
    right.grid.narrowTo(right.grid.needs() + 0.5 * spare);
    right.left = end + mm(kBetweenGrids);
    right.beside = true;
  }

  double heightOf(std::size_t i) const {
    return rows_[i] == 0 ? 0.0 : grids_[i].grid.height(rows_[i]) + mm(2.0 * kGap);
  }

  double gridsHeight() const {
    double height = 0.0;
    for (std::size_t i = 0; i < grids_.size(); ++i) {
      height += grids_[i].beside ? std::max(0.0, heightOf(i) - heightOf(i - 1)) : heightOf(i);
    }
    return height;
  }

  void paintGrids(double top) {
    double bottom = top;
    for (std::size_t i = 0; i < grids_.size(); ++i) {
      if (!grids_[i].beside) top = bottom;
      if (rows_[i] == 0) continue;
      grids_[i].grid.paint(QPointF(words_.left + grids_[i].left, top), rows_[i]);
      bottom = std::max(bottom, top + heightOf(i));
    }
  }

  /// The last table of the throws, which has the most to choose from, gives way to the figure.
  void chooseRows() {
    if (crank_.cylinders.empty()) return;
    while (rows_.back() > 1 && roomForDrawing() < leastDrawing()) --rows_.back();
  }

  /// As many readings as there is room for, then boxes as high as there is; a table beside them
  /// gives way first, and takes what is left.
  void chooseBoxes() {
    if (sheet_.asked.empty()) return;
    for (std::size_t i = 0; i < rows_.size(); ++i) rows_[i] = std::min(rows_[i], kMostRowsFirst);
    const double room = foot_ - top_ - mm(2.0 * kGap) - leastDrawing() - notesHeight();
    const auto fits = [&](const BoxSize& size) {
      return askedHeight(size) + gridsHeight() <= room;
    };
    size_ = {kMostReadings, kLeastBox};
    while (size_.readings > 1 && !fits(size_)) --size_.readings;
    for (std::size_t& rows : rows_) {
      while (rows > 0 && !fits(size_)) --rows;
    }
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      while (rows_[i] > 0 && rows_[i] < sheet_.grids[i].rows.size()) {
        ++rows_[i];
        if (fits(size_)) continue;
        --rows_[i];
        break;
      }
    }
    while (size_.height + kBoxStep <= kMostBoxHeight &&
           fits({size_.readings, size_.height + kBoxStep})) {
      size_.height += kBoxStep;
    }
  }

  double paintAsked(const sheet::Asked& asked, std::size_t number, double top) {
    const TextFlow flow = wordsColumn();
    double y = top;
    for (const Paragraph& paragraph : wordsOf(asked, number)) {
      y = flow.draw(draft_.painter(), draft_.ink().line, paragraph, y);
    }
    const std::size_t inLine = placesInLine(asked);
    const double most = mm(kMostBox + (asked.columns.empty() ? 0.0 : kMostBox));
    const double width =
        std::min((inner().right() - boxesLeft() + mm(kBetween)) / static_cast<double>(inLine),
                 most + mm(kBetween));
    const double first = top + headingHeight(asked);
    for (std::size_t i = 0; i < inLine; ++i) {
      headColumns(asked, QPointF(boxesLeft() + static_cast<double>(i) * width, top),
                  width - mm(kBetween));
    }
    for (std::size_t i = 0; i < asked.places.size(); ++i) {
      const double left = boxesLeft() + static_cast<double>(i % inLine) * width;
      const double line = first + static_cast<double>(i / inLine) * lineHeight(asked, size_);
      paintPlace(asked, asked.places[i], QPointF(left, line), width - mm(kBetween));
    }
    const double bottom = top + std::max(y - top, boxesHeight(asked, size_));
    const double rule = bottom + mm(kBlockGap / 2.0);
    draft_.line(QPointF(inner().left(), rule), QPointF(inner().right(), rule), draft_.narrow());
    return bottom + mm(kBlockGap);
  }

  void headColumns(const sheet::Asked& asked, QPointF topLeft, double width) {
    const double box = width / static_cast<double>(columnsOf(asked));
    for (std::size_t i = 0; i < asked.columns.size(); ++i) {
      draft_.text(topLeft + QPointF(static_cast<double>(i) * box, 0.0),
                  Qt::AlignLeft | Qt::AlignTop, fromCore(asked.columns[i]), false,
                  draft_.ink().faint);
    }
  }

  void paintPlace(const sheet::Asked& asked, const sheet::Box& place, QPointF topLeft,
                  double width) {
    draft_.text(topLeft, Qt::AlignLeft | Qt::AlignTop, fromCore(place.label), false,
                draft_.ink().faint);
    draft_.text(topLeft + QPointF(width, 0.0), Qt::AlignRight | Qt::AlignTop, fromCore(place.drawn),
                true);
    const double box = width / static_cast<double>(columnsOf(asked));
    const double top = topLeft.y() + captionHeight();
    for (std::size_t column = 0; column < columnsOf(asked); ++column) {
      const double left = topLeft.x() + static_cast<double>(column) * box;
      for (int reading = 0; reading < readingsOf(asked, size_); ++reading) {
        draft_.rectangle(QRectF(left, top + reading * mm(size_.height), box, mm(size_.height)),
                         draft_.narrow());
      }
    }
  }

  // ---- Drawings

  std::vector<Paragraph> notes() const {
    std::vector<Paragraph> paragraphs;
    if (!sheet_.whyNoDrawing.empty()) {
      paragraphs.push_back({QStringLiteral("No drawing."), fromCore(sheet_.whyNoDrawing)});
    }
    for (const std::string& note : sheet_.notes) paragraphs.push_back({{}, fromCore(note)});
    return paragraphs;
  }

  double notesHeight() { return notes().empty() ? 0.0 : heightOf(notes()) + mm(kGap); }

  double paintNotes(double top) {
    if (notes().empty()) return top;
    const TextFlow flow = column(words_);
    double y = top;
    for (const Paragraph& paragraph : notes()) {
      y = flow.draw(draft_.painter(), draft_.ink().line, paragraph, y);
    }
    return y + mm(kGap);
  }

  double leastDrawing() const {
    if (sheet_.kind == SheetKind::Survey) return mm(kLeastSketch);
    return crank_.cylinders.empty() ? 0.0 : mm(kLeastCrank);
  }

  /// What the drawing may take of the page.
  double roomForDrawing() {
    return foot_ - top_ - mm(3.0 * kGap) - askedHeight(size_) - gridsHeight() - notesHeight();
  }

  double paintDrawing(double top) {
    double height = roomForDrawing();
    if (sheet_.kind == SheetKind::Survey) {
      height = std::min(height, mm(kMostSketch));
      paintSurveySketch(draft_, QRectF(inner().left(), top, inner().width(), height), cylinders(),
                        surveyNumbers());
      return top + height + mm(kGap);
    }
    if (sheet_.chain) {
      height = std::clamp(height, mm(leastChainHeight(*sheet_.chain)), mm(kMostChain));
      paintChain(draft_, QRectF(inner().left(), top, inner().width(), height), *sheet_.chain);
      return top + height + mm(kGap);
    }
    if (!crank_.cylinders.empty()) {
      height = std::min(height, mm(kMostCrank));
      paintThrows(QRectF(inner().left(), top, inner().width(), height));
      return top + height + mm(kGap);
    }
    if (sheet_.plate) {
      return paintPlateAt(top);
    }
    return top;
  }

  /// @returns where its words begin
  double paintPlateAt(double top) {
    const auto [lies, beside] = platePlace().value_or(PlatePlace{});
    const QMarginsF around = plateMargins(lies) * mm(1.0);
    QRectF room(QPointF(inner().left(), top), plateRoom(*sheet_.plate, lies) * mm(1.0));
    if (beside) {
      words_ = besidePlate(lies);
      for (Laid& it : grids_) it.grid.narrowTo(words_.width);
    } else {
      room.moveLeft(inner().center().x() - room.width() / 2.0);
    }
    paintPlate(draft_, room.marginsRemoved(around).center(), *sheet_.plate, lies, style_);
    return beside ? top : room.bottom() + mm(kGap);
  }

  /// The crank on the left, the star on the right.
  void paintThrows(QRectF room) {
    if (sheet_.star) {
      // Wider than high: names are longer than they are high.
      const double side = std::min(mm(kMostStar), 1.35 * room.height());
      Star star{.throws = {},
                .clockwise = sheet_.star->clockwise,
                .angles = side >= mm(kRoomForAngles),
                .mark = fromCore(style_.decimalMark)};
      for (const sheet::Star::Throw& one : sheet_.star->throws) {
        star.throws.push_back({one.ahead, one.axis, fromCore(one.name)});
      }
      paintStar(draft_, QRectF(room.right() - side, room.top(), side, room.height()), star);
      room.setRight(room.right() - side - mm(kBlockGap));
    }
    paintCrank(draft_, room, crank_, Viewpoint::isometric(), firstTop(crank_));
  }

  /// How the plate lies, and whether its words stand beside it or below.
  struct PlatePlace {
    PlateLies lies = PlateLies::Level;
    bool beside = false;
  };

  std::optional<PlatePlace> platePlace() {
    const double high = foot_ - top_ - mm(2.0 * kGap);
    for (const bool beside : {false, true}) {
      for (const PlateLies lies : {PlateLies::Level, PlateLies::Upright}) {
        const QSizeF need = plateRoom(*sheet_.plate, lies) * mm(1.0);
        if (need.width() > inner().width() || need.height() > (beside ? high : roomForDrawing()))
          continue;
        if (!beside || wordsFit(besidePlate(lies), high)) return PlatePlace{lies, beside};
      }
    }
    return std::nullopt;
  }

  LineRoom besidePlate(PlateLies lies) {
    const double taken = mm(plateRoom(*sheet_.plate, lies).width() + kBesidePlate);
    return {inner().left() + taken, inner().width() - taken};
  }

  bool wordsFit(const LineRoom& room, double height) {
    if (room.width <= 0.0) return false;
    double needed = heightOf(notes(), column(room)) + mm(2.0 * kGap);
    for (const sheet::Grid& it : sheet_.grids) {
      const PrintedGrid grid(draft_, it, room.width);
      if (grid.needs() > room.width) return false;
      needed += grid.height(it.rows.size()) + mm(2.0 * kGap);
    }
    return needed <= height;
  }

  int cylinders() const {
    return sheet_.asked.empty() ? 1 : static_cast<int>(sheet_.asked.front().places.size());
  }

  /// By the order in which the sheet asks; a single has no pitch.
  SurveyNumbers surveyNumbers() const {
    if (sheet_.asked.empty()) return {};
    SurveyNumbers numbers{.seat = 1, .across = 2, .barrel = 3, .deck = 4, .liner = 5, .width = 6};
    if (cylinders() > 1) numbers.pitch = 7;
    numbers.mainBores = static_cast<int>(sheet_.asked.size());
    return numbers;
  }

  Drafting draft_;
  PageFrame page_;
  const sheet::BenchSheet& sheet_;
  const units::Style& style_;
  CrankFigure crank_;
  std::vector<Laid> grids_;
  std::vector<std::size_t> rows_;  ///< of each table that find room
  BoxSize size_;
  LineRoom words_;     ///< of notes and tables
  double top_ = 0.0;   ///< of what is between head and foot
  double foot_ = 0.0;  ///< of it
};

/// The widest font in which plate and words find room; none: it needs a larger paper.
std::optional<int> stretchOfPlate(const QSizeF& paper, const sheet::BenchSheet& sheet) {
  constexpr double kDotsInMillimetre = 1200.0 / 25.4;  // as it is printed
  QImage image(8, 8, QImage::Format_RGB32);
  image.setDotsPerMeterX(static_cast<int>(kDotsInMillimetre * 1000.0));
  image.setDotsPerMeterY(static_cast<int>(kDotsInMillimetre * 1000.0));
  QPainter painter(&image);
  const units::Style style;
  for (const int stretch : kStretches) {
    if (BenchPage(painter, paper, kDotsInMillimetre, stretch, sheet, style).plateFits())
      return stretch;
  }
  return std::nullopt;
}

/// The widest font in which all finds room.
int stretchFor(QPainter& painter, const QSizeF& paper, double millimetre,
               const sheet::BenchSheet& sheet, const units::Style& style) {
  if (sheet.plate) return stretchOfPlate(paper, sheet).value_or(kStretches.back());
  for (const int stretch : kStretches) {
    if (BenchPage(painter, paper, millimetre, stretch, sheet, style).gridsFit()) return stretch;
  }
  return kStretches.back();
}

/// From small to large.
std::vector<QPageSize::PageSizeId> largerThan(QPageSize::PageSizeId paper) {
  if (paper == QPageSize::Letter) {
    return {QPageSize::Letter, QPageSize::Tabloid, QPageSize::AnsiC, QPageSize::AnsiD,
            QPageSize::AnsiE};
  }
  return {paper, QPageSize::A3, QPageSize::A2, QPageSize::A1, QPageSize::A0};
}

}  // namespace

void paintBenchSheet(QPainter& painter, const QSizeF& paper, double millimetre,
                     const sheet::BenchSheet& sheet, const units::Style& style,
                     const CrankFigure& crank) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setRenderHint(QPainter::TextAntialiasing);
  const int stretch = stretchFor(painter, paper, millimetre, sheet, style);
  BenchPage(painter, paper, millimetre, stretch, sheet, style, crank).paint();
  painter.restore();
}

CrankFigure takeCrank(sheet::BenchSheet& sheet, const assess::Assessment& assessment,
                      const units::Style& style, const sheet::SheetOptions& options) {
  if (sheet.kind != SheetKind::Throws || !sheet.whyNoDrawing.empty()) return {};
  Crank crank = crankToDraw(assessment, style, sheet.engine);
  if (crank.figure.cylinders.empty()) {
    sheet.whyNoDrawing = crank.whyNot.toStdString();
    return {};
  }
  QString note = QStringLiteral("Cylinder %1 at its top dead centre, %2 at an angle (isometric).")
                     .arg(crank.figure.cylinders.front().name, crank.seenFrom);
  if (!crank.inFront.isEmpty()) note += QStringLiteral(" %1.").arg(crank.inFront);
  if (!crank.notGiven.isEmpty()) {
    note += QStringLiteral(" Not entered, and assumed in the figure: %1.")
                .arg(crank.notGiven.join(QStringLiteral(", ")));
  }
  const std::string text = note.toStdString();
  sheet.notes.push_back(options.words ? options.words(text) : text);
  return std::move(crank.figure);
}

QPageLayout wholePage(const QPageSize& paper, QPageLayout::Orientation orientation) {
  QPageLayout layout(paper, orientation, QMarginsF());
  layout.setMode(QPageLayout::FullPageMode);
  return layout;
}

QPageLayout takePaper(sheet::BenchSheet& sheet, QPageSize::PageSizeId wanted) {
  const QPageLayout asWanted = wholePage(QPageSize(wanted), QPageLayout::Portrait);
  const auto fits = [&](const QPageLayout& page) {
    return stretchOfPlate(page.fullRect(QPageLayout::Millimeter).size(), sheet).has_value();
  };
  if (!sheet.plate || fits(asWanted)) return asWanted;
  const auto sayTaken = [&, note = sheet.notes.size()](const QPageLayout& page) {
    const bool lying = page.orientation() == QPageLayout::Landscape;
    const QString paper = page.pageSize().name().section(u' ', 0, 0) +
                          (lying ? QStringLiteral(", landscape") : QString());
    sheet.notes.resize(note + 1);
    sheet.notes[note] = "Drawn for paper of " + paper.toStdString() +
                        ": print it at 100 % on that; a smaller paper would scale the plate.";
  };
  const bool wide = sheet.plate->length > sheet.plate->width;
  const auto alongPlate = wide ? QPageLayout::Landscape : QPageLayout::Portrait;
  const auto acrossPlate = wide ? QPageLayout::Portrait : QPageLayout::Landscape;
  const std::vector<QPageSize::PageSizeId> papers = largerThan(wanted);
  for (const QPageSize::PageSizeId larger : papers) {
    for (const auto orientation : {alongPlate, acrossPlate}) {
      const QPageLayout page = wholePage(QPageSize(larger), orientation);
      sayTaken(page);
      if (fits(page)) return page;
    }
  }
  QPageLayout cut = wholePage(QPageSize(papers.back()), QPageLayout::Portrait);
  while (!fits(cut)) {
    const QSizeF size = cut.fullRect(QPageLayout::Millimeter).size() * 1.2;
    const QString name =
        QStringLiteral("%1×%2 mm").arg(qRound(size.width())).arg(qRound(size.height()));
    cut = wholePage(QPageSize(size, QPageSize::Millimeter, name, QPageSize::ExactMatch),
                    QPageLayout::Portrait);
    sayTaken(cut);
  }
  return cut;
}

}  // namespace strokewright::ui
