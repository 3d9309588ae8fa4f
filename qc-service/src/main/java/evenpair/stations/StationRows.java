package evenpair.stations;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface StationRows extends Repository<StationRow, UUID> {
  Optional<StationRow> findById(UUID id);

  Optional<StationRow> findByName(String name);

  List<StationRow> findAllByOrderByName();

  @Query("select s.name from StationRow s order by s.name")
  List<String> names();

  /** One statement, so that two clients that create the same station at once both succeed. */
  @Modifying(clearAutomatically = true)
  @Query(
      nativeQuery = true,
      value =
          """
      insert into station (id, name, note, created_at) values (:id, :name, :note, :now)
      on conflict (name) do update set note = coalesce(excluded.note, station.note)""")
  void put(UUID id, String name, String note, Instant now);

  /**
   * Holds the station's row until the transaction ends, so that versions are counted one at a time.
   */
  @Query(
      nativeQuery = true,
      value = "select cast(1 as integer) from station where id = :id for update")
  int lock(UUID id);
}
