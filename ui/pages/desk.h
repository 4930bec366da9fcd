#pragma once
/// What all pages share: the open project, the builder's taste, what is shown, and what they ask
/// for that lies outside of themselves.

#include <QObject>
#include <QString>

#include "core/describe/input.h"
#include "core/describe/list.h"
#include "core/describe/result.h"
#include "core/sheet/kind.h"
#include "ui/pages/what_if.h"

namespace strokewright::ui {

class Document;
class Taste;

/// Handed to every page and picture; owned by the window.
class Desk final : public QObject {
  Q_OBJECT

 public:
  Desk(Document& openDocument, Taste& readersTaste, QObject* parent = nullptr);

  Document& document;
  Taste& taste;

  /// The cylinder that tables and drawings show, counted from 0; -1: all of them.
  int cylinder() const { return cylinder_; }
  void showCylinder(int cylinder);

  /// The engine the answers speak of: the target, else the first; -1: there is none.
  int subject() const;
  int donor() const;  ///< index of the reference donor, or -1

  /// Which of the best stacks the choice speaks of: its place, counted from 1.
  int stackPlace() const { return stackPlace_; }
  void speakOfStack(int place);

  /// Which sheet is to go to the machine.
  sheet::SheetKind sheet() const { return sheet_; }
  void speakOfSheet(sheet::SheetKind kind);

  /// What would have to be what; at first the spacer for another squish gap.
  const WhatIf& whatIf() const { return whatIf_; }
  void ask(const WhatIf& question);

 Q_SIGNALS:
  void cylinderChanged();
  void whatIfAsked();  ///< another question
  void stackChosen();
  void sheetChosen();
  /// Take the builder to this entry.
  void entryAsked(int engine, const describe::Input* input);
  /// Take the builder to what is kept in this list.
  void listAsked(const describe::List* list, int item, const describe::Input* column);
  /// Take the builder to this page.
  void pageAsked(const QString& key);
  /// How did you get that?
  void whyAsked(int engine, const describe::Result* result, int cylinder);
  /// The pointer or the focus came to this entry's field or its dimension; nullptr: left.
  void attention(const describe::Input* input);
  /// Said once at the foot of the window.
  void said(const QString& sentence);

 private:
  int cylinder_ = -1;
  int stackPlace_ = 1;
  sheet::SheetKind sheet_ = sheet::SheetKind::Spec;
  WhatIf whatIf_;
};

}  // namespace strokewright::ui
