#include "ui/pages/desk.h"

#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "ui/document/document.h"

namespace strokewright::ui {

namespace {

const WhatIf kFirstQuestion{.result = &out::squishGap, .input = &model::in::spacer};

}  // namespace

Desk::Desk(Document& openDocument, Taste& readersTaste, QObject* parent)
    : QObject(parent), document(openDocument), taste(readersTaste), whatIf_(kFirstQuestion) {
  connect(&document, &Document::begun, this, [this] {
    whatIf_ = kFirstQuestion;
    stackPlace_ = 1;
  });
}

void Desk::ask(const WhatIf& question) {
  if (question != whatIf_) {
    whatIf_ = question;
    Q_EMIT whatIfAsked();
  }
}

void Desk::showCylinder(int cylinder) {
  if (cylinder != cylinder_) {
    cylinder_ = cylinder;
    Q_EMIT cylinderChanged();
  }
}

void Desk::speakOfStack(int place) {
  if (place != stackPlace_) {
    stackPlace_ = place;
    Q_EMIT stackChosen();
  }
}

void Desk::speakOfSheet(sheet::SheetKind kind) {
  if (kind != sheet_) {
    sheet_ = kind;
    Q_EMIT sheetChosen();
  }
}

int Desk::subject() const {
  const model::Project& project = document.project();
  return project.target() >= 0 || project.engines.empty() ? project.target() : 0;
}

int Desk::donor() const { return document.project().referenceDonor; }

}  // namespace strokewright::ui
