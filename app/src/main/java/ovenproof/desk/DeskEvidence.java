package ovenproof.desk;

import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.Optional;
import ovenproof.evidence.EvidenceSource;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;

/** The files of one campaign in the desk's store, by the names they have in the campaign. */
final class DeskEvidence implements EvidenceSource {
  private final EvidenceStore store;
  private final Map<String, Attachment> byPath;

  DeskEvidence(EvidenceStore store, Map<String, Attachment> byPath) {
    this.store = store;
    this.byPath = Map.copyOf(byPath);
  }

  @Override
  public InputStream open(String path) {
    return store.open(found(path).sha256());
  }

  @Override
  public Optional<String> fingerprint(String path) {
    return Optional.ofNullable(byPath.get(path)).map(Attachment::sha256);
  }

  @Override
  public Optional<Long> size(String path) {
    return Optional.ofNullable(byPath.get(path)).map(Attachment::bytes);
  }

  @Override
  public byte[] bytes(String path, long limit) {
    Attachment attachment = found(path);
    if (attachment.bytes() > limit) {
      throw new InputException(
          Problem.error(
              Place.of(path), attachment.bytes() + " bytes", "at most " + limit + " bytes", ""));
    }
    try (InputStream in = store.open(attachment.sha256())) {
      return in.readAllBytes();
    } catch (IOException failure) {
      throw new OutsideException("cannot read " + path + " from the evidence store", failure);
    }
  }

  private Attachment found(String path) {
    Attachment attachment = byPath.get(path);
    if (attachment == null) {
      throw new InputException(
          Problem.error(Place.of(path), "no such file", "a file of the campaign", "attach it"));
    }
    return attachment;
  }
}
