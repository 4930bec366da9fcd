#pragma once
/// Runs a catalogue over engines: every result with what it read, what it waits for and its ±.

#include <cmath>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/describe/catalogue.h"
#include "core/describe/list.h"
#include "core/describe/number_set.h"
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

/// What a result reads itself, in the order it reads.
struct Working {
  std::vector<const Input*> inputs;
  std::vector<const Result*> results;
};

/// What a result reads itself in any of its cylinders: along this its numbers follow a nudge.
struct Direct {
  InputSet inputs;
  ResultSet results;          ///< of the same cylinder, or of the engine
  ResultSet across;           ///< of other cylinders
  bool inputsAcross = false;  ///< some entry of another cylinder
  bool donor = false;         ///< an entry or a result of another engine, the reference donor
};

/// What is known of one result in one cylinder, or of a table, while it is evaluated.
struct Frame {
  Reads read;
  Reads missing;
  int refusedBy = -1;          ///< index into Evaluation's refusals
  int home = 0;                ///< the cylinder
  bool across = false;         ///< looked at other cylinders, or at which one it is
  std::string_view none;       ///< why it does not apply, empty: it does
  Working* working = nullptr;  ///< where it is told what is read, if anywhere
  Direct* direct = nullptr;    ///< where it is told what is read, if anywhere
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

/// The share of one entry in the ± of one result, worst case.
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
  double worst = 0.0;      ///< [SI] of the first of them, its share at worst case
};

class Evaluation {
 public:
  /// @param referenceDonor index into subjects, or -1.
  Evaluation(const Catalogue& catalogue, std::span<const Subject> subjects, int referenceDonor);

  /// Evaluates every result of every engine.
  void run() { runAll(false); }

  /// The same, and worst and likely of every result: every entry that carries a ± is nudged.
  ///
  /// Each independent source (a place: one for all cylinders; a part or a list: one for each
  /// cylinder) is moved by its limit both ways; half the difference is its share. At a kink, where
  /// another limit begins to govern and one way moves the result much less than the other, worst
  /// case counts the further way. Where one side is refused the other counts alone; at an extreme,
  /// where both move the same way, the larger. A result that picks one of several (the lowest
  /// ceiling) has the ± of the one it picks: there a part is moved in all cylinders at once.
  /// @source JCGM 100:2008, 5.1.2, with sensitivities by finite difference (5.1.3 note 2).
  void runWithTolerances();

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
  struct Pulled {
    double value = 0.0;  ///< NaN: refused
    std::uint32_t run = 0;
  };

  /// What the shares in the ± of one cell come to so far.
  struct Sums {
    double worst = 0.0;
    double squares = 0.0;
  };

  /// Who reads an input or a result itself: up to the next one's first, in Followed's order.
  struct User {
    std::uint16_t rank = 0;
    bool across = false;  ///< from other cylinders too
  };

  using Cylinders = std::uint32_t;  ///< a bit each
  static constexpr Cylinders kAll = ~Cylinders{0};

  /// What a nudge is for: what leads to none of it need not follow.
  enum Towards : std::uint8_t {
    kPicking = 1,  ///< results that pick one of several cylinders
    kAlike = 2,    ///< the same in every cylinder, whatever happens in the others
    kApart = 4,    ///< the other results that have a ±
    kVarying = 8,  ///< results that are not the same in every cylinder
    kShares = kPicking | kAlike | kApart,
    kAnything = kShares | kVarying,
  };

  /// How one result follows the nudges.
  struct Followed {
    const Result* result = nullptr;
    std::size_t place = 0;              ///< of its first cylinder
    ResultSet users;                    ///< in followed: who reads it itself
    Cylinders valued = 0;               ///< in which it has a value and is asked for one
    bool everyCylinder = false;         ///< others look at all of them, not at the first alone
    std::uint8_t leads = 0;             ///< Towards, of itself and of what follows it
    std::uint8_t shares = 0;            ///< Towards: one of kShares where its kind carries a ±
    bool varies = false;                ///< from cylinder to cylinder
    const Input* countedFor = nullptr;  ///< whose shares in a difference of cylinders
    std::uint8_t counted = 0;           ///< were counted so often
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
    std::vector<std::uint32_t> first;  ///< each result: its place in what follows
    std::vector<Cell> cells;           ///< each result, of its first cylinder or of all
    std::vector<Cell> others;          ///< of the other cylinders, once one is not like the first
    std::vector<double> held;          ///< their values, close together
    std::vector<std::uint8_t> varies;  ///< each result: may not be the same in every cylinder

    // What only a run with ± fills.
    std::vector<Reads> reads;          ///< of each result, over all cylinders
    std::vector<Direct> direct;        ///< of each result
    std::vector<const Result*> order;  ///< as they were evaluated: after what they read
    ResultSet ordered;
    ResultSet readByOthers;          ///< from other engines
    std::vector<double> moved[2];    ///< held, followed by what the nudge moves up and down
    std::vector<Pulled> pulled[2];   ///< evaluated when asked for, under the nudge up and down
    std::vector<Sums> sums;          ///< of their ±, while it is worked out
    std::vector<Followed> followed;  ///< in the order of evaluation
    std::vector<User> users;
    std::vector<std::uint32_t> inputUsers;   ///< of each input: its first in users
    std::vector<std::uint32_t> resultUsers;  ///< of each in followed: its first in users
    std::vector<Cylinders> staleIn;          ///< of each in followed: to be evaluated anew
    ResultSet stale;                         ///< in followed: to be evaluated anew
  };

