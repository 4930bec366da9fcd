#include "ui/plots/sampling.h"

#include <utility>

#include "core/describe/refusal.h"

namespace strokewright::ui {
namespace {

/// Nothing where it was stopped, or where a volume may reach zero.
std::shared_ptr<const Sampled> sampled(const spread::Stack& stack, const Sampling::InFull& inFull,
                                       const spread::Run& run) {
  try {
    auto samples = spread::sample(stack, run);
    if (!samples) return nullptr;
    Sampled all{.stack = std::move(*samples)};
    if (inFull) all.inFull = inFull(run);
    if (inFull && !all.inFull) return nullptr;
    return std::make_shared<const Sampled>(std::move(all));
  } catch (const describe::Refusal&) {
    return nullptr;
  }
}

}  // namespace

void Sampling::start(spread::Stack stack, int count, InFull inFull) {
  running_ = true;
  const int run = ++run_;
  thread_ = std::jthread([this, run, count, stack = std::move(stack),
                          inFull = std::move(inFull)](const std::stop_token& stop) {
    const auto proceed = [this, run, &stop](double share) {
      QMetaObject::invokeMethod(this, [this, run, share] {
        if (running_ && run == run_) Q_EMIT progressed(share);
      });
      return !stop.stop_requested();
    };
    auto samples = sampled(stack, inFull, {.count = count, .proceed = proceed});
    QMetaObject::invokeMethod(this, [this, run, samples] { deliver(run, samples); });
  });
}

void Sampling::cancel() {
  if (!running_) return;
  running_ = false;
  thread_.request_stop();
  Q_EMIT cancelled();
}

void Sampling::deliver(int run, std::shared_ptr<const Sampled> samples) {
  if (!running_ || run != run_) return;
  running_ = false;
  if (samples == nullptr) {
    Q_EMIT cancelled();
  } else {
    Q_EMIT finished(std::move(samples));
  }
}

}  // namespace strokewright::ui
