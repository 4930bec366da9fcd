#pragma once
/// A plot with the words below it, made anew from the project while it can be seen.

#include <QWidget>
#include <functional>

#include "ui/plots/plot_scene.h"

namespace strokewright::ui {

class Document;
class PlotReadout;
class PlotWidget;
class Refresher;
class Taste;

/// What a scene view shows: a picture, and what it says in words.
struct SceneShown {
  PlotScene scene = {};
  QString sentence = {};
  /// Said where both axes have one unit: how many times steeper it is drawn ("%1") than it is.
  QString exaggerated = {};
};

/// Where there is little height the picture has it, and its words are the tip of the plot; where
/// nothing is drawn yet there are the words alone.
class SceneView final : public QWidget {
  Q_OBJECT

 public:
  /// @param name of the plot, for those who cannot see it.
  /// @param look makes what is shown; called at every change while the view is visible.
  SceneView(Document& document, Taste& taste, const QString& name, std::function<SceneShown()> look,
            QWidget* parent = nullptr);

  /// After a change that neither project nor taste tells: another cylinder.
  void refresh();

  const PlotScene& scene() const;
  QString sentence() const;

  QSize minimumSizeHint() const override;

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void showScene();
  void sayWords();
  void giveRoom();

  std::function<SceneShown()> look_;
  QString sentence_;
  QString exaggerated_;
  PlotWidget* plot_;
  PlotReadout* readout_;
  Refresher* refresher_;
};

}  // namespace strokewright::ui