  /// The entry that is nudged.
  struct Source {
    int engine = -1;
    const Input* input = nullptr;
    int cylinder = -1;  ///< -1: all
    double limit = 0.0;
    bool single = false;  ///< one of several alike in every cylinder
  };

  /// A number that a nudge moved.
  struct Follower {
    std::uint8_t engine = 0;
    std::uint8_t cylinder = 0;
    std::uint16_t rank = 0;  ///< in followed
  };

  static std::size_t index(int i) { return static_cast<std::size_t>(i); }
  static std::size_t at(const EngineState& engine, const Input& input, int cylinder) {
    return index(input.number) * index(engine.cylinders) + index(cylinder);
  }
  static std::size_t at(const EngineState& engine, const Result& result, int cylinder) {
    const std::size_t first = engine.first[index(result.number)];
    return result.per == Per::Engine ? first : first + index(cylinder);
  }

  /// Each cylinder has a cell of its own.
  static bool isApart(const EngineState& engine, const Result& result) {
    return result.per == Per::Cylinder && engine.varies[index(result.number)] != 0;
  }
  static std::size_t otherAt(const EngineState& engine, const Result& result, int cylinder) {
    return at(engine, result, cylinder) - index(result.number) - 1;  // without the first cylinders
  }
  static const Cell& cellOf(const EngineState& engine, const Result& result, int cylinder) {
    return cylinder == 0 || !isApart(engine, result)
               ? engine.cells[index(result.number)]
               : engine.others[otherAt(engine, result, cylinder)];
  }
  static Cell& cellOf(EngineState& engine, const Result& result, int cylinder) {
    return const_cast<Cell&>(cellOf(std::as_const(engine), result, cylinder));
  }

  void fill(EngineState& state);
  void runAll(bool noting);
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

  void planNudges(int engine);
  void findUsers(EngineState& state);
  void addShares(const Source& source, std::uint8_t towards);
  std::uint8_t sharesOf(const EngineState& state, const Result& result) const;
  bool leadsTo(const Source& source, std::uint8_t towards) const;
  void startFrom(const Source& source);
  void settle(int engine, std::uint8_t towards);
  Cylinders settleSide(EngineState& state, int engine, std::size_t rank, Cylinders stale);
  void share(const Follower& follower, std::uint8_t towards);
  void keepTolerances(EngineState& state);

  void nudge(const Source& source);
  void goTo(int side);
  void release();
  double nudgedValue(int engine, const Result& result, int cylinder) {
    EngineState& state = engines_[index(engine)];
    const std::size_t place = at(state, result, cylinder);
    if (!followedHere(engine, result, cylinder)) return nudgedAnew(engine, result, cylinder, place);
    const double value = state.moved[side_][place];
    if (std::isnan(value)) refuse(result);
    return value;
  }
  /// Whoever asks is known to read this and follows it, so it was brought up to date before.
  bool followedHere(int engine, const Result& result, int cylinder) const {
    if (asking_ == nullptr) return false;
    if (engine != askingEngine_) return true;
    const std::size_t number = index(result.number);
    return asking_->across[number] ||
           (asking_->results[number] && (cylinder == home_ || result.per == Per::Engine));
  }
  [[noreturn]] static void refuse(const Result& result);
  double nudgedAnew(int engine, const Result& result, int cylinder, std::size_t place);
  double heldValue(int engine, const Result& result, int cylinder) const {
    const EngineState& state = engines_[index(engine)];
    return state.held[at(state, result, cylinder)];
  }
  /// NaN where it is refused.
  double underNudge(int engine, const Result& result, int cylinder);
  /// How far a nudge moves a result.
  struct Moved {
    double mean = 0.0;   ///< [SI] half the difference, with its sign
    double worst = 0.0;  ///< [SI] its share at worst case, >= 0
  };
  /// @param from the value that nothing has nudged; up and down NaN where that side is refused
  static Moved moved(const Result& result, double from, double up, double down);

  const Catalogue* catalogue_;
  int referenceDonor_;
  std::vector<EngineState> engines_;
  std::vector<RefusedBecause> refusals_;
  std::uint32_t run_ = 0;
  bool noting_ = false;  ///< what each result reads itself

  Source source_;                 ///< engine -1: nothing is nudged
  int side_ = 0;                  ///< 0 up, 1 down
  std::vector<double> sides_[2];  ///< what the source's slots hold, up and down
  std::vector<double> unnudged_;  ///< and where they are left alone
  std::uint32_t nudgeRun_ = 0;
  std::vector<Follower> followers_;
  const Direct* asking_ = nullptr;  ///< of the result that is evaluated under the nudge
  int askingEngine_ = 0;
  int home_ = 0;  ///< the cylinder it is evaluated for
};

}  // namespace strokewright::describe
