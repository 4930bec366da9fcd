#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "tests/app/ran.h"

namespace strokewright::app {
namespace {

using testing::HasSubstr;

std::vector<std::string> soundOfTwin(std::vector<std::string> more) {
  std::vector<std::string> call = {"sound", sample("tansy-270")};
  call.insert(call.end(), more.begin(), more.end());
  return call;
}

TEST(SoundCommand, WritesAFileOfThreeSeconds) {
  const auto path = std::filesystem::temp_directory_path() / "strokewright sound test.wav";
  const Ran it = ran(soundOfTwin({"-o", path.string(), "--speed", "3000"}));
  EXPECT_EQ(it.status, 0);
  EXPECT_EQ(it.err, "");
  std::ifstream file(path, std::ios::binary);
  const std::string bytes(std::istreambuf_iterator<char>(file), {});
  EXPECT_EQ(bytes.size(), 44U + 2U * 3U * 44100U);
  EXPECT_EQ(bytes.substr(0, 4), "RIFF");
  std::filesystem::remove(path);
}

TEST(SoundCommand, SaysWhatItWaitsFor) {
  const Ran it = ran({"sound", sample("tansy-270"), "--set", "throw_ahead_rad=", "-o", "x.wav"});
  EXPECT_EQ(it.status, 1);
  EXPECT_EQ(it.err, "firing_table: waits for: throw_ahead_rad\n");
}

TEST(SoundCommand, IsNotWrittenOverTheProject) {
  const std::string job = testing::TempDir() + "job.wav";
  std::filesystem::copy_file(sample("tansy-270"), job,
                             std::filesystem::copy_options::overwrite_existing);
  const Ran it = ran({"sound", job, "-o", job});
  EXPECT_EQ(it.status, 2);
  EXPECT_THAT(it.err, HasSubstr("is the project itself"));
  EXPECT_EQ(textOf(job), textOf(sample("tansy-270")));
}

TEST(SoundCommand, RefusesOtherNamesAndSpeeds) {
  EXPECT_THAT(ran(soundOfTwin({"-o", "x.mp3"})).err, HasSubstr("Give a name such as OUT.wav"));
  EXPECT_THAT(ran(soundOfTwin({"-o", "x.wav", "--speed", "fast"})).err,
              HasSubstr("such as --speed 3000"));
  EXPECT_THAT(ran(soundOfTwin({"-o", "x.wav", "--speed", "1e12"})).err,
              HasSubstr("too fast to be heard"));
}

}  // namespace
}  // namespace strokewright::app
