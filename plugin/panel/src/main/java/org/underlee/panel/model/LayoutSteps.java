package org.underlee.panel.model;

import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.underlee.layout.Layout;
import org.underlee.run.FieldByField;

/** Tells of a layout on its way: how far it is each time, and its parts now and then. */
final class LayoutSteps implements FieldByField.Watcher {
  /** More pictures a second than this would take from the work that they show. */
  private static final long APART = TimeUnit.MILLISECONDS.toNanos(400);

  /** The one who shows it. */
  interface Teller {
    /**
     * Says how far it is.
     *
     * @param soFar what there is, when it is time to show it
     * @param words how far it is: {@code : 5 of 30 fields}
     */
    void tell(Optional<Layout> soFar, String words);
  }

  private final BooleanSupplier isNewest;
  private final Teller teller;
  private Optional<Long> last = Optional.empty();

  LayoutSteps(BooleanSupplier isNewest, Teller teller) {
    this.isNewest = isNewest;
    this.teller = teller;
  }

  @Override
  public boolean goesOn() {
    return isNewest.getAsBoolean();
  }

  @Override
  public void sees(Layout layout, int done, int all) {
    long now = System.nanoTime();
    boolean time = last.map(l -> now - l >= APART).orElse(true);
    if (time) {
      last = Optional.of(now);
    }
    teller.tell(
        time ? Optional.of(layout) : Optional.empty(), ": " + done + " of " + all + " fields");
  }
}
