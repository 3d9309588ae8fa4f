package evenpair.stations;

import evenpair.tolerance.Channel;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface MicrophoneCalibrationRows extends Repository<MicrophoneCalibrationRow, UUID> {
  Optional<MicrophoneCalibrationRow> findById(UUID id);

  MicrophoneCalibrationRow save(MicrophoneCalibrationRow row);

  /**
   * @return the newest of the channel that was measured at or before that instant
   */
  @Query(
      """
      select c from MicrophoneCalibrationRow c
      where c.stationId = :stationId and c.channel = :channel and c.provenance.measuredAt <= :at
      order by c.provenance.measuredAt desc, c.provenance.recordedAt desc, c.id desc limit 1""")
  Optional<MicrophoneCalibrationRow> newest(UUID stationId, Channel channel, Instant at);

  /**
   * @return the three newest of the channel that were measured at or before that instant, newest
   *     first
   */
  @Query(
      """
      select c from MicrophoneCalibrationRow c
      where c.stationId = :stationId and c.channel = :channel and c.provenance.measuredAt <= :at
      order by c.provenance.measuredAt desc, c.provenance.recordedAt desc, c.id desc limit 3""")
  List<MicrophoneCalibrationRow> newestThree(UUID stationId, Channel channel, Instant at);

  /**
   * @return the newest 100, newest first
   */
  @Query(
      """
      select c from MicrophoneCalibrationRow c
      where c.stationId = :stationId and c.channel = :channel
      order by c.provenance.measuredAt desc, c.provenance.recordedAt desc, c.id desc limit 100""")
  List<MicrophoneCalibrationRow> newestHundred(UUID stationId, Channel channel);
}
