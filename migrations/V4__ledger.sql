-- Why: whoever holds the database must not be able to change a record unseen. Each sealed record adds an entry in its own
-- transaction; a sequencer gathers entries into signed blocks, each naming the one before (Merkle tree as in RFC 6962).
create table ledger_entry (
  id uuid not null,
  kind text not null,
  subject uuid not null,
  content bytea not null,
  digest bytea not null,
  at timestamptz not null,
  constraint ledger_entry_pk primary key (id),
  constraint ledger_entry_kind_form check (kind ~ '^[a-z][a-z0-9-]{0,63}$'),
  constraint ledger_entry_digest_is_sha256 check (octet_length(digest) = 32)
);
create index ledger_entry_by_subject on ledger_entry (subject, kind);
comment on column ledger_entry.content is 'Canonical JSON (RFC 8785), UTF-8: id, kind, subject, at and the content itself.';
comment on column ledger_entry.digest is 'SHA-256 of content.';

create table ledger_block (
  number bigint not null,
  previous bytea not null,
  root bytea not null,
  entries integer not null,
  at timestamptz not null,
  key_id text not null,
  signature bytea not null,
  digest bytea not null,
  constraint ledger_block_pk primary key (number),
  constraint ledger_block_number_positive check (number > 0),
  constraint ledger_block_entries_positive check (entries > 0),
  constraint ledger_block_previous_once unique (previous),
  constraint ledger_block_digests_are_sha256
    check (octet_length(previous) = 32 and octet_length(root) = 32 and octet_length(digest) = 32),
  constraint ledger_block_signature_is_ed25519 check (octet_length(signature) = 64)
);
comment on column ledger_block.previous is 'Digest of the block before; 32 zero bytes in block 1.';
comment on column ledger_block.root is 'Merkle tree hash (RFC 6962) over the contents of its entries.';
comment on column ledger_block.digest is 'SHA-256 of the signed head (canonical JSON of number, previous, root, entries, at, keyId).';

create table ledger_leaf (
  entry uuid not null,
  block bigint not null,
  place integer not null,
  digest bytea not null,
  constraint ledger_leaf_pk primary key (entry),
  constraint ledger_leaf_place_once unique (block, place),
  constraint ledger_leaf_entry_exists foreign key (entry) references ledger_entry (id),
  constraint ledger_leaf_block_exists foreign key (block) references ledger_block (number),
  constraint ledger_leaf_place_from_zero check (place >= 0),
  constraint ledger_leaf_digest_is_sha256 check (octet_length(digest) = 32)
);
comment on column ledger_leaf.digest is 'SHA-256 of a zero byte and the entry''s content (RFC 6962 leaf).';

-- Entries without a leaf. Not sealed: it only spares the sequencer a search through all entries, and the check finds an
-- entry that was lost from here.
create table ledger_waiting (
  entry uuid not null,
  constraint ledger_waiting_pk primary key (entry),
  constraint ledger_waiting_entry_exists foreign key (entry) references ledger_entry (id)
);
grant delete on ledger_waiting to "${serviceRole}";

create trigger ledger_entry_is_insert_only before update or delete on ledger_entry
  for each row execute function refuse_change();
create trigger ledger_entry_no_truncate before truncate on ledger_entry
  for each statement execute function refuse_change();
revoke update, delete, truncate on ledger_entry from "${serviceRole}";

create trigger ledger_block_is_insert_only before update or delete on ledger_block
  for each row execute function refuse_change();
create trigger ledger_block_no_truncate before truncate on ledger_block
  for each statement execute function refuse_change();
revoke update, delete, truncate on ledger_block from "${serviceRole}";

create trigger ledger_leaf_is_insert_only before update or delete on ledger_leaf
  for each row execute function refuse_change();
create trigger ledger_leaf_no_truncate before truncate on ledger_leaf
  for each statement execute function refuse_change();
revoke update, delete, truncate on ledger_leaf from "${serviceRole}";
