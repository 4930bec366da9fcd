#include "ui/print/bench_painter.h"

#include <QImage>
#include <QPainter>
#include <QPainterPath>
#include <QtMath>
#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "core/model/inputs.h"
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
namespace in = model::in;

// All in millimetres.
constexpr double kGap = 1.6;           // between parts of the page
constexpr double kClosing = 9.0;       // check bar and signature
constexpr double kWords = 66.0;        // width of what says how to measure
constexpr double kOneBox = 15.0;       // least width of a place of one box
constexpr double kReading = 11.5;      // least width of one of several readings beside each other
constexpr double kOfSeveral = 8.2;     // least width of each of several
constexpr double kMostBox = 26.0;      // width
constexpr double kBetween = 3.0;       // places
constexpr double kLeastBetween = 1.4;  // where captions are as wide as their boxes
constexpr double kAfterName = 2.0;     // of a place, to the number that belongs to it
constexpr double kLeastBox = 4.6;      // height
constexpr double kMostBoxHeight = 13.0;
constexpr double kBoxStep = 0.2;
constexpr double kBlockGap = 1.8;
constexpr double kMostObjections = 18.0;
constexpr double kSmallSketch = 40.0;  // before a reading is left out
constexpr double kLeastSketch = 52.0;
constexpr double kMostSketch = 84.0;
constexpr double kMostChain = 170.0;
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

  /// What stands on other sheets, with those of this one that find no room.
  Paragraph onOtherSheets(std::size_t listed) const {
    const auto first = sheet_.objections.begin() + static_cast<std::ptrdiff_t>(listed);
    std::vector<sheet::Objection> others(first, sheet_.objections.end());
    others.insert(others.end(), sheet_.leftOut.begin(), sheet_.leftOut.end());
    if (others.empty()) return {};
    return {QStringLiteral("On other sheets:"), fromCore(countOf(others)) + QLatin1Char('.')};
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
      const Paragraph rest = onOtherSheets(count);
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

  /// How the boxes of one place stand.
  struct Boxes {
    std::size_t places = 1;  ///< in a line
    double width = 0.0;      ///< [device units] of a place
    int readings = 1;
    int across = 1;             ///< readings beside each other
    int rows = 1;               ///< of them
    double between = kBetween;  ///< [mm] places
  };

  /// Places stand apart unless their captions need the room.
  Boxes boxesOf(const sheet::Asked& asked, const BoxSize& size) const {
    const Boxes boxes = boxesApart(asked, size, kBetween);
    const bool fit = std::ranges::all_of(asked.places, [&](const sheet::Box& place) {
      return captionWidth(fromCore(place.label), place) <= boxes.width;
    });
    return fit ? boxes : boxesApart(asked, size, kLeastBetween);
  }

  Boxes boxesApart(const sheet::Asked& asked, const BoxSize& size, double between) const {
    const auto columns = columnsOf(asked);
    Boxes boxes{.readings = std::min(asked.readings, size.readings), .between = between};
    double least = kOfSeveral * static_cast<double>(columns);
    if (columns == 1) least = boxes.readings > 1 ? std::max(kOneBox, 2.0 * kReading) : kOneBox;
    const double room = inner().right() - boxesLeft() + mm(between);
    const auto places = static_cast<std::size_t>(room / mm(least + between));
    boxes.places =
        std::clamp<std::size_t>(places, 1, std::max<std::size_t>(1, asked.places.size()));
    const double most =
        kMostBox * static_cast<double>(std::max(columns, static_cast<std::size_t>(boxes.readings)));
    boxes.width =
        std::min(room / static_cast<double>(boxes.places), mm(most + between)) - mm(between);
    if (columns == 1) {
      boxes.across = std::clamp(static_cast<int>(boxes.width / mm(kReading)), 1, boxes.readings);
    }
    boxes.rows = (boxes.readings + boxes.across - 1) / boxes.across;
    if (columns == 1) boxes.across = (boxes.readings + boxes.rows - 1) / boxes.rows;
    return boxes;
  }

  /// Over the boxes of a place, what their columns hold.
  double headingHeight(const sheet::Asked& asked) const {
    return asked.columns.empty() ? 0.0 : draft_.textHeight();
  }

  double captionHeight() const { return draft_.textHeight() + mm(0.4); }

  double lineHeight(const sheet::Asked& asked, const BoxSize& size) const {
    return captionHeight() + headingHeight(asked) + boxesOf(asked, size).rows * mm(size.height) +
           mm(1.0);
  }

  double boxesHeight(const sheet::Asked& asked, const BoxSize& size) const {
    const std::size_t inLine = boxesOf(asked, size).places;
    const std::size_t lines = (asked.places.size() + inLine - 1) / inLine;
    return static_cast<double>(lines) * lineHeight(asked, size);
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
    return TextFlow(draft_.font(), *draft_.painter().device(), room);
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
    const double room = foot_ - top_ - mm(2.0 * kGap) - notesHeight();
    const auto fits = [&](const BoxSize& size) {
      return askedHeight(size) + gridsHeight() + leastDrawing() <= room;
    };
    size_ = {kMostReadings, kLeastBox};
    if (!fits(size_)) leastSketch_ = kSmallSketch;
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
    const Boxes boxes = boxesOf(asked, size_);
    const bool named = placesFindRoomForNames(asked, boxes.width);
    for (std::size_t i = 0; i < asked.places.size(); ++i) {
      const double left =
          boxesLeft() + static_cast<double>(i % boxes.places) * (boxes.width + mm(boxes.between));
      const double line = top + static_cast<double>(i / boxes.places) * lineHeight(asked, size_);
      const sheet::Box& place = asked.places[i];
      paintCaption(place, named ? nameOfPlace(asked, place) : fromCore(place.label),
                   QPointF(left, line), boxes.width);
      paintBoxes(asked, boxes, QPointF(left, line + captionHeight()));
    }
    const double bottom = top + std::max(y - top, boxesHeight(asked, size_));
    const double rule = bottom + mm(kBlockGap / 2.0);
    draft_.line(QPointF(inner().left(), rule), QPointF(inner().right(), rule), draft_.narrow());
    return bottom + mm(kBlockGap);
  }

  /// "cylinder 2"
  static QString nameOfPlace(const sheet::Asked& asked, const sheet::Box& place) {
    return place.label.empty() ? QString() : fromCore(asked.place + " " + place.label);
  }

  bool placesFindRoomForNames(const sheet::Asked& asked, double width) const {
    return std::ranges::all_of(asked.places, [&](const sheet::Box& place) {
      return captionWidth(nameOfPlace(asked, place), place) <= width;
    });
  }

  double captionWidth(const QString& name, const sheet::Box& place) const {
    return draft_.textWidth(name) + mm(kAfterName) + draft_.textWidth(fromCore(place.drawn), true);
  }

  /// The number close to the name, so that it is not read as that of the next place.
  void paintCaption(const sheet::Box& place, const QString& name, QPointF topLeft, double width) {
    draft_.text(topLeft, Qt::AlignLeft | Qt::AlignTop, name, false, draft_.ink().faint);
    const double after = name.isEmpty() ? 0.0 : draft_.textWidth(name) + mm(kAfterName);
    const QString drawn = fromCore(place.drawn);
    const double most = width - draft_.textWidth(drawn, true);
    draft_.text(topLeft + QPointF(std::min(after, most), 0.0), Qt::AlignLeft | Qt::AlignTop, drawn,
                true);
  }

  /// Columns, each with its heading, of readings one below the other; without columns readings
  /// stand beside each other, as many as there is room for.
  void paintBoxes(const sheet::Asked& asked, const Boxes& boxes, QPointF topLeft) {
    const int columns = std::max(boxes.across, static_cast<int>(columnsOf(asked)));
    const double width = boxes.width / columns;
    const double top = topLeft.y() + headingHeight(asked);
    for (int column = 0; column < columns; ++column) {
      const double left = topLeft.x() + column * width;
      if (!asked.columns.empty()) {
        draft_.text(QPointF(left, topLeft.y()), Qt::AlignLeft | Qt::AlignTop,
                    fromCore(asked.columns[static_cast<std::size_t>(column)]), false,
                    draft_.ink().faint);
      }
      for (int row = 0; row < boxes.rows; ++row) {
        if (row * boxes.across + column % boxes.across >= boxes.readings) continue;
        draft_.rectangle(QRectF(left, top + row * mm(size_.height), width, mm(size_.height)),
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
    if (sheet_.kind == SheetKind::Survey) return mm(leastSketch_);
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
    if (!sheet_.notes.empty() && sheet_.notes.front().starts_with(sheet::kNotToBeCut)) {
      writeAcross(room, fromCore(sheet::kNotToBeCut));
    }
    return beside ? top : room.bottom() + mm(kGap);
  }

  /// From corner to corner, for nobody to overlook.
  void writeAcross(const QRectF& room, const QString& words) {
    QPainter& painter = draft_.painter();
    painter.save();
    painter.translate(room.center());
    painter.rotate(-qRadiansToDegrees(std::atan2(room.height(), room.width())));
    QFont large = painter.font();
    large.setBold(true);
    QPainterPath letters;  // drawn, so that it is no word over another to whoever reads the text
    letters.addText(QPointF(), large, words);
    const QRectF extent = letters.boundingRect();
    const double scale = 0.7 * std::hypot(room.width(), room.height()) / extent.width();
    painter.scale(scale, scale);
    painter.translate(-extent.center());
    painter.setOpacity(0.45);
    painter.fillPath(letters, draft_.ink().line);
    painter.restore();
  }

  /// The crank on the left, the star on the right.
  void paintThrows(QRectF room) {
    if (sheet_.star) {
      // Wider than high: names are longer than they are high.
      const double side = std::min(mm(kMostStar), 1.35 * room.height());
      Star star{.throws = {},
                .clockwise = sheet_.star->clockwise,
                .senseSaid = sheet_.star->senseSaid,
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

  /// By the order in which the sheet asks; what it does not ask for has none.
  SurveyNumbers surveyNumbers() const {
    const auto numberOf = [&](const describe::Input* input) {
      const auto asked = std::ranges::find(sheet_.asked, input, &sheet::Asked::input);
      return asked == sheet_.asked.end() ? 0 : static_cast<int>(asked - sheet_.asked.begin()) + 1;
    };
    return {.seat = numberOf(&in::seatHeight),
            .across = numberOf(&in::seatAcross),
            .barrel = numberOf(&in::barrelHeight),
            .direct = numberOf(&in::deckHeight),
            .deck = numberOf(&in::measuredDeckClearance),
            .liner = numberOf(&in::linerProud),
            .width = numberOf(&in::seatAcrossWidth),
            .pitch = numberOf(&in::cylinderPitch),
            .mainBores = numberOf(nullptr)};
  }

  Drafting draft_;
  PageFrame page_;
  const sheet::BenchSheet& sheet_;
  const units::Style& style_;
  CrankFigure crank_;
  std::vector<Laid> grids_;
  std::vector<std::size_t> rows_;  ///< of each table that find room
  BoxSize size_;
  double leastSketch_ = kLeastSketch;  ///< [mm]
  LineRoom words_;                     ///< of notes and tables
  double top_ = 0.0;                   ///< of what is between head and foot
  double foot_ = 0.0;                  ///< of it
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
  QString note = QStringLiteral("Cylinder %1 at its top dead centre, at an angle (isometric), %2.")
                     .arg(crank.figure.cylinders.front().name, crank.seenFrom);
  if (!crank.atFreeEnd.isEmpty()) note += QStringLiteral(" %1.").arg(inFront(crank));
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

QString nameOf(const QPageLayout& page) {
  const bool lying = page.orientation() == QPageLayout::Landscape;
  return page.pageSize().name().section(u' ', 0, 0) +
         (lying ? QStringLiteral(", landscape") : QString());
}

QPageLayout takePaper(sheet::BenchSheet& sheet, QPageSize::PageSizeId wanted) {
  const QPageLayout asWanted = wholePage(QPageSize(wanted), QPageLayout::Portrait);
  const auto fits = [&](const QPageLayout& page) {
    return stretchOfPlate(page.fullRect(QPageLayout::Millimeter).size(), sheet).has_value();
  };
  if (!sheet.plate || fits(asWanted)) return asWanted;
  const auto sayTaken = [&, note = sheet.notes.size()](const QPageLayout& page) {
    sheet.notes.resize(note + 1);
    sheet.notes[note] = "Drawn for paper of " + nameOf(page).toStdString() +
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
