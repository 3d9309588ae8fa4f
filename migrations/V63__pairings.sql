-- V63  Why: a proposal of new pairs is worked through for hours at a bench; it must be there after a restart, with what it was
-- made from. It is no record of a measurement, so nothing of it is sealed: what counts is the new pair's own inspection.
create table pairing (
  id                   uuid             not null,
  product              text             not null,
  tuning               text             not null,
  limit_set_id         uuid             not null,
  limit_set_version    integer          not null,
  limit_set_digest     text             not null,
  guarded              boolean          not null,
  created_at           timestamptz      not null,
  created_by           uuid,
  request              jsonb            not null,
  lefts                integer          not null,
  rights               integer          not null,
  as_built_pairs       integer          not null,
  as_built_feasible    integer          not null,
  as_built_cost        double precision not null,
  proposed_pairs       integer          not null,
  proposed_cost        double precision not null,
  seconds              double precision not null,
  left_out             jsonb            not null,
  alone                jsonb            not null,
  take_back            jsonb            not null,
  constraint pairing_pkey primary key (id),
  constraint pairing_counts_not_negative check (lefts >= 0 and rights >= 0 and as_built_pairs >= 0),
  constraint pairing_never_loses_pairs check (proposed_pairs >= as_built_feasible)
);
comment on column pairing.created_by is 'Random reference of the person; NULL where none was told.';
comment on column pairing.as_built_feasible is 'Pairs of the pool that may stay as built, by the same measure as the proposed ones.';
comment on column pairing.as_built_cost is 'Sum of their costs; a cost is the largest share of a limit that a pair takes up, 1 at the limit.';
comment on column pairing.left_out is 'Earpieces of the pool that may not be paired, each with why as a word and numbers.';
comment on column pairing.alone is 'Earpieces without a mate.';
comment on column pairing.take_back is 'Serials of units that had passed and of which an earpiece went into another pair.';

create index pairing_newest on pairing (product, tuning, id);

create table pairing_pair (
  pairing_id       uuid             not null,
  number           integer          not null,
  serial           text             not null,
  right_serial     text             not null,
  left_earpiece    text             not null,
  right_earpiece   text             not null,
  left_inspection  uuid             not null,
  right_inspection uuid             not null,
  as_built         boolean          not null,
  cost             double precision not null,
  match_share      double precision not null,
  at_hz            double precision,
  difference_db    double precision,
  limit_db         double precision,
  balance_db       double precision not null,
  balance_limit_db double precision not null,
  balance_share    double precision not null,
  constraint pairing_pair_pkey primary key (pairing_id, number),
  constraint pairing_pair_pairing_fkey foreign key (pairing_id) references pairing (id),
  constraint pairing_pair_number_from_one check (number >= 1),
  constraint pairing_pair_keeps_its_limits check (cost between 0 and 1),
  constraint pairing_pair_left_once unique (pairing_id, left_earpiece),
  constraint pairing_pair_right_once unique (pairing_id, right_earpiece)
);
comment on column pairing_pair.serial is 'Serial number of the new pair: that of the unit whose left earpiece it has.';
comment on column pairing_pair.left_earpiece is 'The earpiece''s own number, or the serial of the unit that it was inspected in with .L.';
comment on column pairing_pair.at_hz is 'Where the largest share of the match limit is taken up; NULL if the set has no match limit.';

create index pairing_pair_by_serial on pairing_pair (serial);
create index pairing_pair_by_right_serial on pairing_pair (right_serial);
