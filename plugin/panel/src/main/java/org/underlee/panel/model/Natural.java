package org.underlee.panel.model;

import java.math.BigInteger;
import java.util.Comparator;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** Names in the order in which people count: {@code B2} before {@code B10}. */
final class Natural {
  private static final Pattern PIECE = Pattern.compile("\\d+|\\D+");

  static final Comparator<String> ORDER = Natural::compare;

  private Natural() {}

  private static int compare(String a, String b) {
    List<String> left = pieces(a);
    List<String> right = pieces(b);
    for (int i = 0; i < Math.min(left.size(), right.size()); i++) {
      int one = piece(left.get(i), right.get(i));
      if (one != 0) {
        return one;
      }
    }
    return Integer.compare(left.size(), right.size());
  }

  private static List<String> pieces(String text) {
    return PIECE.matcher(text).results().map(MatchResult::group).toList();
  }

  private static int piece(String a, String b) {
    boolean numbers = Character.isDigit(a.charAt(0)) && Character.isDigit(b.charAt(0));
    return numbers ? new BigInteger(a).compareTo(new BigInteger(b)) : a.compareTo(b);
  }
}
