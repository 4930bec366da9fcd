#pragma once
/// The program without its window. Knows no Qt, needs no display, heeds no locale.

#include <functional>
#include <iosfwd>
#include <span>
#include <string>
#include <string_view>

#include "core/assess/assess.h"
#include "core/sheet/kind.h"

namespace strokewright::app {

/// Which sheet is asked for, and where it goes.
struct SheetCall {
  sheet::SheetKind kind = sheet::SheetKind::Spec;
  int engine = -1;    ///< index into the project; -1: the target, or the first engine without one
  std::string paper;  ///< "A4", "Letter", or empty: what is usual here
  std::string path;   ///< a PDF; of the plate also .svg or .dxf
};

/// What became of it.
struct SheetOutcome {
  bool written = true;
  std::string says = {};  ///< why it was not written; or of what was, what is otherwise than asked
};

/// Writes a sheet of one engine.
using SheetWriter =
    std::function<SheetOutcome(const assess::Assessment& assessment, const SheetCall& call)>;

/// Whether the arguments (without the name of the program) ask for the window: none at all, or one
/// that names a file.
bool asksForWindow(std::span<const std::string> args);

/// Runs a command.
/// @returns  exit status: 0 nothing forbids; 1 something forbids, a result of the sheet is refused,
///           nothing solves, or a table waits, is refused or means nothing; 2 the file or the call
///           is unusable, err says why. Never throws.
int run(std::span<const std::string> args, std::ostream& out, std::ostream& err,
        const SheetWriter& writeSheet);

}  // namespace strokewright::app
