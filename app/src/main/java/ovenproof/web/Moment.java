package ovenproof.web;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Instant;
import org.jspecify.annotations.Nullable;
import ovenproof.desk.NewEntry;

/** When the person pressed the button, by the clock of their device, and who they are. */
public final class Moment {
  private static final long MOST_APART_MILLIS = 366L * 86_400_000;

  private Moment() {}

  /** From the form's hidden fields, which a script fills; without it the desk's own clock. */
  public static NewEntry.Stamp of(HttpServletRequest request, Instant now) {
    String who = Who.of(request).word();
    Long device = number(request.getParameter("deviceTime"));
    Long offset = number(request.getParameter("clockOffset"));
    Long uncertainty = number(request.getParameter("clockUncertainty"));
    if (device == null || Math.abs(device - now.toEpochMilli()) > MOST_APART_MILLIS) {
      return NewEntry.Stamp.of(who, now);
    }
    return new NewEntry.Stamp(
        who, Instant.ofEpochMilli(device), offset == null ? 0 : offset, uncertainty);
  }

  private static @Nullable Long number(@Nullable String text) {
    return text != null && text.matches("-?\\d{1,15}") ? Long.valueOf(text) : null;
  }
}
