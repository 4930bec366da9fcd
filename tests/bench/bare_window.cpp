// The measure for the first screen: a bare window holding one plot and one table, nothing else.

#include <QApplication>
#include <QSplitter>
#include <QTableWidget>

#include "ui/plots/plot_widget.h"

int main(int argc, char** argv) {
  QApplication application(argc, argv);
  QSplitter window;
  window.addWidget(new strokewright::ui::PlotWidget(&window));
  window.addWidget(new QTableWidget(20, 4, &window));
  window.resize(1366, 720);
  window.setWindowTitle(QStringLiteral("bare"));
  window.show();
  return QApplication::exec();
}
