#pragma once
/// Sampling in a thread of its own, so that the window stays alive.

#include <QObject>
#include <memory>
#include <stop_token>
#include <thread>

#include "core/spread/monte_carlo.h"

namespace strokewright::ui {

class Sampling final : public QObject {
  Q_OBJECT

 public:
  using QObject::QObject;

  /// Begins; what is under way is given up.
  /// @param count of samples, at least one.
  void start(spread::Stack stack, int count);
  /// Ends what is under way without a result, within a fiftieth of a second.
  void cancel();
  bool running() const { return running_; }

 Q_SIGNALS:
  void progressed(double share);  ///< from 0 to 1
  void finished(std::shared_ptr<const spread::StackSamples> samples);
  void cancelled();

 private:
  void deliver(int run, std::shared_ptr<const spread::StackSamples> samples);

  bool running_ = false;
  int run_ = 0;          ///< what comes from an earlier one is too late
  std::jthread thread_;  ///< last: it ends before the rest goes
};

}  // namespace strokewright::ui
