package ovenproof.desk;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import ovenproof.campaign.InquiryStep;
import ovenproof.files.CampaignFolder;
import ovenproof.files.InquiryFile;
import ovenproof.input.OutsideException;

/**
 * Writes a campaign of the desk as a campaign folder, evidence byte for byte, the method as it was
 * written. Kind {@code export} of the desk's jobs packs it as a zip file.
 */
public final class FolderExport {
  public static final String KIND = "export";

  private final Desk desk;
  private final CampaignFolder folders;

  public FolderExport(Desk desk, CampaignFolder folders) {
    this.desk = desk;
    this.folders = folders;
  }

  public void register() {
    desk.jobs().register(KIND, (job, running) -> zip(job, running).getFileName().toString());
  }

  /**
   * Writes the folder.
   *
   * @param folder new or empty
   */
  public void write(String id, Path folder) {
    folders.save(desk.load(id), desk.evidenceOf(id), folder);
    try {
      Files.writeString(
          folder.resolve("method.yaml"),
          desk.document(id, Document.METHOD).body(),
          StandardCharsets.UTF_8);
      List<InquiryStep> inquiries = desk.inquiries(id);
      if (!inquiries.isEmpty()) {
        Files.writeString(folder.resolve(InquiryFile.NAME), InquiryFile.text(inquiries));
      }
    } catch (IOException failure) {
      throw new OutsideException("cannot write method and inquiries to " + folder, failure);
    }
  }

  private Path zip(Job job, Jobs.Running running) {
    Path outgoing = desk.location().outgoing();
    Path folder = outgoing.resolve(job.id() + "-folder");
    Path zip = outgoing.resolve(job.id() + ".zip");
    Unpacking.remove(folder);
    running.at(0, 1, "writing the folder");
    write(job.input(), folder);
    try (OutputStream out = Files.newOutputStream(zip);
        ZipOutputStream packed = new ZipOutputStream(out);
        Stream<Path> all = Files.walk(folder)) {
      List<Path> files = all.filter(Files::isRegularFile).sorted().toList();
      for (int i = 0; i < files.size(); i++) {
        String name = folder.relativize(files.get(i)).toString().replace('\\', '/');
        running.at(i, files.size(), name);
        packed.putNextEntry(new ZipEntry(job.input() + "/" + name));
        Files.copy(files.get(i), packed);
        packed.closeEntry();
      }
    } catch (IOException failure) {
      throw new OutsideException("cannot pack " + job.input(), failure);
    } finally {
      Unpacking.remove(folder);
    }
    return zip;
  }
}
