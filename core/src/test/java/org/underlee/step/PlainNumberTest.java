package org.underlee.step;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The short way of reading numbers against the JDK's. */
class PlainNumberTest {
  private static double plain(String raw) {
    byte[] bytes = raw.getBytes(StandardCharsets.US_ASCII);
    return PlainNumber.plain(bytes, 0, bytes.length);
  }

  @Test
  void aPlainNumberIsTheDoubleNearestToIt() {
    Random random = new Random(5);
    int plain = 0;
    for (int i = 0; i < 200_000; i++) {
      String digits = String.valueOf(Math.abs(random.nextLong()));
      String whole = digits.substring(0, 1 + random.nextInt(Math.min(9, digits.length())));
      String rest = digits.substring(0, random.nextInt(Math.min(9, digits.length())));
      String raw = (random.nextBoolean() ? "-" : "") + whole + "." + rest;
      double value = plain(raw);
      if (!Double.isNaN(value)) {
        plain++;
        assertThat(value).as(raw).isEqualTo(Double.parseDouble(raw));
      }
    }
    assertThat(plain).isGreaterThan(150_000);
  }

  @Test
  void zerosKeepTheirSignAndAnythingElseIsLeftToTheJdk() {
    assertThat(Double.compare(plain("-0."), -0.0)).isZero();
    assertThat(plain("12")).isEqualTo(12);
    for (String other : new String[] {"", "-", ".", "1E5", "+1.", "1.2.3", "1234567890123456."}) {
      assertThat(plain(other)).as(other).isNaN();
    }
  }
}
