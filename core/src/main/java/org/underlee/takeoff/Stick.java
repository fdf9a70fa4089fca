package org.underlee.takeoff;

import java.util.List;

/**
 * One stick and what is cut from it, the longest first.
 *
 * @param stockLength metres
 * @param blocks what each cross-cut gives
 * @param offcut what is left, after the cuts and without the trimmed end, metres
 * @param onHand whether it need not be bought
 */
public record Stick(double stockLength, List<Block> blocks, double offcut, boolean onHand) {
  public Stick {
    blocks = List.copyOf(blocks);
  }

  /**
   * What one cross-cut gives: a piece, or several to be ripped apart.
   *
   * @param pieces the widest first
   */
  public record Block(List<Piece> pieces) {
    public Block {
      pieces = List.copyOf(pieces);
    }

    /** Of the longest of its pieces, metres. */
    public double length() {
      return pieces.stream().mapToDouble(Piece::length).max().orElseThrow();
    }

    /** Of all other pieces: what they would take if each were cut alone, metres. */
    double beside() {
      return pieces.stream().mapToDouble(Piece::length).sum() - length();
    }
  }

  /**
   * A piece.
   *
   * @param length metres
   * @param width of the flat sheet, metres; zero where it is as wide as the stock
   */
  public record Piece(double length, double width) {}

  /** The lengths of the cross-cuts. */
  public List<Double> cuts() {
    return blocks.stream().map(Block::length).toList();
  }
}
