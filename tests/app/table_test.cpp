#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "tests/app/ran.h"

namespace strokewright::app {
namespace {

using nlohmann::json;
using testing::HasSubstr;
using testing::StartsWith;

Ran tabled(std::vector<std::string> more = {}) {
  std::vector<std::string> call = {"table", sample("burdock-719"), "piston_motion"};
  call.insert(call.end(), more.begin(), more.end());
  return ran(call);
}

TEST(TableCommand, WritesCsvInSiWithTheUnitInTheHeader) {
  const Ran it = tabled();
  EXPECT_EQ(it.status, 0);
  EXPECT_EQ(it.err, "");
  EXPECT_THAT(it.out, StartsWith("Crank angle (rad),Down from top dead centre (m),"
                                 "Speed downwards (m/s),Acceleration downwards (m/s2)\r\n0,0,0,"));
  EXPECT_EQ(std::ranges::count(it.out, '\n'), 722);
}

TEST(TableCommand, WritesTheSameNumbersAsJson) {
  const json written = json::parse(tabled({"--json"}).out);
  EXPECT_EQ(written["table"], "piston_motion");
  EXPECT_EQ(written["engine"], "Burdock 719");
  EXPECT_EQ(written["cylinder"], 1);
  EXPECT_EQ(written["columns"]["speed_m_s"]["unit"], "m/s");
  const json& travel = written["columns"]["travel_m"]["values"];
  ASSERT_EQ(travel.size(), 721u);
  EXPECT_NEAR(travel[360].get<double>(), 0.066, 1e-15);
  EXPECT_THAT(tabled().out, HasSubstr("\r\n3.141592653589793," + travel[360].dump()));
}

TEST(TableCommand, IsOfTheNamedEngineAndCylinder) {
  const json donor = json::parse(tabled({"--json", "--engine", "Burdock 636", "--cylinder=3"}).out);
  EXPECT_EQ(donor["engine"], "Burdock 636");
  EXPECT_EQ(donor["cylinder"], 3);
}

TEST(TableCommand, EntersWhatIsSet) {
  const json written = json::parse(tabled({"--json", "--set", "throw_m=34"}).out);
  EXPECT_NEAR(written["columns"]["travel_m"]["values"][360].get<double>(), 0.068, 1e-15);
}

TEST(TableCommand, SaysWhatItWaitsFor) {
  const Ran text = tabled({"--set", "rod_length_m="});
  EXPECT_EQ(text.status, 1);
  EXPECT_EQ(std::ranges::count(text.out, '\n'), 1) << "the header stands alone";
  EXPECT_EQ(text.err, "piston_motion: waits for: rod_length_m\n");
  const Ran machines = tabled({"--json", "--set", "rod_length_m="});
  EXPECT_EQ(machines.status, 1);
  const json written = json::parse(machines.out);
  EXPECT_EQ(written["waits_for"], json::array({"rod_length_m"}));
  EXPECT_TRUE(written["columns"]["travel_m"]["values"].is_null());
}

TEST(TableCommand, SaysWhyItIsRefused) {
  const Ran text = tabled({"--set", "rod_length_m=30 mm"});
  EXPECT_EQ(text.status, 1);
  EXPECT_THAT(text.err, HasSubstr("piston_motion: refused: A rod of 30.00\u00a0mm cannot turn"));
  const json written = json::parse(tabled({"--json", "--set", "rod_length_m=30 mm"}).out);
  EXPECT_THAT(written["refused"], HasSubstr("cannot turn"));
  EXPECT_FALSE(written.contains("waits_for"));
}

TEST(TableCommand, SaysWhyItDoesNotApply) {
  const Ran it = ran({"table", sample("burdock-719"), "port_timing", "--json"});
  EXPECT_EQ(it.status, 1);
  EXPECT_EQ(json::parse(it.out)["does_not_apply"], "a four-stroke has valves instead of ports");
  EXPECT_THAT(it.err, HasSubstr("does not apply: a four-stroke has valves"));
}

TEST(TableCommand, HasTheStatusOfTheEngineWhereItHasRows) {
  const Ran it = tabled({"--set", "head_gasket_m=-1"});
  EXPECT_EQ(it.status, 1);
  EXPECT_EQ(std::ranges::count(it.out, '\n'), 722);
}

TEST(TableCommand, SaysThatThereMayBeMoreOrders) {
  const Ran it =
      ran({"table", sample("burdock-719"), "firing_orders", "--set", "cylinder_count=8", "--set",
           "throw_ahead_rad=0; 180; 90; 270; 270; 90; 180; 0", "--set", "firing_order="});
  EXPECT_EQ(std::ranges::count(it.out, '\n'), 129);
  EXPECT_THAT(it.err, HasSubstr("firing_orders: one firing of each cylinder"));
  EXPECT_THAT(it.err, HasSubstr("the 128 most even"));
}

}  // namespace
}  // namespace strokewright::app
