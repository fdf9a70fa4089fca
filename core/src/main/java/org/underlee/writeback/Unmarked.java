package org.underlee.writeback;

import java.io.ByteArrayOutputStream;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.underlee.step.ByteRange;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/**
 * An assembly of ours in a model that another program saved: the marks are gone and the instances
 * have other numbers, in another order. It is known by our property sets and by GlobalIds of the
 * kind that we give.
 *
 * <p>Method: from our property sets, along references, to every instance with a GlobalId like ours;
 * places and the project, which we refer to but never write, are where the search stops. What then
 * is reached from ours and from nothing of the designer's is ours too. Work and memory grow with
 * the number of references.
 */
final class Unmarked {
  private static final Set<String> OWN_SETS = Set.of(Strip.LAYOUT_SET, "Underlee_Part");

  /** Referred to by ours, never written by us. */
  private static final Set<String> DESIGNERS =
      Set.of(
          "IFCPROJECT",
          "IFCSITE",
          "IFCBUILDING",
          "IFCBUILDINGSTOREY",
          "IFCSPACE",
          "IFCSPATIALZONE");

  /** The designer's, or left for the next assembly: nothing tells which, and it draws nothing. */
  private static final String CONTEXT = "IFCGEOMETRICREPRESENTATIONSUBCONTEXT";

  private static final Pattern GLOBAL_ID = Pattern.compile("[0-3][0-9A-Za-z_$]{21}");

  private static final int NAME = 2;

  private final StepFile file;
  private final List<int[]> references = new ArrayList<>();
  private final int[] referrers;
  private final BitSet rooted = new BitSet();
  private final BitSet likeOurs = new BitSet();
  private final BitSet seeds = new BitSet();

  private Unmarked(StepFile file) {
    this.file = file;
    this.referrers = new int[file.count()];
    for (int i = 0; i < file.count(); i++) {
      index(i, file.decode(i));
    }
  }

  /** The model without our instances; all other bytes as they are. */
  static byte[] without(byte[] model) {
    StepFile file = StepFile.of(model, "model");
    return new Unmarked(file).cut(model);
  }

  private void index(int i, StepInstance instance) {
    List<Integer> to = new ArrayList<>();
    instance.values().forEach(v -> collect(v, to));
    instance.parts().forEach(p -> p.values().forEach(v -> collect(v, to)));
    references.add(to.stream().mapToInt(Integer::intValue).toArray());
    to.forEach(t -> referrers[t]++);
    if (instance.value(0) instanceof StepValue.Text id && GLOBAL_ID.matcher(id.value()).matches()) {
      rooted.set(i);
      likeOurs.set(i, GlobalIds.isLikeOurs(id.value()) && !DESIGNERS.contains(instance.keyword()));
      boolean own =
          instance.keyword().equals("IFCPROPERTYSET")
              && instance.optionalText(NAME).filter(OWN_SETS::contains).isPresent();
      seeds.set(i, own && likeOurs.get(i));
    }
  }

  private void collect(StepValue value, List<Integer> to) {
    if (value instanceof StepValue.Reference r) {
      int at = file.find(r.id());
      if (at >= 0) {
        to.add(at);
      }
    } else if (value instanceof StepValue.ListOf list) {
      list.values().forEach(v -> collect(v, to));
    } else if (value instanceof StepValue.Typed typed) {
      collect(typed.value(), to);
    }
  }

  private byte[] cut(byte[] model) {
    BitSet out = ours();
    ByteArrayOutputStream kept = new ByteArrayOutputStream(model.length);
    int from = 0;
    for (ByteRange range : ranges(out)) {
      kept.write(model, from, range.from() - from);
      from = afterLineEnd(model, range.to());
    }
    kept.write(model, from, model.length - from);
    return kept.toByteArray();
  }

  private List<ByteRange> ranges(BitSet out) {
    return out.stream()
        .mapToObj(file::range)
        .sorted((a, b) -> Integer.compare(a.from(), b.from()))
        .toList();
  }

  private static int afterLineEnd(byte[] bytes, int at) {
    int end = at;
    if (end < bytes.length && bytes[end] == '\r') {
      end++;
    }
    return end < bytes.length && bytes[end] == '\n' ? end + 1 : end;
  }

  private BitSet ours() {
    BitSet own = connected();
    BitSet designers = (BitSet) rooted.clone();
    designers.andNot(own);
    for (int context : file.ofKeyword(CONTEXT)) {
      designers.set(context);
    }
    BitSet onlyOurs = reached(own);
    onlyOurs.andNot(reached(designers));
    // Styles and layers refer to shapes, and nothing refers to them.
    for (int i = 0; i < references.size(); i++) {
      if (referrers[i] == 0 && !rooted.get(i)) {
        (touches(i, onlyOurs) ? own : designers).set(i);
      }
    }
    BitSet all = reached(own);
    all.andNot(reached(designers));
    return all;
  }

  private boolean touches(int instance, BitSet some) {
    for (int to : references.get(instance)) {
      if (some.get(to)) {
        return true;
      }
    }
    return false;
  }

  /** Everything like ours that references join to a property set of ours, either way round. */
  private BitSet connected() {
    BitSet found = (BitSet) seeds.clone();
    boolean grown = true;
    while (grown) {
      grown = false;
      for (int i = likeOurs.nextSetBit(0); i >= 0; i = likeOurs.nextSetBit(i + 1)) {
        for (int to : references.get(i)) {
          if (likeOurs.get(to) && found.get(i) != found.get(to)) {
            found.set(i);
            found.set(to);
            grown = true;
          }
        }
      }
    }
    return found;
  }

  private BitSet reached(BitSet from) {
    BitSet seen = (BitSet) from.clone();
    Deque<Integer> open = new ArrayDeque<>();
    from.stream().forEach(open::add);
    while (!open.isEmpty()) {
      for (int to : references.get(open.remove())) {
        if (!seen.get(to)) {
          seen.set(to);
          open.add(to);
        }
      }
    }
    return seen;
  }
}
