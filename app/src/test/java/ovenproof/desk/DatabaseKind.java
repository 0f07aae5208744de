package ovenproof.desk;

import java.nio.file.Path;
import java.time.Clock;

/** The databases on which everything must hold. */
public enum DatabaseKind {
  SQLITE {
    @Override
    public DeskLocation location(Path folder) {
      return DeskLocation.sqlite(folder);
    }
  },
  POSTGRESQL {
    @Override
    public DeskLocation location(Path folder) {
      return new DeskLocation(folder, TemporaryPostgresql.freshDatabase());
    }
  };

  /** Where a fresh desk lies. */
  public abstract DeskLocation location(Path folder);

  public Desk open(Path folder) {
    return Desk.open(location(folder), Clock.systemUTC());
  }
}
