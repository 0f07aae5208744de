package ovenproof.proof;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/** How many were compared: "eight countertop ovens". */
final class FieldSizeReader implements ClaimReader {
  private static final Pattern FIELD_SIZE =
      Pattern.compile(
          "\\b(?<n>"
              + QuantifierReader.NUMBER
              + ")\\s+(?:(?!(?:times|per|out|of|in|for|on|with|and|or|minutes?|seconds?|hours?|degrees?|euros?|points?|runs?|at|by|to|than|two|three|four|five|six|seven|eight|nine|ten)\\b)\\p{L}+\\s+){0,2}?"
              + QuantifierReader.PRODUCTS
              + "\\b",
          Pattern.CASE_INSENSITIVE);

  private final int size;

  FieldSizeReader(Figures figures) {
    this.size = figures.campaign().products().size();
  }

  @Override
  public void read(SentenceClaims sentence) {
    Matcher matcher = FIELD_SIZE.matcher(sentence.text());
    while (matcher.find()) {
      String before = Wording.before(sentence.text(), matcher.start());
      boolean whole =
          !Wording.is(
                  before,
                  "(?is).*\\b(of|other|than|only|next|top|best|first|last|these|those|per|per cent|out of|among|between|leading|both)\\s+$")
              || Wording.is(before, "(?is).*\\b(all|of (?:the|our)|of)\\s+$");
      if (whole && sentence.isFree(matcher.start(), matcher.end())) {
        int stated = QuantifierReader.number(matcher.group("n"));
        boolean partial =
            stated < size
                && !Wording.is(
                    before,
                    "(?is).*\\b(all|the|our|tested|compared|measured|bought)\\s+(?:\\w+\\s+)?$");
        Finding finding =
            stated == size ? Finding.SUPPORTED : partial ? Finding.UNCLEAR : Finding.CONTRADICTED;
        sentence.add(
            matcher.start(),
            matcher.end(),
            Kind.COUNT,
            finding,
            matcher.group(),
            Integer.toString(size),
            List.of("products compared"),
            size + " were compared");
      }
    }
  }
}
