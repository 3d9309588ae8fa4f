package evenpair.inspections;

import evenpair.stations.Stations;
import evenpair.tolerance.Channel;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;

/** One attempt as sent. Sealed: the table takes inserts only. */
@Entity
@Immutable
@Table(name = "attempt")
class AttemptRow {
  /** A file in the capture store and how it is to be read. */
  @Embeddable
  record File(String sha256, long bytes, @Enumerated(EnumType.STRING) SentChannel.Format format) {}

  /** Which calibrations and which correction gave the level; null where there was none. */
  @Embeddable
  record Chain(UUID leftMicrophoneId, UUID rightMicrophoneId, UUID outputId, UUID correctionId) {
    static Chain of(Stations.Chain chain) {
      return new Chain(
          microphone(chain, Channel.LEFT),
          microphone(chain, Channel.RIGHT),
          chain.output().map(Stations.Output::id).orElse(null),
          chain.correction().map(Stations.Correction::id).orElse(null));
    }

    private static UUID microphone(Stations.Chain chain, Channel channel) {
      Stations.Microphone microphone = chain.microphones().get(channel);
      return microphone == null ? null : microphone.id();
    }
  }

  /** Who and what came with it. */
  @Embeddable
  record Circumstances(
      String station,
      UUID operatorRef,
      Instant measuredAt,
      Instant receivedAt,
      String stimulus,
      String softwareVersion) {}

  @Id private UUID id;
  private UUID inspectionId;
  private int number;
  private int seating;

  @Enumerated(EnumType.STRING)
  private Outcome outcome;

  private boolean valid;
  @Embedded private Circumstances circumstances;

  @Embedded
  @AttributeOverride(name = "sha256", column = @Column(name = "left_sha256"))
  @AttributeOverride(name = "bytes", column = @Column(name = "left_bytes"))
  @AttributeOverride(name = "format", column = @Column(name = "left_format"))
  private File left;

  @Embedded
  @AttributeOverride(name = "sha256", column = @Column(name = "right_sha256"))
  @AttributeOverride(name = "bytes", column = @Column(name = "right_bytes"))
  @AttributeOverride(name = "format", column = @Column(name = "right_format"))
  private File right;

  private String idleLeftSha256;
  private String idleRightSha256;
  @Embedded private Chain chain;

  @JdbcTypeCode(SqlTypes.JSON)
  private String reasons;

  protected AttemptRow() {}

  AttemptRow(
      UUID id,
      InspectionRow inspection,
      int number,
      int seating,
      Course course,
      Circumstances circumstances,
      SentPair sent,
      Chain chain,
      String reasons) {
    this.id = id;
    this.inspectionId = inspection.id();
    this.number = number;
    this.seating = seating;
    this.outcome = course.outcome();
    this.valid = course.valid();
    this.circumstances = circumstances;
    this.left = file(sent.left());
    this.right = file(sent.right());
    this.idleLeftSha256 = sent.idleLeft().map(idle -> idle.file().sha256()).orElse(null);
    this.idleRightSha256 = sent.idleRight().map(idle -> idle.file().sha256()).orElse(null);
    this.chain = chain;
    this.reasons = reasons;
  }

  private static File file(SentChannel channel) {
    return new File(channel.file().sha256(), channel.file().bytes().length, channel.format());
  }

  UUID id() {
    return id;
  }

  UUID inspectionId() {
    return inspectionId;
  }

  int number() {
    return number;
  }

  int seating() {
    return seating;
  }

  Outcome outcome() {
    return outcome;
  }

  boolean valid() {
    return valid;
  }

  Circumstances circumstances() {
    return circumstances;
  }

  File left() {
    return left;
  }

  File right() {
    return right;
  }

  String idleLeftSha256() {
    return idleLeftSha256;
  }

  String idleRightSha256() {
    return idleRightSha256;
  }

  Chain chain() {
    return chain;
  }

  /**
   * @return JSON as {@link RecordJson} writes it
   */
  String reasons() {
    return reasons;
  }
}
