// The JSON of pairings as the screens read it.
declare namespace Api {
  interface PairingSide { pairs: number; feasible: number; totalCost: number; meanCost: number | null }
  interface PairingSummary {
    id: string; product: string; tuning: string; limitSet: { version: number; digest: string; guarded: boolean }; createdAt: string;
    pool: { lefts: number; rights: number }; asBuilt: PairingSide; proposed: PairingSide; gained: number;
  }
  interface PairedEarpiece { serial: string; channel: "left" | "right"; earpiece: string; inspection: string }
  interface ProposedPair {
    number: number; serial: string; left: PairedEarpiece; right: PairedEarpiece; asBuilt: boolean; cost: number;
    match: { share: number; atHz: number | null; differenceDb: number | null; limitDb: number | null };
    balance: { share: number; differenceDb: number; limitDb: number }; inspected: { inspection: string; verdict: string; at: string } | null;
  }
  interface Pairing extends PairingSummary {
    pairs: ProposedPair[]; alone: PairedEarpiece[]; leftOut: { serial: string; channel: string; earpiece: string; why: string; text: string }[];
    takeBack: string[]; notes: string[]; links: { self: string; csv: string };
  }
}
