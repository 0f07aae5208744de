package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.publish.Publisher.Published;

class SitePublicationTest {

  @Test
  void aCampaignFolderBecomesASite(@TempDir Path folder) throws Exception {
    Path campaign = SmallCampaign.write(folder.resolve("campaign"));
    Published published =
        new Publisher().publish(SmallCampaign.edition(campaign), folder.resolve("site"));
    assertThat(published.site().resolve("index.html")).exists();
    String keep = System.getProperty("ovenproof.keep");
    if (keep != null) {
      ovenproof.publish.CopyFolder.copy(published.site(), Path.of(keep));
    }
    assertThat(Files.readString(published.site().resolve("index.html"))).contains("Alder");
  }
}
