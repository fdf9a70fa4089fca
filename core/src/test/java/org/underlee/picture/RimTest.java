package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Shapes with a rim in a picture. */
class RimTest {
  private static final int SIDE = 9;
  private static final int PAPER = 0xffffffff;
  private static final int RIM = 0xff102030;

  /** A square of shape 3 in the middle, whose right half is shape 4. */
  private static Image square() {
    int[] argb = new int[SIDE * SIDE];
    Arrays.fill(argb, PAPER);
    int[] ids = new int[SIDE * SIDE];
    for (int y = 2; y < 7; y++) {
      for (int x = 2; x < 7; x++) {
        ids[y * SIDE + x] = x < 5 ? 3 : 4;
      }
    }
    return new Image(SIDE, SIDE, argb, ids);
  }

  private static String row(Image image, int y) {
    StringBuilder row = new StringBuilder();
    for (int x = 0; x < SIDE; x++) {
      row.append(image.argb(x, y) == RIM ? '#' : '.');
    }
    return row.toString();
  }

  @Test
  void theRimIsWithinTheShapesTogetherAndLeavesTheirMiddleAsItWas() {
    Image rimmed = Rim.around(square(), Set.of(3, 4), RIM & 0xffffff, 1);
    assertThat(row(rimmed, 1)).isEqualTo(".........");
    assertThat(row(rimmed, 2)).isEqualTo("..#####..");
    assertThat(row(rimmed, 4)).isEqualTo("..#...#..");
    assertThat(rimmed.id(4, 4)).isEqualTo(3);
  }

  @Test
  void aShapeBesideAnotherHasARimThereTooAndAWideOneReachesFurtherIn() {
    assertThat(row(Rim.around(square(), Set.of(3), RIM & 0xffffff, 1), 4)).isEqualTo("..#.#....");
    assertThat(row(Rim.around(square(), Set.of(3, 4), RIM & 0xffffff, 2), 4))
        .isEqualTo("..##.##..");
  }

  @Test
  void withNothingChosenThePictureIsTheSame() {
    Image image = square();
    assertThat(Rim.around(image, Set.of(), RIM & 0xffffff, 1)).isSameAs(image);
  }
}
