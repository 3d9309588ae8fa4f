package evenpair.inspections;

import evenpair.tolerance.Channel;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;

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
  private float[] harmonicsDb;
  private float[] harmonicFloorsDb;
  private float[] highOrderDb;
  private float[] highOrderFloorDb;
  private Double idleDba;
  private Double idleFloorDba;

  @JdbcTypeCode(SqlTypes.JSON)
  private String idleTones;

  protected AttemptChannelRow() {}

  AttemptChannelRow(UUID attempt, Channel channel, StoredChannel stored) {
    this.key = new Key(attempt, channel);
    this.levelDb = stored.levelDb();
    this.phaseDeg = stored.phaseDeg();
    this.snrDb = stored.snrDb();
    this.arrivalSeconds = stored.arrivalSeconds();
    this.peak = stored.peak();
    if (stored.distortion() != null) {
      this.harmonicsDb = stored.distortion().harmonicsDb();
      this.harmonicFloorsDb = stored.distortion().floorsDb();
      this.highOrderDb = stored.distortion().highOrderDb();
      this.highOrderFloorDb = stored.distortion().highOrderFloorDb();
    }
    if (stored.idle() != null) {
      this.idleDba = stored.idle().dba();
      this.idleFloorDba = stored.idle().floorDba();
      this.idleTones = RecordJson.write(stored.idle().tones());
    }
  }

  UUID attemptId() {
    return key.attemptId();
  }

  Channel channel() {
    return key.channel();
  }

  StoredChannel stored() {
    return new StoredChannel(levelDb, phaseDeg, snrDb, arrivalSeconds, peak, distortion(), idle());
  }

  private StoredDistortion distortion() {
    return harmonicsDb == null
        ? null
        : new StoredDistortion(harmonicsDb, harmonicFloorsDb, highOrderDb, highOrderFloorDb);
  }

  StoredIdle idle() {
    return idleDba == null
        ? null
        : new StoredIdle(idleDba, idleFloorDba, RecordJson.readTones(idleTones));
  }
}
