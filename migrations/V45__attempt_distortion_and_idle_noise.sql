-- V45  Why: harmonics and idle noise are measured with every attempt and judged from what is stored, like the level. Added as
-- nullable columns: attempts recorded before, finished curves of other rigs and attempts without an idle recording have none.
alter table attempt_channel
  add column harmonics_db real[],
  add column harmonic_floors_db real[],
  add column high_order_db real[],
  add column high_order_floor_db real[],
  add column idle_dba double precision,
  add column idle_floor_dba double precision,
  add column idle_tones jsonb,
  add constraint attempt_channel_harmonics_on_the_grid
    check (cardinality(harmonics_db) = 964 and cardinality(harmonic_floors_db) = 964),
  add constraint attempt_channel_high_order_on_the_grid
    check (cardinality(high_order_db) = 241 and cardinality(high_order_floor_db) = 241),
  add constraint attempt_channel_distortion_is_whole
    check (num_nulls(harmonics_db, harmonic_floors_db, high_order_db, high_order_floor_db) in (0, 4)),
  add constraint attempt_channel_idle_noise_is_whole
    check ((idle_dba is null) = (idle_tones is null) and (idle_dba is not null or idle_floor_dba is null));

comment on column attempt_channel.harmonics_db is 'Orders 2 to 5, 241 values each, one after the other: dB re the fundamental at the excitation frequency; NaN where the order does not fit.';
comment on column attempt_channel.harmonic_floors_db is 'What noise alone would show of each order, laid out as harmonics_db.';
comment on column attempt_channel.high_order_db is 'Power sum of orders 10 to 25, dB re the fundamental.';
comment on column attempt_channel.high_order_floor_db is 'What noise alone would show of it.';
comment on column attempt_channel.idle_dba is 'A-weighted level with nothing playing, dB re 20 µPa; NULL without a usable idle recording.';
comment on column attempt_channel.idle_floor_dba is 'The station''s own noise at that time, dB(A); NULL if it was never measured.';
comment on column attempt_channel.idle_tones is 'Narrow tones in the idle noise: frequency in Hz, dB above what is around it, what it points to.';

-- A third channel may carry the electrical drive; each side remembers that its file had one, to be read the same way again.
alter table attempt
  drop constraint attempt_format_known,
  add constraint attempt_format_known check (
    left_format in ('WAV', 'WAV_LEFT_OF_TWO', 'WAV_LEFT_WITH_DRIVE', 'CURVE')
    and right_format in ('WAV', 'WAV_RIGHT_OF_TWO', 'WAV_RIGHT_WITH_DRIVE', 'CURVE'));
