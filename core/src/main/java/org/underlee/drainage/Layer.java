package org.underlee.drainage;

/**
 * What one piece takes of a column's height.
 *
 * @param place its place from the top in the column
 * @param top the face that water lies on
 * @param topAt height of the top at the column's middle
 * @param bottomAt height of the underside there
 */
record Layer(Column column, int place, Facet top, double topAt, double bottomAt) {
  /** Among all layers. */
  int number() {
    return column.firstLayer() + place;
  }

  int piece() {
    return top.piece();
  }
}
