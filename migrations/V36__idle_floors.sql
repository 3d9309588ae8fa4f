-- V36  Why: a unit's idle noise can only be told down to the station's own, which is measured with nothing connected.

create table station_idle_floor (
  id           uuid             not null,
  station_id   uuid             not null,
  left_dba     double precision not null,
  right_dba    double precision not null,
  left_sha256  text             not null,
  right_sha256 text             not null,
  operator     uuid             not null,
  measured_at  timestamptz      not null,
  valid_until  timestamptz      not null,
  recorded_at  timestamptz      not null,
  constraint station_idle_floor_pkey primary key (id),
  constraint station_idle_floor_station_fkey foreign key (station_id) references station (id),
  constraint station_idle_floor_left_digest check (left_sha256 ~ '^[0-9a-f]{64}$'),
  constraint station_idle_floor_right_digest check (right_sha256 ~ '^[0-9a-f]{64}$'),
  constraint station_idle_floor_holds_some_time check (valid_until > measured_at)
);
comment on column station_idle_floor.left_dba is 'A-weighted level re 20 µPa with nothing connected, dB(A).';

create index station_idle_floor_newest on station_idle_floor (station_id, measured_at desc, recorded_at desc);
