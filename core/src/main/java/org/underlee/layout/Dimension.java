package org.underlee.layout;

import org.underlee.units.Quantity.Kind;

/** A number of a part that can be asked where it comes from. */
public enum Dimension {
  LENGTH("length", Kind.LENGTH),
  WIDTH("width", Kind.LENGTH),
  FLAT_WIDTH("width of the flat sheet", Kind.LENGTH),
  FLAT_LENGTH("length of the flat sheet", Kind.LENGTH),
  LEG("height of its upper leg", Kind.LENGTH),
  DEPTH_HIGH("depth below the joist tops at its high end", Kind.LENGTH),
  DEPTH_LOW("depth below the joist tops at its low end", Kind.LENGTH),
  FALL("fall", Kind.FALL),
  SEAT_HIGH("seat at its high end, from the joist bottom at the field's high end", Kind.LENGTH),
  SEAT_LOW("seat at its low end, from the joist bottom at the field's high end", Kind.LENGTH),
  NOTCH_FROM("start of the notch, from the rail's high end", Kind.LENGTH),
  NOTCH_LENGTH("length of the notch", Kind.LENGTH),
  NOTCH_DEPTH("depth of the notch, from the leg's top", Kind.LENGTH),
  HOLE_ALONG("middle of the hole, from the piece's head", Kind.LENGTH),
  HOLE_ACROSS("middle of the hole, from the piece's edge on the first joist's side", Kind.LENGTH),
  HOLE_SIZE("size of the hole across", Kind.LENGTH),
  RIM("rim at its high end, from the joist bottom at the field's high end", Kind.LENGTH),
  SPACING("spacing", Kind.LENGTH),
  EMBEDMENT("depth that a screw reaches into the wood", Kind.LENGTH),
  COUNT("count", Kind.COUNT);

  private final String words;
  private final Kind kind;

  Dimension(String words, Kind kind) {
    this.words = words;
    this.kind = kind;
  }

  public String words() {
    return words;
  }

  public Kind kind() {
    return kind;
  }

  /** Whether it is one that is cut to, which lists round down. */
  public boolean isCut() {
    return this == LENGTH || this == WIDTH || this == FLAT_LENGTH || this == FLAT_WIDTH;
  }

  /** The word used in files: {@code flat-width}. */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }
}
