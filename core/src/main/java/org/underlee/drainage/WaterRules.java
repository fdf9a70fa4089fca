package org.underlee.drainage;

/**
 * How water is taken to behave, on the safe side. Lengths are metres. The page {@code
 * where-every-drop-goes} in the documentation gives the reasons.
 */
final class WaterRules {
  /** Places in plan nearer than this are one: a tenth of the thinnest sheet. */
  static final double SAME_PLAN = 0.00005;

  /**
   * Ends along the fall nearer than this are one: a part cut square to its fall leans in plan, by a
   * fifth of a millimetre for 20 mm of height at 1 in 96.
   */
  static final double SAME_STOP = 0.00025;

  /** Solids of one part with less than this between them touch. */
  static final double TOUCH = 0.00005;

  /** A step up that flowing water takes: less than the thinnest sheet. */
  static final double CLIMB = 0.0003;

  /** Slope below which a face is level: 1 mm in 1 m. */
  static final double LEVEL = 0.001;

  /** A face narrower than a drop lets water off at its sides. */
  static final double DROP = 0.003;

  /** A face with less of its normal upright than this (sine of 3°) is a wall. */
  static final double WALL = 0.05;

  /** What a sheet must reach over the next where water drops less than {@link #FREE_DROP}. */
  static final double LEAST_LAP = 0.025;

  /** A drop that water cannot creep back over. */
  static final double FREE_DROP = 0.008;

  /** How far a free drip must fall inside of what catches it. */
  static final double DRIP_MARGIN = 0.01;

  /** A sheet this near above another lies on it. */
  static final double LIES_ON = 0.003;

  /** Joists whose tops differ by no more than this shed into the seam between them. */
  static final double SEAM_STEP = 0.02;

  /** How far below a gutter's floor an outlet's top may be. */
  static final double OUTLET_REACH = 0.04;

  /** How far apart two lengths of pipe may be in plan or height and be one run. */
  static final double PIPE_PLAY = 0.005;

  /** Height above the ground from which a downspout's end splashes no more than usual. */
  static final double HIGHEST_DISCHARGE = 0.5;

  /** Water this deep may stand anywhere: surface tension holds it. */
  static final double FILM = 0.003;

  /** A bay with less of its plan covered than this is open. */
  static final double COVERED = 0.1;

  /** Rain that falls this near behind the last part falls behind the gutter. */
  static final double BEHIND = 0.03;

  private WaterRules() {}
}
