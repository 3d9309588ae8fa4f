-- V43  Why: a rig that got no answer sends again; with a key it gets the first answer instead of a second attempt. Written in
-- the attempt's own transaction; a refusal writes nothing, so that a mended request may use the key again.
create table idempotency_key (
  station text not null,
  key text not null,
  request_digest text not null,
  inspection_id uuid not null,
  answer text not null,
  created_at timestamptz not null,
  constraint idempotency_key_pk primary key (station, key),
  constraint idempotency_key_inspection_fk foreign key (inspection_id) references inspection (id),
  constraint idempotency_key_length check (char_length(key) between 1 and 255)
);

comment on column idempotency_key.request_digest is 'SHA-256 over the canonical JSON and each part''s name and SHA-256.';
comment on column idempotency_key.answer is 'The first answer''s JSON, sent again byte for byte.';

create index idempotency_key_by_age on idempotency_key (created_at);

-- Kept for 90 days, then deleted; nothing here is sealed.
grant delete on idempotency_key to "${serviceRole}";
