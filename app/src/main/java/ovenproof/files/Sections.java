package ovenproof.files;

import java.util.List;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Deviation;
import ovenproof.campaign.Event;
import ovenproof.campaign.FactValue;
import ovenproof.campaign.FeatureState;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Piece;
import ovenproof.campaign.RatedStep;
import ovenproof.campaign.Rating;
import ovenproof.campaign.Reading;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;

/** What could be read of a campaign's tables, each record with its row. */
record Sections(
    List<Rowed<Campaign.Product>> products,
    List<Rowed<Campaign.LeftOut>> leftOut,
    List<Rowed<Campaign.Specimen>> specimens,
    List<Rowed<Campaign.Price>> prices,
    List<Rowed<FactValue>> facts,
    List<Rowed<RatedStep>> ratedSteps,
    List<Rowed<FeatureState>> features,
    List<Rowed<Campaign.SettingCard>> settingCards,
    List<Rowed<Campaign.PlannedRun>> plan,
    List<Rowed<Run>> runs,
    List<Rowed<Campaign.NotRun>> notRun,
    List<Rowed<Event>> events,
    List<Rowed<Deviation>> deviations,
    List<Rowed<Reading>> readings,
    List<Rowed<Campaign.Lot>> lots,
    List<Rowed<Piece>> pieces,
    List<Rowed<Rating>> ratings,
    List<Rowed<Campaign.Instrument>> instruments,
    List<Rowed<Campaign.Calibration>> calibrations,
    List<Rowed<TraceBinding>> traces,
    List<Rowed<Photo>> photos) {

  static <T> List<T> values(List<Rowed<T>> rowed) {
    return rowed.stream().map(Rowed::value).toList();
  }
}
