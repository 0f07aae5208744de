package ovenproof.desk;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;

/**
 * Long work with progress, cancelling and restarting. A job is a row; what ran when the program
 * stopped is begun again at the next start, so every work must stand being begun twice.
 */
public final class Jobs implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Jobs.class);
  private static final long BETWEEN_WRITES_MILLIS = 200;

  private final Database database;
  private final Clock clock;
  private final ExecutorService executor;
  private final Map<String, Work> works = new ConcurrentHashMap<>();
  private final Map<String, Running> running = new ConcurrentHashMap<>();
  private volatile boolean closing;

  Jobs(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
    this.executor =
        Executors.newFixedThreadPool(
            1,
            task -> {
              Thread thread = new Thread(task, "desk-jobs");
              thread.setDaemon(true);
              return thread;
            });
  }

  /** What a kind of job does. */
  public interface Work {
    /**
     * @return the result, kept with the job
     * @throws InputException when the input has problems: the job fails with them as its message
     */
    String run(Job job, Running running);
  }

  /** A cancelled work stops by letting this out. */
  public static final class CancelledException extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }

  /** The running side of a job: reports progress and notices cancelling. */
  public final class Running {
    private final String id;
    private volatile boolean cancelled;
    private long written;

    private Running(String id) {
      this.id = id;
    }

    /**
     * Says how far the work is; call it often.
     *
     * @throws CancelledException when someone cancelled the job, or the program ends
     */
    public void at(long done, long total, String message) {
      if (cancelled || closing) {
        throw new CancelledException();
      }
      long now = clock.millis();
      if (now - written >= BETWEEN_WRITES_MILLIS) {
        written = now;
        update(id, Job.State.RUNNING, done, total, message, null);
      }
    }
  }

  /** Names the work of a kind. All kinds must be named before {@link #resume()}. */
  public void register(String kind, Work work) {
    works.put(kind, work);
  }

  /** Begins what waited or ran when the program last stopped. */
  public void resume() {
    database
        .reader()
        .sql("select * from job where state in ('waiting', 'running') order by created_at, id")
        .query(Jobs::job)
        .list()
        .forEach(this::enqueue);
  }

  /** Puts work in the queue; it runs when its turn comes. */
  public Job submit(String kind, @Nullable String campaign, String input, String who) {
    if (!works.containsKey(kind)) {
      throw new IllegalArgumentException("no work is registered for kind " + kind);
    }
    long now = clock.millis();
    Job job =
        new Job(
            Keys.next(clock),
            kind,
            campaign,
            input,
            Job.State.WAITING,
            0,
            0,
            "waiting",
            null,
            who,
            Instant.ofEpochMilli(now),
            Instant.ofEpochMilli(now));
    database.write(
        write ->
            write
                .jdbc()
                .update(
                    "insert into job (id, kind, campaign, input, state, done, total, message, result,"
                        + " who, created_at, updated_at) values (?, ?, ?, ?, ?, 0, 0, ?, null, ?, ?, ?)",
                    job.id(),
                    kind,
                    campaign,
                    input,
                    Job.State.WAITING.word(),
                    "waiting",
                    who,
                    now,
                    now));
    enqueue(job);
    return job;
  }

  public Optional<Job> find(String id) {
    return database
        .reader()
        .sql("select * from job where id = ?")
        .param(id)
        .query(Jobs::job)
        .optional();
  }

  /** The newest jobs first. */
  public List<Job> newest(int most) {
    return database
        .reader()
        .sql("select * from job order by created_at desc, id desc limit ?")
        .param(most)
        .query(Jobs::job)
        .list();
  }

  /** Stops a waiting job at once and a running one at its next step; a finished one stays. */
  public void cancel(String id) {
    Running now = running.get(id);
    if (now != null) {
      now.cancelled = true;
    }
    database.write(
        write ->
            write
                .jdbc()
                .update(
                    "update job set state = 'cancelled', message = 'cancelled', updated_at = ?"
                        + " where id = ? and state = 'waiting'",
                    clock.millis(),
                    id));
  }

  /** Begins a failed or cancelled job again. */
  public void restart(String id) {
    Job job = find(id).orElseThrow(() -> new IllegalArgumentException("no such job: " + id));
    if (!job.isOpen() && job.state() != Job.State.DONE) {
      update(id, Job.State.WAITING, 0, 0, "waiting", null);
      enqueue(job);
    }
  }

  private void enqueue(Job job) {
    executor.execute(() -> run(job.id()));
  }

  private void run(String id) {
    Optional<Job> found = find(id);
    if (closing || found.isEmpty() || !found.get().isOpen()) {
      return;
    }
    Job job = found.get();
    Work work = works.get(job.kind());
    if (work == null) {
      update(id, Job.State.FAILED, 0, 0, "this version does not know how to " + job.kind(), null);
      return;
    }
    Running now = new Running(id);
    running.put(id, now);
    try {
      update(id, Job.State.RUNNING, 0, 0, "begun", null);
      String result = work.run(job, now);
      Job last = find(id).orElse(job);
      long total = Math.max(1, last.total());
      update(id, Job.State.DONE, total, total, "done", result);
    } catch (CancelledException cancelled) {
      if (!closing) {
        update(id, Job.State.CANCELLED, 0, 0, "cancelled; nothing was kept", null);
      }
    } catch (InputException | OutsideException failure) {
      update(id, Job.State.FAILED, 0, 0, String.valueOf(failure.getMessage()), null);
    } catch (RuntimeException fault) {
      LOG.error("job {} of kind {} failed", id, job.kind(), fault);
      update(
          id,
          Job.State.FAILED,
          0,
          0,
          "a fault in the program itself; nothing was kept. The log says more.",
          null);
    } finally {
      running.remove(id);
    }
  }

  private void update(
      String id, Job.State state, long done, long total, String message, @Nullable String result) {
    database.write(
        write ->
            write
                .jdbc()
                .update(
                    "update job set state = ?, done = ?, total = ?, message = ?, result = ?,"
                        + " updated_at = ? where id = ?",
                    state.word(),
                    done,
                    total,
                    message,
                    result,
                    clock.millis(),
                    id));
  }

  private static Job job(ResultSet row, int n) throws SQLException {
    return new Job(
        row.getString("id"),
        row.getString("kind"),
        row.getString("campaign"),
        row.getString("input"),
        Job.State.named(row.getString("state")),
        row.getLong("done"),
        row.getLong("total"),
        row.getString("message"),
        row.getString("result"),
        row.getString("who"),
        Instant.ofEpochMilli(row.getLong("created_at")),
        Instant.ofEpochMilli(row.getLong("updated_at")));
  }

  @Override
  public void close() {
    closing = true;
    executor.shutdown();
    try {
      executor.awaitTermination(5, TimeUnit.SECONDS);
    } catch (InterruptedException stopping) {
      Thread.currentThread().interrupt();
    }
  }
}
