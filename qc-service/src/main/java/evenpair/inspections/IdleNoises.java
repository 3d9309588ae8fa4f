package evenpair.inspections;

import evenpair.tolerance.Channel;
import evenpair.tolerance.MeasuredIdleNoise;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The idle noise of an inspection as it is shown: of the valid seatings together, or of the newest
 * attempt before there is one.
 */
@Component
class IdleNoises {
  /** The few numbers alone: the curves beside them are large. */
  private static final String STORED =
      """
      select a.id, a.valid, c.channel, c.idle_dba, c.idle_floor_dba, c.idle_tones::text
      from attempt a join attempt_channel c on c.attempt_id = a.id
      where a.inspection_id = ? and c.idle_dba is not null order by a.number
      """;

  private final JdbcClient jdbc;

  IdleNoises(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  private record Stored(UUID attempt, boolean valid, Channel channel, StoredIdle noise) {}

  /**
   * @return null if no attempt had a usable idle recording
   */
  InspectionJson.IdleNoise of(InspectionFile file) {
    List<Stored> all = stored(file.row().id());
    if (all.isEmpty()) {
      return null;
    }
    boolean anyValid = all.stream().anyMatch(Stored::valid);
    UUID newest = all.get(all.size() - 1).attempt();
    Map<Channel, List<StoredIdle>> shown = new EnumMap<>(Channel.class);
    all.stream()
        .filter(s -> anyValid ? s.valid() : s.attempt().equals(newest))
        .forEach(s -> shown.computeIfAbsent(s.channel(), c -> new ArrayList<>()).add(s.noise()));
    return new InspectionJson.IdleNoise(
        view(shown.get(Channel.LEFT)), view(shown.get(Channel.RIGHT)));
  }

  private List<Stored> stored(UUID inspection) {
    return jdbc.sql(STORED)
        .param(inspection)
        .query(
            (row, number) ->
                new Stored(
                    row.getObject(1, UUID.class),
                    row.getBoolean(2),
                    Channel.valueOf(row.getString(3)),
                    new StoredIdle(
                        row.getDouble(4),
                        row.getObject(5, Double.class),
                        RecordJson.readTones(row.getString(6)))))
        .list();
  }

  private static InspectionJson.ChannelNoise view(List<StoredIdle> seatings) {
    if (seatings == null) {
      return null;
    }
    MeasuredIdleNoise mean = StoredIdle.mean(seatings);
    return new InspectionJson.ChannelNoise(
        mean.dba(),
        Double.isNaN(mean.floorDba()) ? null : mean.floorDba(),
        mean.tones().stream()
            .map(tone -> new InspectionJson.NoiseTone(tone.hz(), tone.levelDb(), tone.usbFrame()))
            .toList());
  }
}
