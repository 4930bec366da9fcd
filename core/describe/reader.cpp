#include "core/describe/reader.h"

#include <algorithm>
#include <utility>

#include "core/describe/evaluation.h"

namespace strokewright::describe {
namespace {

void merge(Frame& into, const Frame& from) {
  into.read |= from.read;
  into.missing |= from.missing;
  into.across = into.across || from.across;
  if (into.refusedBy < 0) into.refusedBy = from.refusedBy;
  if (into.none.empty()) into.none = from.none;
}

std::size_t bit(const Input& input) { return static_cast<std::size_t>(input.number); }

}  // namespace

/// What was read while looking at the donor becomes a read of the donor's entries.
void Reader::mergeFromDonor(const Frame& from) {
  frame_->read.donor |= from.read.own | from.read.donor;
  frame_->missing.donor |= from.missing.own | from.missing.donor;
  if (frame_->refusedBy < 0 && from.refusedBy >= 0) {
    RefusedBecause because = evaluation_->refusals_[Evaluation::index(from.refusedBy)];
    because.donors = because.input != nullptr;
    frame_->refusedBy = evaluation_->keepRefusal(because);
  }
  if (frame_->none.empty()) frame_->none = from.none;
}

void Reader::noteInput(const Input& input, bool own, int cylinder) {
  Direct& direct = *frame_->direct;
  if (own) {
    direct.inputs.set(bit(input));
    direct.inputsAcross = direct.inputsAcross || cylinder != frame_->home;
  } else {
    direct.donor = true;
  }
}

void Reader::noteResult(int engine, const Result& result, int cylinder) {
  Direct& direct = *frame_->direct;
  const auto number = static_cast<std::size_t>(result.number);
  if (engine != engine_) {
    direct.donor = true;
    evaluation_->engines_[Evaluation::index(engine)].readByOthers.set(number);
  } else if (cylinder == frame_->home || result.per == Per::Engine) {
    direct.results.set(number);
  } else {
    direct.across.set(number);
  }
}

double Reader::slot(int engine, const Input& input, int cylinder) {
  Evaluation& ev = *evaluation_;
  Evaluation::EngineState& state = ev.engines_[Evaluation::index(engine)];
  const std::size_t place = Evaluation::at(state, input, cylinder);
  const Evaluation::Slot kind = state.slots[place];
  if (frame_ == nullptr) {
    if (kind != Evaluation::Slot::StandingBy) return state.values[place];
  } else {
    const bool own = engine == engine_;
    if (frame_->working != nullptr) frame_->working->inputs.push_back(&input);
    if (frame_->direct != nullptr) noteInput(input, own, cylinder);
    (own ? frame_->read.own : frame_->read.donor).set(bit(input));
    if (kind == Evaluation::Slot::Missing) {
      (own ? frame_->missing.own : frame_->missing.donor).set(bit(input));
    } else if (kind == Evaluation::Slot::Impossible && frame_->refusedBy < 0) {
      frame_->refusedBy = ev.keepRefusal({.input = &input, .donors = !own});
    }
  }
  if (kind != Evaluation::Slot::StandingBy) return state.values[place];
  if (frame_ == nullptr || engine == engine_) {
    Reader there(ev, engine, cylinder, frame_);
    return input.standing.by(there);
  }
  Frame notes;
  Reader there(ev, engine, cylinder, &notes);
  const double value = input.standing.by(there);
  mergeFromDonor(notes);
  return value;
}

double Reader::cell(int engine, const Result& result, int cylinder) {
  Evaluation& ev = *evaluation_;
  if (frame_ == nullptr) return ev.nudgedValue(engine, result, cylinder);
  const Cell& cell = ev.evaluated(engine, result, cylinder);
  if (frame_->working != nullptr) frame_->working->results.push_back(&result);
  if (frame_->direct != nullptr) noteResult(engine, result, cylinder);
  engine == engine_ ? merge(*frame_, cell.notes) : mergeFromDonor(cell.notes);
  if (!cell.computed) {
    const RefusedBecause because =
        cell.notes.refusedBy >= 0 ? ev.refusal(cell) : RefusedBecause{.kind = result.kind};
    throw Refusal(because.sentence, because.kind, because.value, because.limit);
  }
  return cell.value;
}

bool Reader::givenIn(int engine, const Input& input, int cylinder) {
  if (frame_ != nullptr) {
    (engine == engine_ ? frame_->read.own : frame_->read.donor).set(bit(input));
  }
  return evaluation_->inputGiven(engine, input, cylinder);
}

bool Reader::given(const Input& input) { return givenIn(engine_, input, cylinder_); }

bool Reader::stands(const Input& input) {
  given(input);
  return evaluation_->inputStands(engine_, input, cylinder_);
}

bool Reader::complete() const { return frame_ == nullptr || !frame_->missing.any(); }

bool Reader::known(const Result& result) {
  const Cell& cell = evaluation_->evaluated(engine_, result, cylinder_);
  if (frame_ != nullptr) {
    frame_->read |= cell.notes.read;
    frame_->across = frame_->across || cell.notes.across;
  }
  return cell.state == State::Value;
}

bool Reader::applies(const Result& result) {
  known(result);
  return evaluation_->evaluated(engine_, result, cylinder_).state != State::None;
}

double Reader::none(std::string_view why) {
  if (frame_ != nullptr && frame_->none.empty()) frame_->none = why;
  return 1.0;  // never shown; a divisor that breaks nothing on the way out
}

double Reader::held(const Result& result) {
  if (frame_ == nullptr) return evaluation_->heldValue(engine_, result, cylinder_);
  Direct* direct = std::exchange(frame_->direct, nullptr);  // it will not follow
  const double value = cell(engine_, result, cylinder_);
  frame_->direct = direct;
  return value;
}

std::vector<Move> Reader::moves(std::span<const Result* const> results) {
  return evaluation_->moves(engine_, results, cylinder_);
}

std::span<const Entries> Reader::items(const List& list) const {
  return evaluation_->items(engine_, list);
}

int Reader::cylinder() const {
  if (frame_ != nullptr) frame_->across = true;
  return cylinder_;
}

Reader Reader::at(int cylinder) const {
  if (frame_ != nullptr) frame_->across = true;
  return Reader(*evaluation_, engine_, cylinder, frame_);
}

int Reader::cylinders() const { return evaluation_->cylinders(engine_); }

double Reader::sum(const Result& result) {
  return fold(result, [](double a, double b) { return a + b; });
}

double Reader::least(const Result& result) {
  return fold(result, [](double a, double b) { return std::min(a, b); });
}

double Reader::most(const Result& result) {
  return fold(result, [](double a, double b) { return std::max(a, b); });
}

template <typename Operation>
double Reader::fold(const Result& result, Operation operation) {
  if (frame_ != nullptr) frame_->across = true;
  double value = cell(engine_, result, 0);
  if (result.per == Per::Engine) return value;
  for (int i = 1; i < cylinders(); ++i) value = operation(value, cell(engine_, result, i));
  return value;
}

bool Reader::refused(const Result& result) {
  for (int i = 0; i < cylinders(); ++i) {
    at(i).known(result);
    if (evaluation_->evaluated(engine_, result, i).state == State::Refused) return true;
  }
  return false;
}

bool Reader::knownInAll(const Result& result) {
  for (int i = 0; i < cylinders(); ++i) {
    if (!at(i).known(result)) return false;
  }
  return true;
}

double Reader::worst(const Result& result) {
  (*this)(result);
  return evaluation_->cell(engine_, result, cylinder_).worst;
}

double Reader::likely(const Result& result) {
  (*this)(result);
  return evaluation_->cell(engine_, result, cylinder_).likely;
}

bool Reader::hasDonor() const { return evaluation_->referenceDonor_ >= 0; }

bool Reader::isDonor() const { return evaluation_->engines_[Evaluation::index(engine_)].isDonor; }

namespace {
/// The donor's cylinder that stands beside this one.
int beside(int cylinder, int donorCylinders) { return std::min(cylinder, donorCylinders - 1); }
}  // namespace

double Reader::donor(const Result& result) {
  const int donor = evaluation_->referenceDonor_;
  return cell(donor, result, beside(cylinder_, evaluation_->cylinders(donor)));
}

double Reader::donor(const Input& input) {
  const int donor = evaluation_->referenceDonor_;
  return slot(donor, input, beside(cylinder_, evaluation_->cylinders(donor)));
}

bool Reader::donorGiven(const Input& input) {
  const int donor = evaluation_->referenceDonor_;
  return donor >= 0 && givenIn(donor, input, beside(cylinder_, evaluation_->cylinders(donor)));
}

bool Reader::donorKnown(const Result& result) {
  const int donor = evaluation_->referenceDonor_;
  if (donor < 0) return false;
  const Cell& cell =
      evaluation_->evaluated(donor, result, beside(cylinder_, evaluation_->cylinders(donor)));
  if (frame_ != nullptr) {
    if (donor == engine_) {
      frame_->read |= cell.notes.read;
    } else {
      frame_->read.donor |= cell.notes.read.own | cell.notes.read.donor;
    }
  }
  return cell.state == State::Value;
}

const Entry* Reader::entry(const Input& input) const {
  static const Entry nothing;
  const Entries& entries = *evaluation_->engines_[Evaluation::index(engine_)].entries;
  const auto found = entries.find(&input);
  return found == entries.end() ? &nothing : &found->second;
}

}  // namespace strokewright::describe
