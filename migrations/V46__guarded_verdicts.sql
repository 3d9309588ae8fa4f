-- V46  Why: a guarded verdict depends on what the station's measurement was worth when it was given. The very numbers used stand
-- beside the verdict, so that judging the stored curves again gives the same although the station has been studied anew since.
-- The same holds for the other tunings that the response was compared with, and for the spread of the seatings.
alter table inspection_verdict
  add column conditional boolean not null default false,
  add column uncertainty_study_ids uuid[],
  add column level_uncertainty_db real[],
  add column match_uncertainty_db real[],
  add column offset_uncertainty_db double precision,
  add column balance_uncertainty_db double precision,
  add column compared_limit_set_ids uuid[] not null default '{}',
  add column spread jsonb not null default '[]',
  add constraint inspection_verdict_uncertainty_on_the_grid
    check (cardinality(level_uncertainty_db) = 241 and cardinality(match_uncertainty_db) = 241),
  add constraint inspection_verdict_uncertainty_is_whole
    check (num_nulls(uncertainty_study_ids, level_uncertainty_db, match_uncertainty_db, offset_uncertainty_db, balance_uncertainty_db) in (0, 5));

comment on column inspection_verdict.conditional is 'True: a result lies inside the guard band, so that the verdict is a conditional pass or fail.';
comment on column inspection_verdict.uncertainty_study_ids is 'Gauge studies that the uncertainty came from; NULL for simple acceptance.';
comment on column inspection_verdict.level_uncertainty_db is 'Standard uncertainty of one earpiece''s deviation from golden at the grid points, as used, dB.';
comment on column inspection_verdict.match_uncertainty_db is 'Standard uncertainty of left minus right, as used, dB.';
comment on column inspection_verdict.offset_uncertainty_db is 'Standard uncertainty of one earpiece''s level against golden, as used, dB.';
comment on column inspection_verdict.balance_uncertainty_db is 'Standard uncertainty of the balance, as used, dB.';
comment on column inspection_verdict.compared_limit_set_ids is 'Limit sets of the product''s other tunings whose golden responses the pair was compared with.';
comment on column inspection_verdict.spread is 'How far the valid seatings lie apart: largest difference by region and channel, dB, and where; empty for one seating.';
