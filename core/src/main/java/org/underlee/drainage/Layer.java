package org.underlee.drainage;

/**
 * What one piece takes of a column's height.
 *
 * @param number among all layers
 * @param column number of its column
 * @param top the face that water lies on
 * @param topAt height of the top at the column's middle
 * @param bottomAt height of the underside there
 */
record Layer(int number, int column, Facet top, double topAt, double bottomAt) {
  int piece() {
    return top.piece();
  }
}
