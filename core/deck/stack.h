#pragma once
/// The stack under the head: where the deck is, where the crown comes to, what a spacer does.
/// All of it is sums of lengths; plane geometry, signs as the trade uses them.

namespace strokewright::deck {

/// What lies between crank axis and deck, the spacer left out.
struct Stack {
  double seatHeight = 0.0;    ///< [m] crank axis to barrel seat
  double baseGaskets = 0.0;   ///< [m] all base gaskets together, compressed
  double barrelHeight = 0.0;  ///< [m] barrel seat to deck
};

/// Crank axis to the face the barrel was measured to [m], without spacer.
double stackHeight(const Stack& stack);

struct Deck {
  double heightWithoutSpacer = 0.0;  ///< [m] stackHeight(), or the deck height measured direct
  double linerProtrusion = 0.0;      ///< [m] only where that height was taken to the block face
  double spacer = 0.0;               ///< [m] negative for a skim
};

/// Crank axis to deck [m], spacer in.
double deckHeight(const Deck& deck);

struct Crown {
  double topPinHeight = 0.0;       ///< [m] as motion::topPinHeight()
  double compressionHeight = 0.0;  ///< [m] gudgeon pin axis to the squish-band plane of the crown
};

/// Crank axis to crown at top dead centre [m].
double crownHeight(const Crown& crown);

struct DeckAndCrown {
  double deckHeight = 0.0;   ///< [m]
  double crownHeight = 0.0;  ///< [m]
};

/// How far the crown stays below the deck at top dead centre [m]; negative where it stands proud.
double deckClearance(const DeckAndCrown& heights);

/// How far the crown stands proud of the deck at top dead centre [m]: deckClearance() turned round.
double protrusion(const DeckAndCrown& heights);

/// What lies between deck and squish face of the head.
struct Head {
  double gasket = 0.0;     ///< [m] head gasket, compressed
  double recess = 0.0;     ///< [m] squish face of the head above its gasket face
  double crownRise = 0.0;  ///< [m] crown at the band above the plane of the compression height
};

/// Narrowest flat gap between crown and head at top dead centre [m], cold.
double squishGap(double deckClearance, const Head& head);

/// Deck clearance that leaves a wanted squish gap [m]; negative: the crown must stand proud.
double deckClearanceForSquish(double wantedGap, const Head& head);

struct SpacerQuestion {
  double wantedDeckClearance = 0.0;         ///< [m]
  double deckClearanceWithoutSpacer = 0.0;  ///< [m]
};

/// Thickness of the spacer to make [m]; negative: take that much off instead.
double spacerToMake(const SpacerQuestion& question);

/// What a lathe or grinder can be asked for [m]: plates are made to the nearest hundredth of a
/// millimetre.
/// @source common practice, no published source
inline constexpr double kPlateStep = 0.01e-3;

/// A spacer as it is made [m]: the nearest step, which is also how it is shown. Half a step is less
/// than any ± of a stack.
/// @param thickness [m] finite.
double spacerAsMade(double thickness);

}  // namespace strokewright::deck
