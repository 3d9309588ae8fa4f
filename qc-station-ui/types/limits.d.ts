// The JSON of limit-set versions, trials and proposals.
declare namespace Api {
  interface LimitSetVersion {
    version: number; state: "draft" | "approved"; active: boolean; activeFrom: string | null; digest: string; origin: string; author: string | null; madeAt: string;
    approvedBy: string | null; approver: string | null; approvalReason: string | null; approvedAt: string | null; inLimits: boolean; limitSet?: Record<string, unknown>;
  }
  interface LimitLines { lowerDb: Values; upperDb: Values; matchDb: Values }
  interface LimitDifference { fromVersion: number; toVersion: number; words: string[]; frequencyHz: number[]; from: LimitLines; to: LimitLines }
  interface TriedSet { version: number; digest: string; yaml: string; limitSet: Record<string, unknown> }
  interface CountedShare { passed: number; of: number; share: number | null; confidence: number; wilson: [number, number]; clopperPearson: [number, number] }
  interface TrialFlip { inspection: string; serial: string; batch: string; station: string; at: string; recorded: string; predicted: string; recordedReasons: string[]; reasons: string[] }
  interface TrialFlips { toPass: number; toFail: number; toUndecided: number; shown: TrialFlip[] }
  interface TrialCheck { check: string; region: string | null; channel: string | null; units: number; share: number; sole: number; marginDb: number | null; worstSerial: string | null; worstInspection: string | null; text: string }
  interface TrialRisk { risk: number; check: string; region: string | null; channel: string | null }
  interface TrialCost { scrapped: number; reworked: number; escapedAtLeast: number | null; escapedAtMost: number | null; totalAtLeast: number | null; totalAtMost: number | null }
  interface TightnessPoint { scale: number; passed: number; of: number; share: number | null; costAtLeast: number | null; costAtMost: number | null }
  interface Trial {
    product: string; tuning: string; batches: string[]; limitSet: TriedSet;
    units: { inspected: number; withCurves: number; passed: number; failed: number; undecided: number; conditional: number; judgedSingly: number; further: number };
    predicted: CountedShare; recorded: CountedShare; flips: TrialFlips; checks: TrialCheck[];
    risks: { consumers: TrialRisk | null; producers: TrialRisk | null; escapedAtLeast: number | null; escapedAtMost: number | null; method: string; notes: string[] };
    cost: { predicted: TrialCost; recorded: TrialCost } | null; tightness: TightnessPoint[]; notes: string[];
  }
  interface Proposal {
    limitSet: TriedSet | null; promised: boolean; words: string; wanted: { yield: number; confidence: number };
    used: { units: number; firstHalf: number; secondHalf: number; rank: number | null; batches: string[] };
    missing: { secondHalfNeeds: number; needed: number; units: number; canPromise: number | null };
    scale: number | null; predicted: CountedShare | null; warnings: string[];
  }
}
