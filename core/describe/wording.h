#pragma once
/// Sentences are data in the core; here they become text in the reader's units.

#include <string>
#include <string_view>

#include "core/describe/evaluation.h"
#include "core/describe/finding.h"
#include "core/units/style.h"

namespace strokewright::describe {

/// A label inside a sentence: "Bore" becomes "bore"; abbreviations keep their capitals.
std::string inSentence(std::string_view label);

/// The template with its arguments put in; an input or result stands with its name in lower case.
/// Two numbers that are not alike never read alike: where they would, all of their kind get one
/// decimal more.
std::string word(const Sentence& sentence, const units::Style& style);

/// Why a result is refused, in one sentence.
std::string word(const RefusedBecause& because, const units::Style& style);

/// A value of an input or result as text: a choice by its label, everything else with its unit.
std::string wordValue(const Input& input, double value, const units::Style& style);
std::string wordValue(const Result& result, double value, const units::Style& style);

}  // namespace strokewright::describe
