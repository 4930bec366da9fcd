#pragma once
/// Runs a catalogue over engines: every result with what it read, what it waits for and its ±.

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/describe/catalogue.h"
#include "core/describe/input_set.h"
#include "core/describe/list.h"
#include "core/describe/refusal.h"

namespace strokewright::describe {

struct Finding;
struct Rule;

enum class State : std::uint8_t {
  Value,    ///< a number
  Waits,    ///< for entries that are missing
  Refused,  ///< an entry is impossible, or a leaf met a broken limit
  None,     ///< means nothing for this engine
};

/// One engine as the evaluation sees it. What it points to must outlive the evaluation.
struct Subject {
  const Entries* entries = nullptr;
  bool isDonor = false;
  const Lists* own = nullptr;     ///< of the engine; none where nullptr
  const Lists* shared = nullptr;  ///< of the project; none where nullptr
};

/// Which entries were read: of this engine, and of the reference donor.
struct Reads {
  InputSet own;
  InputSet donor;

  Reads& operator|=(const Reads& other) {
    own |= other.own;
    donor |= other.donor;
    return *this;
  }
  bool any() const { return own.any() || donor.any(); }
};

/// Why a result is refused.
struct RefusedBecause {
  const Input* input = nullptr;    ///< an impossible entry, or nullptr: a leaf's limit
  bool donors = false;             ///< the entry is the reference donor's
  std::string_view sentence = {};  ///< template of the leaf; {1} value, {2} limit
  units::Kind kind = units::Kind::Ratio;
  double value = 0.0;  ///< [SI]
  double limit = 0.0;  ///< [SI]
  bool operator==(const RefusedBecause&) const = default;
};

/// Of a result or a table whose numbers overflowed.
inline constexpr std::string_view kNotFinite = "These numbers give no finite result.";

/// What is known of one result in one cylinder, or of a table, while it is evaluated.
struct Frame {
  Reads read;
  Reads missing;
  int refusedBy = -1;     ///< index into Evaluation's refusals
  bool across = false;    ///< looked at other cylinders, or at which one it is
  std::string_view none;  ///< why it does not apply, empty: it does
  std::vector<const Input*>* directInputs = nullptr;    ///< noted for the working alone
  std::vector<const Result*>* directResults = nullptr;  ///< noted for the working alone
};

/// A result in one cylinder.
struct Cell {
  double value = 0.0;   ///< [SI] meaningful in State::Value
  double worst = 0.0;   ///< [SI] ± as the plain sum of all shares
  double likely = 0.0;  ///< [SI] ± as the root of the sum of squares
  State state = State::Waits;
  bool computed = false;  ///< value holds a number, though perhaps from typical entries
  Frame notes;
  std::uint32_t run = 0;  ///< the run in which it was evaluated
};

/// The share of one entry in the ± of one result.
struct Contributor {
  const Input* input = nullptr;
  bool donors = false;  ///< the reference donor's entry
  int cylinder = -1;    ///< -1: common to all cylinders
  double share = 0.0;   ///< [SI] ≥ 0
};

struct Tabulated;

/// An independent error, and how far results move when it is at its limit upwards.
struct Move {
  const Input* input = nullptr;
  bool donors = false;  ///< the reference donor's entry
  int cylinder = -1;    ///< -1: common to all cylinders
  Shape shape = Shape::Normal;
  double limit = 0.0;      ///< [SI] ± of the entry
  std::vector<double> by;  ///< [SI] for each result asked for; either sign
};

class Evaluation {
 public:
  /// @param referenceDonor index into subjects, or -1.
  Evaluation(const Catalogue& catalogue, std::span<const Subject> subjects, int referenceDonor);

  /// Evaluates every result of every engine.
  void run();

  /// Nudges every entry that carries a ± and fills worst and likely of every result.
  ///
  /// Each independent source (a place: one for all cylinders; a part or a list: one for each
  /// cylinder) is moved by its limit both ways; half the difference is its share. Where one side
  /// is refused the other counts alone; at an extreme, where both move the same way, the larger.
  /// A result that picks one of several (the lowest ceiling) has the ± of the one it picks: there a
  /// part is moved in all cylinders at once.
  /// @source JCGM 100:2008, 5.1.2, with sensitivities by finite difference (5.1.3 note 2).
  /// @pre run() has been called.
  void findTolerances();

