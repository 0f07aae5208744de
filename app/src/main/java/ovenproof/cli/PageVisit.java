package ovenproof.cli;

import java.io.IOException;
import java.io.InputStream;
import java.net.HttpURLConnection;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import ovenproof.desk.Desk;
import ovenproof.desk.DeskCampaign;
import ovenproof.input.OutsideException;

/**
 * Opens the main pages of a served desk once, as a person would: proves that they can be had, and
 * loads the classes they need, for the archive from which later starts are quick.
 */
final class PageVisit {
  private static final int PATIENCE = 600;
  private static final int PAUSE_MILLIS = 100;
  private static final List<String> STAGES =
      List.of("", "/products", "/settings", "/plan", "/method", "/bench", "/verdict", "/record");

  private PageVisit() {}

  /**
   * @throws OutsideException if a page cannot be had
   */
  static void all(Desk desk, int port) throws InterruptedException {
    List<String> paths = new ArrayList<>(List.of("/", "/start", "/look/look.css"));
    for (DeskCampaign campaign : desk.campaigns()) {
      STAGES.forEach(stage -> paths.add("/c/" + campaign.id() + stage));
      desk.load(campaign.id()).runs().stream()
          .limit(1)
          .forEach(r -> paths.add("/c/" + campaign.id() + "/runs/" + r.id()));
    }
    for (String path : paths) {
      visit(port, path);
    }
  }

  private static void visit(int port, String path) throws InterruptedException {
    try {
      for (int i = 0; i < PATIENCE && read(port, path).contains("id=\"working\""); i++) {
        Thread.sleep(PAUSE_MILLIS);
      }
    } catch (IOException failure) {
      throw new OutsideException("the page " + path + " cannot be had", failure);
    }
  }

  private static String read(int port, String path) throws IOException {
    HttpURLConnection page =
        (HttpURLConnection) URI.create("http://localhost:" + port + path).toURL().openConnection();
    try (InputStream in = page.getInputStream()) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } finally {
      page.disconnect();
    }
  }
}
