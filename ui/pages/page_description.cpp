#include "ui/pages/page_description.h"

#include <algorithm>

namespace strokewright::ui {

bool PageDescription::asksFor(const describe::Input& input) const {
  return std::any_of(entries.begin(), entries.end(), [&input](const EntryGroup& group) {
    return std::find(group.inputs.begin(), group.inputs.end(), &input) != group.inputs.end();
  });
}

const std::vector<PageDescription>& pages() {
  static const std::vector<PageDescription> all = {
      enginesPage(),    throwsPage(),     rhythmPage(), surveyPage(),      fillingsPage(),
      deckPage(),       choicePage(),     platePage(),  compressionPage(), portsPage(),
      runningPage(),    likelihoodPage(), motionPage(), revsPage(),        boreStrokePage(),
      goingRoundPage(), whatIfPage(),     paperPage()};
  return all;
}

}  // namespace strokewright::ui