  int engines() const { return static_cast<int>(engines_.size()); }
  int cylinders(int engine) const { return engines_[index(engine)].cylinders; }
  int referenceDonor() const { return referenceDonor_; }

  /// @param cylinder ignored for a result per engine.
  const Cell& cell(int engine, const Result& result, int cylinder = 0) const;
  const RefusedBecause& refusal(const Cell& cell) const { return refusal(cell.notes); }
  const RefusedBecause& refusal(const Frame& notes) const {
    return refusals_[index(notes.refusedBy)];
  }

  /// [SI] what is read for an input: the entry, else its default, else its typical value.
  double inputValue(int engine, const Input& input, int cylinder = 0) const;
  /// A finite number stands: entered and possible, or a default.
  bool inputStands(int engine, const Input& input, int cylinder = 0) const;
  bool inputGiven(int engine, const Input& input, int cylinder = 0) const;

  /// Every share in the ± of a result, largest first; entries without a share are left out.
  std::vector<Contributor> contributors(int engine, const Result& result, int cylinder = 0);

  /// How each independent error that these results read moves them, in page order.
  std::vector<Move> moves(int engine, std::span<const Result* const> results, int cylinder = 0);

  /// What is kept in a list of the engine, or of the project; empty where there is none.
  std::span<const Entries> items(int engine, const List& list) const;

  /// What the result reads itself, in the order it reads.
  struct Working {
    std::vector<const Input*> inputs;
    std::vector<const Result*> results;
  };
  Working working(int engine, const Result& result, int cylinder = 0);

  /// What if: puts one number, as if entered. For copies of an evaluation; fresh() then answers.
  /// @param inputCylinder -1: in every cylinder.
  void put(int engine, const Input& input, int inputCylinder, double value);

  /// A result evaluated when asked for (and what it reads), without ±.
  const Cell& fresh(int engine, const Result& result, int cylinder = 0);

  /// A table, filled now; include core/describe/tabulated.h to look at it.
  /// @param cylinder ignored for a table per engine.
  /// @pre run() has been called.
  Tabulated tabulated(int engine, const Table& table, int cylinder = 0);

  /// What one rule says of one engine.
  void judge(int engine, const Rule& rule, std::vector<Finding>& findings);

  const Catalogue& catalogue() const { return *catalogue_; }

 private:
  friend class Reader;

  enum class Slot : std::uint8_t { Missing, Standing, StandingBy, Entered, Impossible };

  /// A result under a nudge.
  struct Nudged {
    double value = 0.0;
    std::uint32_t run = 0;
    bool bad = false;  ///< refused under the nudge
  };

  /// What the shares in the ± of one cell come to so far.
  struct Sums {
    double worst = 0.0;
    double squares = 0.0;
  };

  struct EngineState {
    const Entries* entries = nullptr;
    const Lists* own = nullptr;
    const Lists* shared = nullptr;
    bool isDonor = false;
    int cylinders = 1;
    InputSet listed;
    std::vector<double> values;  ///< [input * cylinders + cylinder]
    std::vector<Slot> slots;
    std::vector<Cell> cells;            ///< [result * cylinders + cylinder]
    std::vector<double> held;           ///< their values, close together: read while nudging
    std::vector<Sums> sums;             ///< of their ±, while it is worked out
    std::vector<Nudged> nudged[2];      ///< like cells, up and down
    std::vector<Reads> reads;           ///< of each result, over all cylinders
    std::vector<std::uint8_t> touched;  ///< each result: reads the entry that is nudged
    std::vector<std::uint8_t> varies;  ///< each result: not the same in every cylinder by its reads
  };

  /// The entry that is nudged.
  struct Source {
    int engine = -1;
    const Input* input = nullptr;
    int cylinder = -1;  ///< -1: all
    double limit = 0.0;
    bool single = false;  ///< one of several alike in every cylinder
  };

