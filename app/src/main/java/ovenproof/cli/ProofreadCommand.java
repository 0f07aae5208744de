package ovenproof.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.proof.Proof;
import ovenproof.proof.Proof.Claim;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.ProofJson;
import ovenproof.proof.Proofreader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code ovenproof proofread DRAFT --campaign DIR}. */
@Command(
    name = "proofread",
    footer = {
      "",
      "For example: ovenproof proofread draft.md --campaign examples/phone-and-thermometer"
    },
    mixinStandardHelpOptions = true,
    description = {
      "Checks every number, comparison, superlative and rank of a draft against a campaign.",
      "Reads Markdown, plain text and captions (WebVTT, SRT). Ends with 1 when a claim is contradicted."
    })
final class ProofreadCommand implements Callable<Integer> {
  private static final long LARGEST_DRAFT_BYTES = 8L << 20;

  @Spec private @Nullable CommandSpec spec;

  @Parameters(paramLabel = "DRAFT", description = "the text to be proofread")
  private Path draft = Path.of("");

  @Option(
      names = "--campaign",
      required = true,
      paramLabel = "DIR",
      description = "the campaign folder")
  private Path folder = Path.of("");

  @Option(names = "--json", description = "print the claims as JSON")
  private boolean json;

  @Override
  public Integer call() {
    String text = text(draft);
    Review review = Review.of(folder);
    Proofreader proofreader =
        new Proofreader(review.loaded().campaign(), review.measured(), review.verdict());
    Proof proof = proofreader.read(text);
    PrintWriter out = java.util.Objects.requireNonNull(spec).commandLine().getOut();
    if (json) {
      Json.print(out, ProofJson.of(proof));
    } else {
      print(out, proof);
    }
    return proof.count(Finding.CONTRADICTED) > 0 ? ExitCode.INPUT : ExitCode.FINE;
  }

  private static String text(Path file) {
    try {
      if (!Files.isRegularFile(file)) {
        throw new InputException(
            Problem.error(Place.of(file.toString()), "nothing", "a text file", "name the draft"));
      }
      if (Files.size(file) > LARGEST_DRAFT_BYTES) {
        throw new InputException(
            Problem.error(
                Place.of(file.toString()),
                Files.size(file) + " bytes",
                "at most 8 MB of text",
                "split the draft"));
      }
      return StandardCharsets.UTF_8
          .newDecoder()
          .decode(ByteBuffer.wrap(Files.readAllBytes(file)))
          .toString();
    } catch (CharacterCodingException notText) {
      throw new InputException(
          Problem.error(
              Place.of(file.toString()),
              "bytes that are not UTF-8",
              "a text in UTF-8",
              "save it as UTF-8"));
    } catch (IOException e) {
      throw new OutsideException("cannot read " + file + ": " + e.getMessage(), e);
    }
  }

  private void print(PrintWriter out, Proof proof) {
    for (Claim claim : proof.claims()) {
      String place = draft.getFileName() + ":" + claim.line() + ":" + claim.column();
      String at = claim.timecode() == null ? "" : " [" + claim.timecode() + "]";
      out.println(sign(claim.finding()) + " " + place + at + "  \"" + claim.text() + "\"");
      out.println("    " + claim.finding().word() + ": " + claim.why());
    }
    out.println();
    out.printf(
        "%d claims: %d supported, %d contradicted, %d unclear, %d without evidence%n",
        proof.claims().size(),
        proof.count(Finding.SUPPORTED),
        proof.count(Finding.CONTRADICTED),
        proof.count(Finding.UNCLEAR),
        proof.count(Finding.UNSUPPORTED));
  }

  private static String sign(Finding finding) {
    return switch (finding) {
      case SUPPORTED -> "=";
      case CONTRADICTED -> "≠";
      case UNCLEAR -> "~";
      case UNSUPPORTED -> "?";
    };
  }
}
