package org.underlee.panel.view;

import javafx.scene.Node;
import javafx.scene.control.ListView;
import javafx.scene.layout.HBox;

/** The content of a list's row, as high as its texts need in the width that the list has. */
final class WrappedRow extends HBox {
  /** The row's own edge, and the bar that a long list has. */
  private static final double BESIDE = 36;

  private final ListView<?> list;

  WrappedRow(ListView<?> list, Node... content) {
    super(content);
    this.list = list;
    list.widthProperty().addListener((o, before, now) -> requestLayout());
  }

  /** A list asks for the height of a row without saying how wide it will be. */
  @Override
  protected double computePrefHeight(double width) {
    return super.computePrefHeight(width < 0 ? Math.max(0, list.getWidth() - BESIDE) : width);
  }
}
