package ovenproof.desk;

import java.util.Locale;
import ovenproof.campaign.Deviation;
import ovenproof.campaign.Event;
import ovenproof.campaign.FactValue;
import ovenproof.campaign.FeatureState;
import ovenproof.campaign.InquiryStep;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Piece;
import ovenproof.campaign.RatedStep;
import ovenproof.campaign.Rating;
import ovenproof.campaign.Reading;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;

/** What can be appended. The body of an entry is the campaign's record of the same name. */
public enum EntryKind {
  RUN(Run.class, Mending.NEVER),
  EVENT(Event.class, Mending.LISTED),
  DEVIATION(Deviation.class, Mending.LISTED),
  READING(Reading.class, Mending.LISTED),
  RATING(Rating.class, Mending.LISTED),
  FACT(FactValue.class, Mending.LISTED),
  RATED(RatedStep.class, Mending.LISTED),
  FEATURE(FeatureState.class, Mending.LISTED),
  PIECE(Piece.class, Mending.FOLDED),
  TRACE(TraceBinding.class, Mending.FOLDED),
  PHOTO(Photo.class, Mending.FOLDED),
  /** A step of an inquiry into what was published: no part of the campaign itself. */
  INQUIRY(InquiryStep.class, Mending.NEVER);

  private final Class<?> body;
  private final Mending mending;

  EntryKind(Class<?> body, Mending mending) {
    this.body = body;
    this.mending = mending;
  }

  /** How a correction shows in the campaign. */
  enum Mending {
    /** A run is an attempt that happened; it is redone, never mended. */
    NEVER,
    /** Both entries are part of the campaign, which knows how to find the one that holds. */
    LISTED,
    /** Only the entry that holds is part of the campaign; the record keeps both. */
    FOLDED
  }

  public Class<?> body() {
    return body;
  }

  Mending mending() {
    return mending;
  }

  /** In the database and on pages. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  static EntryKind named(String word) {
    return valueOf(word.toUpperCase(Locale.ROOT));
  }
}
