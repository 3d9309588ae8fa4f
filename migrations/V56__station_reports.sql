-- V56  Why: a bench that the service cannot reach goes on measuring and holds its captures. What it says of them stands here, so
-- that people in the office see it on one page. The newest report of each station only; nothing here is sealed.
create table station_report (
  station        text        not null,
  held           integer     not null,
  oldest_held_at timestamptz,
  reported_at    timestamptz not null,
  constraint station_report_pk primary key (station),
  constraint station_report_station_fk foreign key (station) references station (name),
  constraint station_report_held_not_negative check (held >= 0),
  constraint station_report_oldest_if_any check ((held > 0) or (oldest_held_at is null))
);
comment on column station_report.held is 'Captures of seatings that the bench holds and has not been able to send.';
comment on column station_report.oldest_held_at is 'When the oldest of them was measured.';
comment on column station_report.reported_at is 'When the service heard it.';

-- What the station did last, and how often its seatings were bad lately.
create index attempt_by_station on attempt (station, received_at);
create index inspection_by_station_end on inspection (station, closed_at) where state = 'CLOSED';
