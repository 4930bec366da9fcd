#include <fstream>
#include <ostream>

#include "app/commands.h"
#include "app/opened_project.h"
#include "app/telling.h"
#include "core/describe/refusal.h"
#include "core/describe/tabulated.h"
#include "core/describe/wording.h"
#include "core/firing/results.h"
#include "core/firing/sound.h"
#include "core/model/inputs.h"
#include "core/units/parse.h"

namespace strokewright::app {
namespace {

namespace in = model::in;
using describe::Quantity;
using describe::State;
using units::Kind;

/// [rad/s] of --speed, or the speed wanted of the engine.
double speedOf(const Arguments& arguments, const assess::Assessment& assessment, int engine) {
  const auto text = arguments.text("--speed");
  if (!text) {
    if (assessment.evaluation().inputStands(engine, in::wantedSpeed)) {
      return assessment.evaluation().inputValue(engine, in::wantedSpeed);
    }
    throw Unusable({"No speed is wanted of the engine yet: say one, such as --speed 3000."});
  }
  const units::Parsed parsed =
      units::parse(Kind::Speed, *text, units::UnitGroup::metric()[Kind::Speed]);
  if (parsed.values.size() == 1 && parsed.values.front() > 0.0) return parsed.values.front();
  throw Unusable({"“", *text, "” is no speed: give revolutions a minute, such as --speed 3000."});
}

/// The file. @throws Unusable for a speed that cannot be heard
std::string bytesOf(const firing::Firings& firings, const firing::Playing& playing) {
  try {
    return firing::wav(firing::soundOf(firings.order, firings.strokes, playing), playing.rate);
  } catch (const describe::Refusal& refusal) {
    throw Unusable({describe::word(describe::Sentence{refusal.sentence(),
                                                      {Quantity{refusal.kind(), refusal.value()},
                                                       Quantity{refusal.kind(), refusal.limit()}}},
                                   kBench)});
  }
}

}  // namespace

int sound(const Arguments& arguments, std::ostream& err) {
  const std::string path = *arguments.text("-o");
  if (!path.ends_with(".wav")) {
    throw Unusable({"“", path, "”: a sound is written as WAV. Give a name such as OUT.wav."});
  }
  spareProject(arguments, path);
  const OpenedProject opened = openProject(arguments, err);
  assess::Assessment assessment(opened.project);
  const int engine = opened.engine();
  const describe::Tabulated fires = assessment.evaluation().tabulated(engine, out::firingTable);
  if (fires.state != State::Value) {
    err << "firing_table: " << whyNone(assessment, fires.state, fires.notes) << '\n';
    return 1;
  }
  const firing::Firings firings = firing::firingsOf(fires.rows);
  const firing::Playing playing{.speed = speedOf(arguments, assessment, engine)};
  const std::string bytes = bytesOf(firings, playing);
  std::ofstream file(pathOf(path), std::ios::binary);
  file << bytes;
  file.close();
  if (!file)
    throw Unusable({"“", path, "” could not be written. Is the folder there, and writable?"});
  return 0;
}

}  // namespace strokewright::app
