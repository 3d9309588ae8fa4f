package evenpair.web.jobs;

import java.net.URI;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.http.ResponseEntity;

/** Starts long work and tells how far it is. */
public interface Jobs {
  /**
   * Puts a job into the list; any process begins it within a second. In the caller's transaction,
   * if one is open: then it begins when that commits.
   *
   * @param kind the {@link JobKind#name}
   * @param parameters canonical JSON, at most a few kilobytes
   * @return the job's id (UUIDv7)
   * @throws IllegalArgumentException if this process knows no such kind
   */
  UUID start(String kind, String parameters);

  /**
   * @return how far it is, if there is such a job
   */
  Optional<Job> find(UUID id);

  /**
   * @return the answer to the request that started it: 202, where to ask how far it is
   */
  default ResponseEntity<Map<String, Object>> accepted(UUID id) {
    String self = "/api/jobs/" + id;
    return ResponseEntity.accepted()
        .location(URI.create(self))
        .body(Map.of("job", id, "links", Map.of("job", self)));
  }

  /**
   * @param state waiting, running, done or failed
   * @param done steps done
   * @param total steps in all; null until the first process has looked
   * @param problem why it failed, a sentence; null unless failed
   * @param result address of what came out; null until done, and where nothing is to be fetched
   */
  record Job(
      UUID id,
      String kind,
      String state,
      int done,
      Integer total,
      String problem,
      String result,
      Instant startedAt,
      Instant changedAt) {
    /**
     * @return whether nothing will change any more
     */
    public boolean over() {
      return state.equals("done") || state.equals("failed");
    }
  }
}
