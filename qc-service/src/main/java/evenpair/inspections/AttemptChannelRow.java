package evenpair.inspections;

import evenpair.tolerance.Channel;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Table;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** The curves of one channel of one attempt. Sealed: the table takes inserts only. */
@Entity
@Immutable
@Table(name = "attempt_channel")
class AttemptChannelRow {
  @Embeddable
  record Key(UUID attemptId, @Enumerated(EnumType.STRING) Channel channel) {}

  @EmbeddedId private Key key;
  private float[] levelDb;
  private float[] phaseDeg;
  private float[] snrDb;
  private Double arrivalSeconds;
  private Double peak;

  protected AttemptChannelRow() {}

  AttemptChannelRow(UUID attempt, Channel channel, StoredChannel stored) {
    this.key = new Key(attempt, channel);
    this.levelDb = stored.levelDb();
    this.phaseDeg = stored.phaseDeg();
    this.snrDb = stored.snrDb();
    this.arrivalSeconds = stored.arrivalSeconds();
    this.peak = stored.peak();
  }

  UUID attemptId() {
    return key.attemptId();
  }

  Channel channel() {
    return key.channel();
  }

  StoredChannel stored() {
    return new StoredChannel(levelDb, phaseDeg, snrDb, arrivalSeconds, peak);
  }
}
