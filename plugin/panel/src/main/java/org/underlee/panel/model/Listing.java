package org.underlee.panel.model;

import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.underlee.units.Lengths.UnitSystem;

/** Keeps the lists of the newest result. A hand that drags has no eye for them: they come after. */
final class Listing implements AutoCloseable {
  private final Newest making;
  private final ReadOnlyObjectWrapper<Lists> lists = new ReadOnlyObjectWrapper<>(Lists.NONE);

  Listing(Executor screen) {
    making = new Newest("listing", screen);
  }

  ReadOnlyObjectProperty<Lists> lists() {
    return lists.getReadOnlyProperty();
  }

  void show(Optional<Result> result, UnitSystem units) {
    if (result.isEmpty()) {
      making.cancel();
      lists.set(Lists.NONE);
    } else if (isWanted(result.get())) {
      making.run(() -> Lists.of(result.get(), units), lists::set, e -> lists.set(Lists.NONE));
    }
  }

  private boolean isWanted(Result next) {
    Optional<Result> listed = lists.get().of();
    return next.isWhole()
        || listed.isEmpty()
        || (next.isLaidOut() && listed.filter(Result::isLaidOut).isEmpty());
  }

  @Override
  public void close() {
    making.close();
  }
}
