-- Why: what the plant makes. A product's definition may change with its file (a tuning added, a name mended); what units are
-- judged by does not stand here but in the versions of golden responses and limit sets.
create table product (
  key text not null,
  name text not null,
  maker text not null,
  serial_pattern text not null,
  ear_simulator text not null,
  definition text not null,
  digest text not null,
  changed_at timestamptz not null,
  constraint product_pkey primary key (key),
  constraint product_key_form check (key ~ '^[a-z0-9][a-z0-9-]{0,31}$'),
  constraint product_digest_form check (digest ~ '^[0-9a-f]{64}$')
);
comment on column product.definition is 'The canonical YAML of product.yaml, with the filters of DSP tunings.';
comment on column product.digest is 'SHA-256 of the definition, hex.';

create table tuning (
  product text not null,
  key text not null,
  place integer not null,
  required boolean not null,
  listed boolean not null,
  constraint tuning_pkey primary key (product, key),
  constraint tuning_product_fkey foreign key (product) references product (key),
  constraint tuning_key_form check (key ~ '^[a-z0-9][a-z0-9-]{0,31}$')
);
comment on column tuning.place is 'Order in which product.yaml lists it.';
comment on column tuning.listed is 'False once product.yaml no longer lists it; its records stay.';
