#pragma once
/// A page is a question; this is what makes one page different from the next.

#include <QString>
#include <vector>

#include "core/describe/input.h"
#include "core/describe/list.h"
#include "core/describe/result.h"
#include "core/describe/tabulated.h"

class QWidget;

namespace strokewright::ui {

class Desk;

/// What a page answers: a number, its ±, and what governs it, in words.
struct Answer {
  QString number;     ///< readable at arm's length: "0.95 mm"; empty: not known
  QString plusMinus;  ///< one or two lines, or empty
  QString sentence;
  QString further;                           ///< said more quietly, or empty
  const describe::Result* result = nullptr;  ///< whose working "why" opens
  const describe::Input* unlocks = nullptr;  ///< the entry that would unlock the answer
  int unlocksOf = -1;                        ///< engine of that entry

  bool operator==(const Answer&) const = default;
};

/// Entries under one heading.
struct EntryGroup {
  QString title;  ///< empty: none
  std::vector<const describe::Input*> inputs;
};

/// Something to do with the answer: "put into the target".
struct Deed {
  QString says;
  /// What it says now, where that depends; nullptr: always the same.
  QString (*saysNow)(const Desk& desk) = nullptr;
  bool (*possible)(const Desk& desk) = nullptr;
  void (*act)(Desk& desk) = nullptr;
  /// Why it is not possible while there is an answer; empty: it is so already.
  QString whyNot = {};
};

/// A described table of the subject.
struct TableOnPage {
  const describe::Table* table = nullptr;
  QString whenEmpty = {};  ///< stands where it has no row
  /// Enter or a double click on a row; nullptr: nothing.
  void (*take)(Desk& desk, const describe::Tabulated& filled, int row) = nullptr;
  /// The cursor came to a row; -1: there is none. nullptr: nothing.
  void (*choose)(Desk& desk, const describe::Tabulated& filled, int row) = nullptr;
  QString tab = {};  ///< its name where tabs have little room; empty: the table's own
};

struct PageDescription {
  QString key;       ///< of the page in the settings
  QString name;      ///< in the list: "Deck"
  QString question;  ///< "How thick is the spacer?"
  std::vector<EntryGroup> entries = {};
  std::vector<const describe::Result*> results = {};
  std::vector<const describe::Result*> decides =
      {};  ///< known for the subject: the page is settled
  /// The page is open while one of these waits: lines that may still lower what decides.
  std::vector<const describe::Result*> awaits = {};
  bool namesEngines = false;  ///< names and notes of the engines are entered here
  bool speaksOfAll = false;   ///< every finding of the project belongs here
  bool idles = false;         ///< where no result means anything its answer stands alone
  bool checks = false;        ///< by another way: nothing on the sheet waits for it
  /// The question is put at all; nullptr: where something that decides or is awaited applies.
  bool (*needed)(const Desk& desk) = nullptr;
  /// Though what decides is known there is no answer yet; nullptr: then there is one.
  bool (*open)(const Desk& desk) = nullptr;
  Answer (*answer)(const Desk& desk) = nullptr;
  QWidget* (*picture)(Desk& desk, QWidget* parent) = nullptr;  ///< nullptr: none
  std::vector<TableOnPage> tables = {};                        ///< below the picture, or instead
  std::vector<const describe::List*> lists = {};               ///< to write on, below the entries
  Deed deed = {};

  bool asksFor(const describe::Input& input) const;
};

/// All pages, in the order the builder meets them.
const std::vector<PageDescription>& pages();

PageDescription enginesPage();
PageDescription surveyPage();
PageDescription fillingsPage();
PageDescription deckPage();
PageDescription choicePage();
PageDescription platePage();
PageDescription compressionPage();
PageDescription portsPage();
PageDescription runningPage();
PageDescription likelihoodPage();
PageDescription motionPage();
PageDescription revsPage();
PageDescription boreStrokePage();
PageDescription goingRoundPage();
PageDescription throwsPage();
PageDescription rhythmPage();
PageDescription whatIfPage();
PageDescription paperPage();

}  // namespace strokewright::ui
