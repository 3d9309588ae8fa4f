-- Why: a golden response built from measured units says how many there were, how far they spread, and which were taken and left
-- out, so that whoever signs it can look at them. All NULL for one that came as a curve.
alter table golden_response
  add column units integer,
  add column spread_db real[],
  add column inspections uuid[],
  add column left_out uuid[],
  add constraint golden_response_units_positive check (units >= 1),
  add constraint golden_response_spread_points check (cardinality(spread_db) = 241),
  add constraint golden_response_provenance_whole check (
    (units is null) = (spread_db is null) and (units is null) = (inspections is null) and (units is null) = (left_out is null)
  );
comment on column golden_response.units is 'Units whose curves were taken.';
comment on column golden_response.spread_db is 'Spread of their curves at the 241 grid points, dB; NaN where there is none.';
comment on column golden_response.inspections is 'Inspections whose curves were taken.';
comment on column golden_response.left_out is 'Inspections that an engineer left out.';
