package org.underlee.panel.model;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Something that is worked out when it is first asked for, and kept. */
final class Once<T> {
  private final Supplier<T> making;
  private volatile @Nullable T made;

  Once(Supplier<T> making) {
    this.making = making;
  }

  /** The same each time; where two threads are first, both may work it out. */
  T get() {
    T known = made;
    if (known == null) {
      known = making.get();
      made = known;
    }
    return known;
  }
}