  static std::size_t index(int i) { return static_cast<std::size_t>(i); }
  std::size_t at(const EngineState& engine, int number, int cylinder) const {
    return index(number) * index(engine.cylinders) + index(cylinder);
  }

  void fill(EngineState& state);
  Cell& evaluated(int engine, const Result& result, int cylinder);
  void evaluate(Cell& cell, int engine, const Result& result, int cylinder);
  int keepRefusal(const RefusedBecause& because);
  int keepRefusal(const Refusal& refusal);
  /// What the notes come to. @param leaf index of the refusal that was met at last, or -1.
  static State settled(Frame& notes, int leaf);
  std::string completed(int engine, const Input& input, int cylinder, std::string text) const;

  bool variesByCylinder(int engine, const Result& result, const Frame& notes) const;
  std::vector<Source> sourcesOf(int engine) const;
  bool reads(int engine, const Result& result, const Source& source) const {
    const Reads& reads = engines_[index(engine)].reads[index(result.number)];
    return (engine == source.engine ? reads.own : reads.donor)[index(source.input->number)];
  }
  void findReaders(int engine, const std::vector<Source>& sources);
  void lookAt(const Source& source);
  /// Results that pick one of several cylinders are moved in all of them at once.
  enum class Among : std::uint8_t { All, Picking, Others };
  void addShares(const Source& source, Among among);
  void nudge(const Source& source, int side);
  void release();
  double nudgedValue(int engine, const Result& result, int cylinder) {
    EngineState& state = engines_[index(engine)];
    const std::size_t place = at(state, result.number, result.per == Per::Engine ? 0 : cylinder);
    return state.touched[index(result.number)] == 0 ? state.held[place]
                                                    : nudgedAnew(engine, result, cylinder, place);
  }
  double nudgedAnew(int engine, const Result& result, int cylinder, std::size_t place);
  double heldValue(int engine, const Result& result, int cylinder) const {
    const EngineState& state = engines_[index(engine)];
    return state.held[at(state, result.number, result.per == Per::Engine ? 0 : cylinder)];
  }
  void moved(Nudged& nudged, int engine, const Result& result, int cylinder);
  /// @param from the value that nothing has nudged
  static double move(const Result& result, double from, const Nudged& up, const Nudged& down);

  const Catalogue* catalogue_;
  int referenceDonor_;
  std::vector<EngineState> engines_;
  std::vector<RefusedBecause> refusals_;
  std::uint32_t run_ = 0;
  /// A result to look at while a source is nudged.
  struct Looked {
    int engine = 0;
    const Result* result = nullptr;
    const double* held = nullptr;           ///< of its cylinders
    Sums* sums = nullptr;                   ///< of its cylinders
    Nudged* sides[2] = {nullptr, nullptr};  ///< of its cylinders
    bool shares = false;                    ///< its kind carries a ±
    bool varies = false;                    ///< from cylinder to cylinder
    bool everywhere = false;                ///< a move in one cylinder matters in all
    int first = 0;                          ///< cylinder
    int last = 0;                           ///< cylinder, this one left out
    int counted = 0;                        ///< shares of this input in a difference of cylinders
  };
  std::span<Looked> looked() {
    return std::span(readers_).subspan(readersFrom_[lookedAt_],
                                       readersFrom_[lookedAt_ + 1] - readersFrom_[lookedAt_]);
  }
  /// What reads the entries of one engine that carry a ±, entry by entry: of input i from
  /// readersFrom_[i] up to readersFrom_[i + 1].
  std::vector<Looked> readers_;
  std::array<std::size_t, kMostInputs + 1> readersFrom_{};
  std::size_t lookedAt_ = 0;      ///< the source's input
  Source source_;                 ///< engine -1: nothing is nudged
  int side_ = 0;                  ///< 0 up, 1 down
  std::vector<double> unnudged_;  ///< of the source's slots
  std::uint32_t nudgeRun_ = 0;
};

}  // namespace strokewright::describe
