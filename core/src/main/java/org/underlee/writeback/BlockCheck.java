package org.underlee.writeback;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import java.util.regex.Pattern;
import org.underlee.finding.StopSign;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepLimits;
import org.underlee.step.StepValue;

/**
 * Checks a drained model as it was read back: it parses (which includes that no number is used
 * twice), it is the designer's bytes around one block, every reference in the block resolves, and
 * no GlobalId of the block is there twice.
 */
final class BlockCheck {
  /** The model was read within limits that its user may have widened; the block is our own. */
  private static final StepLimits ANY =
      StepLimits.STANDARD.withRecords(Integer.MAX_VALUE).withStringBytes(Integer.MAX_VALUE);

  /** The form of a GlobalId; the first digit holds two bits. */
  private static final Pattern GLOBAL_ID = Pattern.compile("[0-3][0-9A-Za-z_$]{21}");

  /** What was read back is not a sound drained model. */
  static final class FailedException extends RuntimeException {
    private static final long serialVersionUID = 1;

    FailedException(String message) {
      super(message);
    }
  }

  private final StepFile file;
  private final Set<String> globalIds = new HashSet<>();

  private BlockCheck(StepFile file) {
    this.file = file;
  }

  /**
   * @throws FailedException when something is wrong
   * @throws org.underlee.finding.InputException when it does not parse
   */
  static void require(byte[] original, byte[] drained) {
    if (Arrays.equals(original, drained)) {
      return; // A design without parts adds no block.
    }
    StopSign stop = StopSign.here();
    Markers.Found block =
        Markers.find(drained).orElseThrow(() -> new FailedException("the block is not there"));
    boolean same =
        Strip.original(drained).filter(s -> Arrays.equals(s.bytes(), original)).isPresent();
    stop.obey();
    if (!same) {
      throw new FailedException("bytes outside the block have changed");
    }
    BlockCheck check = new BlockCheck(StepFile.of(drained, "drained model", ANY));
    stop.obey();
    check.instances(block.range().from(), stop);
    stop.obey();
    GlobalIds.firstIn(original, check.globalIds).ifPresent(BlockCheck::taken);
  }

  private static void taken(String globalId) {
    throw new FailedException("the designer's file already has the GlobalId " + globalId);
  }

  /** The block's instances are the last ones of the file. */
  private void instances(int blockStart, StopSign stop) {
    for (int i = file.count() - 1; i >= 0 && file.range(i).from() >= blockStart; i--) {
      stop.obey();
      StepInstance instance = file.decode(i);
      instance.values().forEach(v -> resolve(instance, v));
      if (instance.value(0) instanceof StepValue.Text t
          && GLOBAL_ID.matcher(t.value()).matches()
          && !globalIds.add(t.value())) {
        throw new FailedException("the block uses the GlobalId " + t.value() + " twice");
      }
    }
  }

  private void resolve(StepInstance owner, StepValue value) {
    if (value instanceof StepValue.Reference r && file.find(r.id()) < 0) {
      throw new FailedException(
          "#" + owner.id() + " refers to #" + r.id() + ", which is not there");
    } else if (value instanceof StepValue.ListOf list) {
      list.values().forEach(v -> resolve(owner, v));
    } else if (value instanceof StepValue.Typed typed) {
      resolve(owner, typed.value());
    }
  }
}
