-- V68  Why: the public finds a record by the code on its certificate, the first 100 bits of the leaf's digest.
create index ledger_leaf_by_digest on ledger_leaf (digest);
