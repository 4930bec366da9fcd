#pragma once
/// Sampling in a thread of its own, so that the window stays alive.

#include <QObject>
#include <functional>
#include <memory>
#include <optional>
#include <stop_token>
#include <thread>

#include "core/spread/monte_carlo.h"

namespace strokewright::ui {

/// What was sampled: in proportion to each ±, and, where it was asked for, in full.
struct Sampled {
  spread::StackSamples stack;
  std::optional<spread::StackSamples> inFull = {};
};

class Sampling final : public QObject {
  Q_OBJECT

 public:
  using InFull = std::function<std::optional<spread::StackSamples>(const spread::Run&)>;
  using QObject::QObject;

  /// Begins; what is under way is given up.
  /// @param count of samples, at least one.
  /// @param inFull sampled after the stack, in the same thread; none: not asked for. It must own
  /// all
  ///               that it works on.
  void start(spread::Stack stack, int count, InFull inFull = {});
  /// Ends what is under way without a result, within a fiftieth of a second.
  void cancel();
  bool running() const { return running_; }

 Q_SIGNALS:
  void progressed(double share);  ///< from 0 to 1
  void finished(std::shared_ptr<const Sampled> samples);
  void cancelled();

 private:
  void deliver(int run, std::shared_ptr<const Sampled> samples);

  bool running_ = false;
  int run_ = 0;          ///< what comes from an earlier one is too late
  std::jthread thread_;  ///< last: it ends before the rest goes
};

}  // namespace strokewright::ui
