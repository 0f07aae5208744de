package ovenproof.campaign;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * An inquiry, folded from its steps.
 *
 * @param steps in order of receipt, at least one; the first one asks
 */
public record Inquiry(String id, List<InquiryStep> steps) {

  public Inquiry {
    steps = List.copyOf(steps);
    if (steps.isEmpty()) {
      throw new IllegalArgumentException("steps must not be empty: " + id);
    }
  }

  /** All inquiries, in the order in which they were opened. */
  public static List<Inquiry> of(List<InquiryStep> steps) {
    Map<String, List<InquiryStep>> byKey = new LinkedHashMap<>();
    steps.forEach(s -> byKey.computeIfAbsent(s.inquiry(), k -> new ArrayList<>()).add(s));
    return byKey.entrySet().stream().map(e -> new Inquiry(e.getKey(), e.getValue())).toList();
  }

  private InquiryStep first() {
    return steps.get(0);
  }

  public String asked() {
    return first().words();
  }

  public String from() {
    return first().from() == null ? "unknown" : first().from().word();
  }

  public @Nullable String product() {
    return first().product();
  }

  public List<String> sentences() {
    return first().sentences();
  }

  public List<String> runs() {
    return first().runs();
  }

  /** The last deadline that was set. */
  public @Nullable LocalDate deadline() {
    LocalDate last = null;
    for (InquiryStep step : steps) {
      last = step.deadline() == null ? last : step.deadline();
    }
    return last;
  }

  private Optional<InquiryStep> last(InquiryStep.Kind kind) {
    return steps.stream().filter(s -> s.kind() == kind).reduce((a, b) -> b);
  }

  /** When it was asked. */
  public Instant askedAt() {
    return first().at();
  }

  /** The step that decided it, the last one if it was decided anew; empty while it is open. */
  public Optional<InquiryStep> decision() {
    return last(InquiryStep.Kind.DECIDED);
  }

  /** The last answer in words; empty when there is none. */
  public Optional<String> answer() {
    return last(InquiryStep.Kind.ANSWERED).map(InquiryStep::words).filter(w -> !w.isBlank());
  }

  public boolean isAnswered() {
    return last(InquiryStep.Kind.ANSWERED).isPresent();
  }

  /** The last outcome; null while it is open. */
  public InquiryStep.@Nullable Outcome outcome() {
    return last(InquiryStep.Kind.DECIDED).map(InquiryStep::outcome).orElse(null);
  }

  public boolean isOpen() {
    return outcome() == null;
  }

  /** Open, unanswered, and the deadline is past. */
  public boolean isOverdue(LocalDate today) {
    LocalDate deadline = deadline();
    return isOpen() && !isAnswered() && deadline != null && deadline.isBefore(today);
  }

  /** {@code waits for an answer until 2026-04-15}, {@code retested, edition 2}. */
  public String state(LocalDate today) {
    InquiryStep decided = last(InquiryStep.Kind.DECIDED).orElse(null);
    if (decided != null && decided.outcome() != null) {
      return decided.outcome().word()
          + (decided.edition() == null ? "" : ", edition " + decided.edition());
    }
    if (isAnswered()) {
      return "answered, not decided";
    }
    if (deadline() == null) {
      return "waits for an answer";
    }
    return (isOverdue(today) ? "overdue since " : "waits for an answer until ") + deadline();
  }
}
