package org.underlee.picture;

/** The colours of the parts, by trade name: calm, and told apart in grey print as well. */
public final class Palette {
  public static final Paint JOIST = Paint.solid(0xd9b98a);
  public static final Paint BEAM = Paint.solid(0xc19a66);
  public static final Paint LEDGER = Paint.solid(0xcdaa78);
  public static final Paint POST = Paint.solid(0xb58d5c);
  public static final Paint BLOCKING = Paint.solid(0xe2c9a2);
  public static final Paint DECKING = Paint.solid(0xc9b79c);

  public static final Paint PAN = Paint.solid(0xb9d3e0);
  public static final Paint RAIL = Paint.solid(0x7fa0b4);
  public static final Paint COLLAR = Paint.solid(0xc98f6b);
  public static final Paint MEMBRANE = Paint.solid(0x6f7a86);
  public static final Paint TAPE = Paint.solid(0x5d6168);
  public static final Paint GUTTER = Paint.solid(0x5b9199);
  public static final Paint PIPE = Paint.solid(0x8b74a3);
  public static final Paint HANGER = Paint.solid(0x7a7f86);

  /** What must be looked at: a clash, a blocked bay. */
  public static final Paint ALERT = Paint.solid(0xd2573f);

  /** Parts of the assembly that a picture is not about. */
  public static final Paint BESIDE = Paint.solid(0xe3eaee);

  /** The building around, seen through. */
  public static final Paint CONTEXT = new Paint(0xb9c0c6, 0.28);

  /** Behind everything: a very light warm grey. */
  public static final int BACKGROUND = 0xf8f8f6;

  /** The paper of a plan. */
  public static final int PAPER = 0xffffff;

  /** Text and lines of a drawing. */
  public static final int INK = 0x24303a;

  private Palette() {}
}
