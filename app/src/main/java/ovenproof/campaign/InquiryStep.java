package ovenproof.campaign;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * One step of an inquiry: somebody asked about what was published, was answered, and it was
 * decided. Steps are only added; the first one of an inquiry is {@link Kind#ASKED}.
 *
 * @param inquiry key of the inquiry
 * @param at when it happened
 * @param by who entered it
 * @param from who asks; null on later steps
 * @param product what it is about; null on later steps, or when it is about the whole review
 * @param sentences as published, that are questioned
 * @param runs that it rests on
 * @param deadline by which an answer is due, or null
 * @param words what was asked, answered or found
 * @param outcome on {@link Kind#DECIDED} only
 * @param edition number of the edition that carries the outcome, or null
 */
public record InquiryStep(
    String inquiry,
    Kind kind,
    Instant at,
    String by,
    @Nullable From from,
    @Nullable String product,
    List<String> sentences,
    List<String> runs,
    @Nullable LocalDate deadline,
    String words,
    @Nullable Outcome outcome,
    @Nullable Integer edition) {

  public InquiryStep {
    sentences = List.copyOf(sentences);
    runs = List.copyOf(runs);
    if (kind == Kind.DECIDED && outcome == null) {
      throw new IllegalArgumentException("outcome must be given when an inquiry is decided");
    }
    if (kind == Kind.ASKED && from == null) {
      throw new IllegalArgumentException("from must be given when an inquiry is opened");
    }
  }

  /** What happened. */
  public enum Kind {
    ASKED,
    NOTED,
    ANSWERED,
    DECIDED;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Who asks. */
  public enum From {
    MAKER,
    READER,
    OTHER;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** What came of it. */
  public enum Outcome {
    /** What was published stands. */
    UPHELD,
    /** Something was wrong and is corrected in a later edition. */
    CORRECTED,
    /** It was cooked again; the later edition says what came out. */
    RETESTED;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
