package ovenproof.files;

import java.util.List;
import ovenproof.campaign.Campaign;
import ovenproof.input.Problem;

/**
 * A campaign that can be used.
 *
 * @param evidence opens the files that the campaign names
 * @param problems warnings only: errors are thrown
 */
public record LoadedCampaign(Campaign campaign, FolderEvidence evidence, List<Problem> problems) {
  public LoadedCampaign {
    problems = List.copyOf(problems);
  }
}
